#include "tests/core/review/comparison/comparison_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

TEST(ComparedTrays, CountOnlyThoseThatCountAndHaveAValue)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 260, 270});
    season.facts.trays[0].tray.setAsideReason = "tipped over";
    season.facts.trays[1].use.residue = grams(900);
    const SeasonComparison residue = season.compare(Response::Residue);
    EXPECT_EQ(residue.n, 1);
    EXPECT_EQ(residue.withoutValue, 1);
    EXPECT_DOUBLE_EQ(residue.trays.at(0).value, 900);
}

TEST(ComparedTrays, ReadEachResponseInItsUnit)
{
    ComparisonSamples season;
    season.addTrays(kMix, {260});
    season.facts.trays[0].tray.seed = grams(26);
    const auto value = [&](Response response) {
        return season.compare(response).trays.at(0).value;
    };
    EXPECT_DOUBLE_EQ(value(Response::YieldPerTray), 260);
    EXPECT_NEAR(value(Response::YieldPerArea), 260 / (0.254 * 0.508), 1e-9);
    EXPECT_DOUBLE_EQ(value(Response::YieldPerSeed), 10);
    EXPECT_DOUBLE_EQ(value(Response::YieldPerDay), 20);
    EXPECT_DOUBLE_EQ(value(Response::DaysToHarvest), 13);
}

TEST(ComparedTrays, TakeHeightsOnTheDayMostWereReadOnUnlessAskedOtherwise)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 260});
    season.addTrays(kMesh, {250, 260});
    const auto read = [&](std::size_t tray, int day, double mm) {
        Height height;
        height.on = season.facts.trays[tray].tray.sownOn + (day - 1);
        height.reading = millimetres(mm);
        season.facts.trays[tray].heights.push_back(height);
    };
    for (const std::size_t tray : {0u, 1u, 2u, 3u}) {
        read(tray, 7, 70 + double(tray));
    }
    read(0, 9, 90);
    read(1, 9, 91);
    const SeasonComparison answer = season.compare(Response::HeightOnDay);
    EXPECT_EQ(answer.day, 7);
    EXPECT_EQ(answer.n, 4);
    EXPECT_EQ(season.compare(ComparisonAsk{Response::HeightOnDay, 9, {}, {}}).n, 2);
}

} // namespace
} // namespace plumule
