#include "core/journal/review/review_answers.h"
#include "core/review/charts/season_charts.h"
#include "tests/core/review/facts/season_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using testing::ElementsAre;

SeasonReview twoMedia(double cleaning = 0.75)
{
    SeasonSamples season;
    season.priceAsInTheHandbook(cleaning);
    season.add("RD001", kMix, 250);
    season.add("RD002", kMix, 262);
    season.add("RD003", kMesh, 300);
    return season.review();
}

TEST(CostByUsesChart, DrawsCurvesAndMarksThePayback)
{
    const ChartSpec spec = costByUsesChart(twoMedia());
    EXPECT_EQ(spec.key, "cost_by_uses");
    EXPECT_EQ(spec.form, ChartForm::Curves);
    ASSERT_EQ(spec.series.size(), 2u);
    EXPECT_EQ(spec.series[1].form, SeriesForm::Line);
    EXPECT_EQ(spec.series[1].points.size(), 60u);
    EXPECT_NEAR(spec.series[1].points[0].y, 18.75 / 300, 1e-12);
    EXPECT_EQ(spec.x.low, 1.0);
    EXPECT_EQ(spec.x.high, 60.0);
    ASSERT_EQ(spec.marks.size(), 1u);
    EXPECT_EQ(spec.marks[0].key, "pays_back");
    EXPECT_EQ(spec.marks[0].name, "Mesh");
    EXPECT_TRUE(spec.marks[0].isVertical);
}

TEST(CostByUsesChart, HasNoMarkWhereAPieceNeverPaysBack)
{
    const ChartSpec spec = costByUsesChart(twoMedia(2.0));
    EXPECT_EQ(spec.series.size(), 2u);
    EXPECT_TRUE(spec.marks.empty());
}

TEST(CostByUsesChart, LeavesAPaybackBeyondItsEndUnmarked)
{
    const ChartSpec spec = costByUsesChart(twoMedia(1.28));
    EXPECT_EQ(spec.x.high, 500.0);
    EXPECT_TRUE(spec.marks.empty());
}

TEST(HeightChart, BandsTheDaysOfTwoTraysAndDotsTheRest)
{
    SeasonSamples season;
    Height height;
    height.on = date(2026, 2, 6);
    height.reading = millimetres(40);
    season.add("A", kMix, 250).heights = {height};
    height.reading = millimetres(44);
    Height later = height;
    later.on = date(2026, 2, 8);
    season.add("B", kMix, 250).heights = {height, later};
    season.add("C", kMesh, 250);
    const ChartSpec spec = heightChart(season.review());
    EXPECT_EQ(spec.key, "height_by_day");
    EXPECT_EQ(spec.x.key, "day");
    EXPECT_TRUE(spec.x.isWhole);
    EXPECT_EQ(spec.y.unit, "mm");
    ASSERT_EQ(spec.series.size(), 2u);
    EXPECT_EQ(spec.series[0].form, SeriesForm::Band);
    ASSERT_EQ(spec.series[0].intervals.size(), 1u);
    EXPECT_EQ(spec.series[0].intervals[0].x, 5);
    EXPECT_EQ(spec.series[0].intervals[0].mid, 42);
    EXPECT_THAT(spec.series[1].points, ElementsAre(ChartPoint{7, 44, "", std::nullopt, false}));
}

TEST(TrialSoFarChart, ShowsWeighedTraysRowByRow)
{
    Medium mix;
    mix.id = {4};
    mix.name = "Loose mix";
    Medium mesh;
    mesh.id = {2};
    mesh.name = "Mesh";
    mesh.marker = 5;
    TrialSoFar trial;
    trial.dots = {{{1}, "RD001", mix, grams(250), 1},
                  {{2}, "RD002", mesh, grams(300), 1},
                  {{3}, "RD003", mesh, std::nullopt, 2},
                  {{4}, "RD004", mesh, grams(310), 2}};
    const ChartSpec spec = trialSoFarChart(trial);
    EXPECT_EQ(spec.key, "trial_so_far");
    EXPECT_THAT(spec.rows, ElementsAre("Mesh", "Loose mix"));
    ASSERT_EQ(spec.series.size(), 3u);
    EXPECT_EQ(spec.series[0].marker, 5);
    EXPECT_THAT(spec.series[0].points, ElementsAre(ChartPoint{0, 300, "RD002", 2, false},
                                                   ChartPoint{0, 310, "RD004", 4, false}));
    ASSERT_EQ(spec.series[1].intervals.size(), 1u);
    EXPECT_EQ(spec.series[1].intervals[0].mid, 305);
    EXPECT_EQ(spec.series[2].name, "Loose mix");
    EXPECT_THAT(spec.series[2].points, ElementsAre(ChartPoint{1, 250, "RD001", 1, false}));
}

TEST(Charts, OfAnEmptySeasonAreEmptyAndNotAtFault)
{
    const SeasonReview review;
    EXPECT_TRUE(heightChart(review).series.empty());
    EXPECT_TRUE(costByUsesChart(review).series.empty());
    EXPECT_TRUE(trialSoFarChart({}).series.empty());
}

} // namespace
} // namespace plumule
