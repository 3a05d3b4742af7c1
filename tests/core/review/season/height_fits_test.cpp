#include "tests/core/review/comparison/comparison_samples.h"

#include "core/review/charts/comparison_charts.h"

#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using testing::ElementsAre;

// Trays read on days 3 to 11 along 90/(1 + exp((6 − day)/1.5)), a little up or down.
void growAlongACurve(SeasonRecord& record, double offset)
{
    for (int day = 3; day <= 11; ++day) {
        Height height;
        height.on = record.tray.sownOn + (day - 1);
        height.reading =
            millimetres(90 / (1 + std::exp((6 - day) / 1.5)) + (day % 2 == 0 ? offset : -offset));
        record.heights.push_back(height);
    }
}

ComparisonSamples grownSeason()
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 260});
    season.addTrays(kMesh, {250});
    growAlongACurve(season.facts.trays[0], 0.5);
    growAlongACurve(season.facts.trays[1], -0.4);
    return season;
}

TEST(HeightFits, FindTheCurveThatWasPutIn)
{
    const ComparisonSamples season = grownSeason();
    const auto fits = heightFits(season.facts, season.filter);
    ASSERT_EQ(fits.size(), 1u);
    const HeightFit& fit = fits[0];
    EXPECT_EQ(fit.medium.name, "Loose mix");
    EXPECT_EQ(fit.variety, "Radish");
    EXPECT_EQ(fit.curve, "logistic");
    EXPECT_EQ(fit.trays, 2);
    EXPECT_EQ(fit.readings.size(), 18u);
    EXPECT_EQ(fit.sowings, 1);
    ASSERT_TRUE(fit.fullHeight && fit.dayAt90);
    EXPECT_NEAR(fit.fullHeight->value, 90, 0.7);
    // Top rate A/4s; 90 % at tm + s·ln 9.
    EXPECT_NEAR(fit.topRate.value, 15, 0.3);
    EXPECT_NEAR(fit.dayAt90->value, 6 + 1.5 * std::log(9), 0.15);
}

// Two trays are no measure of how trays repeat, however often they are read.
TEST(HeightFits, HaveNoIntervalUnderThreeTrays)
{
    ComparisonSamples season = grownSeason();
    const HeightFit two = heightFits(season.facts, season.filter).at(0);
    EXPECT_FALSE(two.topRate.lower);
    EXPECT_FALSE(two.dayAt90->upper);
    EXPECT_EQ(two.band.front().lower, two.band.front().fit);

    growAlongACurve(season.facts.trays[2], 0.3);
    season.facts.trays[2].tray.medium = season.facts.trays[0].tray.medium;
    const HeightFit three = heightFits(season.facts, season.filter).at(0);
    EXPECT_EQ(three.trays, 3);
    ASSERT_TRUE(three.dayAt90->lower && three.fullHeight->lower);
    EXPECT_LT(*three.fullHeight->lower, 90);
    EXPECT_GT(*three.fullHeight->upper, 90);
    EXPECT_LT(*three.dayAt90->lower, three.dayAt90->value);
}

// Full height 90 and its 90 % on day 9.3; the readings end on day 8.
TEST(HeightFits, LeaveOutWhatLiesBeyondTheLastReading)
{
    ComparisonSamples season = grownSeason();
    for (SeasonRecord& record : season.facts.trays) {
        std::erase_if(record.heights,
                      [&](const Height& height) { return height.on - record.tray.sownOn + 1 > 8; });
    }
    const HeightFit fit = heightFits(season.facts, season.filter).at(0);
    EXPECT_FALSE(fit.curve.empty());
    EXPECT_FALSE(fit.fullHeight);
    EXPECT_FALSE(fit.dayAt90);
    ASSERT_TRUE(fit.sharedHeight);
    EXPECT_LE(fit.sharedHeight->day.value, 8);
}

TEST(HeightFits, HaveABandByHalfDaysAlongTheReadings)
{
    ComparisonSamples season = grownSeason();
    growAlongACurve(season.facts.trays[2], 0.3);
    season.facts.trays[2].tray.medium = season.facts.trays[0].tray.medium;
    const HeightFit fit = heightFits(season.facts, season.filter).at(0);
    ASSERT_EQ(fit.band.size(), 17u);
    EXPECT_DOUBLE_EQ(fit.band.front().day, 3);
    EXPECT_DOUBLE_EQ(fit.band.back().day, 11);
    for (const HeightAt& at : fit.band) {
        EXPECT_LT(at.lower, at.fit);
        EXPECT_GT(at.upper, at.fit);
    }
}

// The logistic curve turned round: day = 6 + 1.5 ln(h / (90 - h)); the tallest ten under 0.9 · 90.
TEST(HeightFits, TellTheDayOfAHeightThatAllMediaReach)
{
    ComparisonSamples season = grownSeason();
    const HeightFit alone = heightFits(season.facts, season.filter).at(0);
    ASSERT_TRUE(alone.sharedHeight);
    EXPECT_EQ(alone.sharedHeight->height, 80);
    EXPECT_NEAR(alone.sharedHeight->day.value, 6 + 1.5 * std::log(8), 0.15);

    // Shorter on mesh: 0.9 · 50 leaves 40 mm for both.
    growAlongACurve(season.facts.trays[2], 0.3);
    for (Height& height : season.facts.trays[2].heights) {
        height.reading = millimetres(inMillimetres(height.reading) / 1.8);
    }
    const auto both = heightFits(season.facts, season.filter);
    ASSERT_EQ(both.size(), 2u);
    for (const HeightFit& fit : both) {
        ASSERT_TRUE(fit.sharedHeight);
        EXPECT_EQ(fit.sharedHeight->height, 40);
    }
    EXPECT_LT(both[0].sharedHeight->day.value, both[1].sharedHeight->day.value);
}

TEST(HeightFits, SayWhyThereIsNoCurve)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250});
    Height height;
    height.on = season.facts.trays[0].tray.sownOn + 3;
    height.reading = millimetres(30);
    season.facts.trays[0].heights = {height};
    const HeightFit fit = heightFits(season.facts, season.filter).at(0);
    EXPECT_EQ(fit.curve, "");
    ASSERT_TRUE(fit.why);
    EXPECT_EQ(fit.why->kind, ErrorKind::TooFew);
    EXPECT_TRUE(fit.band.empty());
    EXPECT_FALSE(fit.sharedHeight);
}

TEST(HeightFits, LeaveOutTraysThatDoNotCount)
{
    ComparisonSamples season = grownSeason();
    season.facts.trays[0].tray.setAsideReason = "tipped over";
    EXPECT_EQ(heightFits(season.facts, season.filter).at(0).trays, 1);
    season.facts.trays[1].tray.variety = {2};
    EXPECT_EQ(heightFits(season.facts, season.filter).at(0).variety, "Pea");
}

TEST(HeightFitChart, ShowsOneVarietysCurvesAndReadings)
{
    ComparisonSamples season = grownSeason();
    growAlongACurve(season.facts.trays[2], 0.3);
    season.facts.trays[2].tray.variety = {2};
    const auto fits = heightFits(season.facts, season.filter);
    EXPECT_EQ(mostReadVariety(fits), VarietyId{1});
    EXPECT_EQ(mostReadVariety({}), std::nullopt);
    const ChartSpec spec = heightFitChart(fits, {1});
    EXPECT_EQ(spec.key, "height_curves");
    EXPECT_EQ(spec.y.unit, "mm");
    ASSERT_EQ(spec.series.size(), 2u);
    EXPECT_EQ(spec.series[0].form, SeriesForm::Band);
    EXPECT_EQ(spec.series[0].marker, 3);
    EXPECT_DOUBLE_EQ(spec.series[0].intervals[0].mid, fits[0].band[0].fit);
    EXPECT_EQ(spec.series[1].form, SeriesForm::Dots);
    EXPECT_EQ(spec.series[1].points.size(), 18u);
    EXPECT_EQ(heightFitChart(fits, {2}).series[0].name, "Mesh");
}

TEST(AdjustedMeansChart, HasARowAMediumWithDotsAndTheAdjustedMean)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 250, 252});
    season.addTrays(kMesh, {298, 300, 303});
    const SeasonComparison answer = season.compare();
    const ChartSpec spec = adjustedMeansChart(answer);
    EXPECT_EQ(spec.key, "yield_adjusted");
    EXPECT_EQ(spec.form, ChartForm::DotRows);
    EXPECT_THAT(spec.rows, ElementsAre("Loose mix", "Mesh"));
    EXPECT_EQ(spec.x.key, "yield");
    EXPECT_EQ(spec.x.unit, "g");
    ASSERT_EQ(spec.series.size(), 4u);
    EXPECT_THAT(spec.series[0].points, ElementsAre(ChartPoint{0, 248, "A1", 100, false},
                                                   ChartPoint{0, 250, "A2", 101, false},
                                                   ChartPoint{0, 252, "A3", 102, false}));
    const ComparedMedium& mesh = answer.means[1];
    EXPECT_EQ(spec.series[3].form, SeriesForm::Intervals);
    EXPECT_THAT(spec.series[3].intervals,
                ElementsAre(ChartInterval{1, *mesh.mean, *mesh.mean, *mesh.mean}));
}

TEST(AdjustedMeansChart, NamesTheUnitOfTheResponse)
{
    ComparisonSamples season;
    const auto unit = [&](Response response) {
        return adjustedMeansChart(season.compare(response)).x.unit;
    };
    EXPECT_EQ(unit(Response::YieldPerArea), "g/m²");
    EXPECT_EQ(unit(Response::CostPerGram), "EUR/g");
    EXPECT_EQ(unit(Response::HeightOnDay), "mm");
    EXPECT_EQ(unit(Response::DaysToHarvest), "");
}

TEST(DifferencesChart, MarksNothingAndTheMargin)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 250, 252});
    season.addTrays(kMesh, {298, 300, 303});
    const SeasonComparison answer = season.compare(Response::YieldPerTray, 20);
    const ChartSpec spec = differencesChart(answer);
    EXPECT_THAT(spec.rows, ElementsAre("Mesh − Loose mix"));
    ASSERT_EQ(spec.series.size(), 1u);
    EXPECT_DOUBLE_EQ(spec.series[0].intervals[0].mid, *answer.pairs[0].percent);
    ASSERT_EQ(spec.marks.size(), 3u);
    EXPECT_EQ(spec.marks[0].key, "no_difference");
    EXPECT_NEAR(spec.marks[1].at, 100 * (1 / 1.2 - 1), 1e-9);
    EXPECT_DOUBLE_EQ(spec.marks[2].at, 20);
}

TEST(DifferencesChart, LeavesOutPairsWithoutAnInterval)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248});
    season.addTrays(kMesh, {298});
    EXPECT_TRUE(differencesChart(season.compare()).rows.empty());
}

} // namespace
} // namespace plumule
