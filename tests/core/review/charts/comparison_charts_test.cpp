#include "core/review/charts/comparison_charts.h"

#include "tests/core/review/comparison/comparison_samples.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace plumule {
namespace {

class ComparisonChartsTest : public testing::Test
{
protected:
    ComparisonChartsTest()
    {
        season.series.kind = SeriesKind::Season;
        for (int trial = 1; trial <= 4; ++trial) {
            const double base = 200 + 10 * trial;
            season.addTrial(trial, 7 * trial, {base - 2, base + trial},
                            {1.1 * base, 1.1 * base + 3}, {1 + trial % 2});
        }
    }

    ComparisonSamples season;
};

TEST_F(ComparisonChartsTest, ShowWhetherTheTrialsAgree)
{
    const SeasonComparison comparison = season.compare();
    const ChartSpec spec = trialsChart(comparison, 0);
    EXPECT_EQ(spec.key, "yield_by_trial");
    EXPECT_EQ(spec.rows,
              (std::vector<std::string>{"T1 Pea", "T2 Radish", "T3 Pea", "T4 Radish", ""}));
    EXPECT_EQ(spec.series.front().form, SeriesForm::Intervals);
    EXPECT_EQ(spec.series.back().form, SeriesForm::Pooled);
    ASSERT_EQ(spec.series.size(), 5u);
    const ChartInterval& together = spec.series.back().intervals.front();
    EXPECT_DOUBLE_EQ(together.mid, *comparison.pairs[0].percent);
    EXPECT_DOUBLE_EQ(together.low, *comparison.pairs[0].lowerPercent);
    ASSERT_EQ(spec.marks.size(), 3u);
    EXPECT_EQ(spec.marks[2].at, 10);
    EXPECT_NEAR(spec.marks[1].at, -9.0909, 1e-4) << "as far as 10 % the other way";
    EXPECT_EQ(spec.x.unit, "%");
}

// A row for each of hundreds of sowings is read by nobody.
TEST(ShownSowings, AreTheTrialsAndTheNewestOthersWhereTheyAreMany)
{
    ComparisonSamples season;
    season.series.kind = SeriesKind::Season;
    for (int number = 1; number <= 70; ++number) {
        const double base = 200 + number % 7;
        const std::size_t first = season.facts.trays.size();
        season.addTrial(number, number, {base - 2, base + 1}, {1.1 * base, 1.1 * base + 3});
        if (number % 10 != 0) { // sown for no trial
            for (std::size_t i = first; i < season.facts.trays.size(); ++i) {
                season.facts.trays[i].tray.trial.reset();
                season.facts.trays[i].trialSownOn.reset();
            }
        }
    }
    const SeasonComparison comparison = season.compare();
    const ShownSowings shown = shownSowings(comparison, 0);
    ASSERT_EQ(shown.all, 70U);
    EXPECT_EQ(shown.trays, std::pair(140, 140));
    ASSERT_EQ(shown.rows.size(), kMostSowings);
    std::vector<std::string> trials;
    std::vector<Date> days;
    for (const SowingPair& row : shown.rows) {
        const Sowing& sowing = comparison.sowings[row.part->sowing];
        if (sowing.trial) {
            trials.push_back(sowing.code);
        } else {
            days.push_back(sowing.sownOn);
        }
    }
    EXPECT_EQ(trials, (std::vector<std::string>{"T10", "T20", "T30", "T40", "T50", "T60", "T70"}));
    ASSERT_EQ(days.size(), kMostSowings - 7);
    EXPECT_TRUE(std::is_sorted(days.begin(), days.end()));
    EXPECT_EQ(days.back(), date(2026, 1, 1) + 69);
    EXPECT_EQ(days.front(), date(2026, 1, 1) + 34);
    const ChartSpec spec = trialsChart(comparison, 0);
    EXPECT_EQ(spec.rows.size(), kMostSowings + 1);
    EXPECT_DOUBLE_EQ(spec.series.back().intervals.front().mid, *comparison.pairs[0].percent)
        << "all of them together";
}

TEST_F(ComparisonChartsTest, ShowEachTrayInPercentOfItsTrial)
{
    const ChartSpec spec = varietiesChart(season.compare());
    EXPECT_EQ(spec.rows, (std::vector<std::string>{"Radish", "Pea"}));
    EXPECT_EQ(spec.seriesARow, 2);
    ASSERT_EQ(spec.series.size(), 4u) << "dots and means of two media";
    EXPECT_EQ(spec.series[0].points.size(), 8u);
    EXPECT_LT(spec.series[0].points.front().x, spec.series[2].points.front().x);
    const double low = spec.series[1].intervals.front().mid;
    const double high = spec.series[3].intervals.front().mid;
    EXPECT_LT(low, 100);
    EXPECT_NEAR((low + high) / 2, 100, 1e-9) << "each medium counts once";
}

TEST_F(ComparisonChartsTest, HollowDotsDoNotCountYet)
{
    season.facts.standings[TrialId{4}] = {season.facts.trays.back().trialSownOn, 5, 0};
    const ChartSpec spec = adjustedMeansChart(season.compare());
    EXPECT_FALSE(spec.series[0].points.front().isHollow);
    EXPECT_TRUE(spec.series[0].points.back().isHollow);
    const ChartInterval& mean = spec.series[1].intervals.front();
    EXPECT_EQ(mean.low, mean.high);
}

TEST_F(ComparisonChartsTest, DifferencesAreInPercent)
{
    const SeasonComparison comparison = season.compare();
    const ChartSpec spec = differencesChart(comparison);
    EXPECT_EQ(spec.rows, std::vector<std::string>{"Mesh − Loose mix"});
    EXPECT_DOUBLE_EQ(spec.series[0].intervals[0].mid, *comparison.pairs[0].percent);
}

} // namespace
} // namespace plumule
