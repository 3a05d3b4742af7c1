#include "core/review/season/piece_ageing.h"

#include "core/stats/probability/distributions.h"
#include "tests/core/review/facts/season_samples.h"

#include <cmath>
#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

namespace plumule {
namespace {

class PieceAgeingTest : public testing::Test
{
protected:
    void grow(int use, double yield, VarietyId variety = {1},
              std::optional<TrialId> trial = std::nullopt)
    {
        SeasonRecord& tray =
            season.add("B" + std::to_string(season.facts.trays.size()), kMesh, yield);
        tray.pieceUse = use;
        tray.tray.piece = PieceId{use % 2 + 1};
        tray.tray.variety = variety;
        tray.tray.trial = trial;
    }
    [[nodiscard]] std::vector<PieceAgeing> all() const
    {
        return pieceAgeing(season.facts, season.filter);
    }
    SeasonSamples season;
};

// cars of R's datasets (Ezekiel 1930): lm(dist ~ speed) has the slope 3.9324 with the standard
// error 0.4155 and p 1.49e-12; confint() gives 3.096964 to 4.767853.
TEST_F(PieceAgeingTest, ReproducesAPublishedLine)
{
    std::ifstream file(std::string(PLUMULE_REFERENCES) + "/cars.csv");
    std::string line;
    std::getline(file, line);
    while (std::getline(file, line)) {
        const auto comma = line.find(',');
        grow(static_cast<int>(std::stod(line.substr(0, comma))), std::stod(line.substr(comma + 1)));
    }
    const auto ageing = all();
    ASSERT_EQ(ageing.size(), 1u);
    EXPECT_EQ(ageing[0].trays, 50);
    EXPECT_EQ(ageing[0].pieces, 2);
    EXPECT_EQ(ageing[0].mostUses, 25);
    EXPECT_NEAR(*ageing[0].slope, 3.932409, 1e-6);
    EXPECT_NEAR(*ageing[0].lower, 3.096964, 1e-6);
    EXPECT_NEAR(*ageing[0].upper, 4.767853, 1e-6);
    EXPECT_NEAR(*ageing[0].p, 1.49e-12, 5e-15);
    EXPECT_EQ(ageing[0].points.front().use, 4);
    EXPECT_NEAR(ageing[0].points.front().value, 2, 1e-9) << "nothing to adjust for";
}

// By hand: within the varieties the uses are −1, 0, 1 about their means and the yields 4, 1, −5 and
// 3, −1, −2 about theirs: the slope is Σxy / Σx² = (−4 − 5 − 3 − 2) / 4 = −3.5. Less the
// line's 3.5, 0, −3.5 the yields leave 0.5, 1, −1.5 and −0.5, −1, 1.5, whose squares sum to 7, with
// 6 − 3 degrees of freedom.
TEST_F(PieceAgeingTest, TakesVarietiesOutOfTheLine)
{
    grow(1, 202);
    grow(2, 199);
    grow(3, 193);
    grow(4, 301, {2});
    grow(5, 297, {2});
    grow(6, 296, {2});
    const auto ageing = all();
    ASSERT_EQ(ageing.size(), 1u);
    EXPECT_NEAR(*ageing[0].slope, -3.5, 1e-9);
    const double reach = stats::tQuantile(0.975, 3) * std::sqrt(7.0 / 3 / 4);
    EXPECT_NEAR(*ageing[0].lower, -3.5 - reach, 1e-9);
    EXPECT_NEAR(*ageing[0].upper, -3.5 + reach, 1e-9);
    EXPECT_NEAR(*ageing[0].p, stats::tTwoSided(3.5 / std::sqrt(7.0 / 12), 3), 1e-9);
    // The first tray: the mean of all, 248, the line's 8.75 at 2.5 uses before the mean use, and
    // its own 0.5.
    EXPECT_NEAR(ageing[0].meanYield, 248, 1e-9);
    EXPECT_NEAR(ageing[0].points[0].value, 248 + 8.75 + 0.5, 1e-9);
    EXPECT_NEAR(ageing[0].points[5].value, 248 - 8.75 + 1.5, 1e-9);
}

TEST_F(PieceAgeingTest, CannotTellUsesFromTrials)
{
    season.facts.trials[TrialId{8}] = "T8";
    for (const double slip : {-2.0, 0.0, 2.0}) {
        grow(1, 250 + slip, {1}, TrialId{7});
        grow(5, 240 + slip, {1}, TrialId{8});
    }
    const auto ageing = all();
    ASSERT_EQ(ageing.size(), 1u);
    EXPECT_FALSE(ageing[0].slope);
    EXPECT_FALSE(ageing[0].p);
    EXPECT_DOUBLE_EQ(ageing[0].points[0].value, 248);
    EXPECT_EQ(ageingChart(ageing[0]).series.size(), 1u);
}

TEST_F(PieceAgeingTest, HasNoIntervalWithoutSpread)
{
    grow(1, 250);
    grow(2, 245);
    grow(3, 240);
    const auto ageing = all();
    ASSERT_EQ(ageing.size(), 1u);
    EXPECT_NEAR(*ageing[0].slope, -5, 1e-9);
    EXPECT_FALSE(ageing[0].lower);
    EXPECT_FALSE(ageing[0].p);
}

TEST_F(PieceAgeingTest, NeedsThreeTraysOnTwoUses)
{
    grow(1, 250);
    grow(2, 245);
    EXPECT_TRUE(all().empty());
    season.facts.trays[1].pieceUse = 1;
    grow(1, 240);
    EXPECT_TRUE(all().empty());
    grow(2, 240);
    EXPECT_EQ(all().size(), 1u);
    season.facts.trays[3].tray.setAsideReason = "tipped over";
    EXPECT_TRUE(all().empty());
}

TEST_F(PieceAgeingTest, IsShownWithItsLine)
{
    grow(1, 252);
    grow(2, 244);
    grow(3, 242);
    const PieceAgeing ageing = all().at(0);
    const ChartSpec chart = ageingChart(ageing);
    EXPECT_EQ(chart.key, "yield_by_uses");
    ASSERT_EQ(chart.series.size(), 2u);
    EXPECT_EQ(chart.series[0].form, SeriesForm::Line);
    ASSERT_EQ(chart.series[0].points.size(), 2u);
    EXPECT_NEAR(chart.series[0].points[0].y, 251, 1e-9);
    EXPECT_NEAR(chart.series[0].points[1].y, 241, 1e-9);
    EXPECT_EQ(chart.series[1].points.size(), 3u);
    EXPECT_EQ(chart.series[1].points[0].note, "B0");
}

} // namespace
} // namespace plumule
