#include "tests/core/review/comparison/comparison_samples.h"

#include "core/review/charts/comparison_charts.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

class ResponseValuesTest : public testing::Test
{
protected:
    void read(SeasonRecord& record, int day, const std::vector<double>& readings,
              ReadFrom from = ReadFrom::Surface)
    {
        for (const double reading : readings) {
            Height height;
            height.on = record.tray.sownOn + (day - 1);
            height.reading = millimetres(reading);
            height.from = from;
            record.heights.push_back(height);
        }
    }
    ComparisonSamples season;
};

// By hand: 40, 50, 60 have the mean 50 and the sd 10.
TEST_F(ResponseValuesTest, EvennessIsTheVariationWithinATray)
{
    read(season.add("A1", kMix, 250), 9, {40, 50, 60});
    read(season.add("A2", kMix, 250), 9, {50, 50, 50});
    const SeasonComparison answer = season.compare(Response::Evenness);
    ASSERT_EQ(answer.n, 2);
    EXPECT_NEAR(answer.trays[0].value, 20, 1e-9);
    EXPECT_NEAR(answer.trays[1].value, 0, 1e-9);
}

TEST_F(ResponseValuesTest, EvennessIsOfTheLastDayWithThreeReadings)
{
    SeasonRecord& tray = season.add("A1", kMix, 250);
    read(tray, 7, {10, 20, 30});
    read(tray, 9, {40, 50, 60});
    read(tray, 11, {70, 90});
    read(season.add("A2", kMix, 250), 9, {40, 60});
    const SeasonComparison answer = season.compare(Response::Evenness);
    ASSERT_EQ(answer.n, 1);
    EXPECT_EQ(answer.withoutValue, 1);
    EXPECT_NEAR(answer.trays[0].value, 20, 1e-9);
}

TEST_F(ResponseValuesTest, EvennessIsOfHeightsAboveTheMedium)
{
    // Read from a rim 10 mm above the mix's surface; the mesh's depth is not known.
    read(season.add("A1", kMix, 250), 9, {30, 40, 50}, ReadFrom::Rim);
    read(season.add("A2", kMesh, 250), 9, {30, 40, 50}, ReadFrom::Rim);
    const SeasonComparison answer = season.compare(Response::Evenness);
    ASSERT_EQ(answer.n, 1);
    EXPECT_NEAR(answer.trays[0].value, 20, 1e-9);
}

TEST_F(ResponseValuesTest, WorkIsTheMinutesOfWhatWasDone)
{
    season.facts.cost.labour = {
        {{1}, LabourKind::Sowing, 240},     {{2}, LabourKind::Watering, 20},
        {{3}, LabourKind::StageMove, 30},   {{4}, LabourKind::Harvesting, 180},
        {{5}, LabourKind::Packing, 120},    {{6}, LabourKind::ClearingOut, 60},
        {{7}, LabourKind::PieceWashing, 90}};
    for (const MediumId medium : {kMix, kMesh}) {
        SeasonRecord& tray = season.add("A" + std::to_string(medium.value), medium, 250);
        tray.use.waterings = 12;
        tray.use.stageMoves = 2;
    }
    season.add("A3", kMix, 250); // how often it was watered is not known
    const SeasonComparison answer = season.compare(Response::Work);
    ASSERT_EQ(answer.n, 2);
    EXPECT_EQ(answer.withoutValue, 1);
    EXPECT_DOUBLE_EQ(answer.trays[0].value, 4 + 4 + 1 + 3 + 2 + 1);
    EXPECT_DOUBLE_EQ(answer.trays[1].value, 15 + 1.5) << "and its piece was washed";
}

TEST_F(ResponseValuesTest, HaveKeysAndUnitsOfTheirOwn)
{
    read(season.add("A1", kMix, 250), 9, {40, 50, 60});
    const ChartSpec even = adjustedMeansChart(season.compare(Response::Evenness));
    EXPECT_EQ(even.key, "evenness_adjusted");
    EXPECT_EQ(even.x.unit, "%");
    EXPECT_STREQ(toText(Response::Work), "work");
    EXPECT_EQ(adjustedMeansChart(season.compare(Response::Work)).x.unit, "min");
}

} // namespace
} // namespace plumule
