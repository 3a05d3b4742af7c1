#include "core/review/comparison/series_trays.h"

#include "tests/core/review/comparison/comparison_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

class SeriesTraysTest : public testing::Test
{
protected:
    SeriesTrays gathered(Response response = Response::YieldPerTray)
    {
        priceTrays(season.facts);
        ComparisonAsk ask;
        ask.response = response;
        compared = comparedTrays(season.facts, season.filter, ask);
        return seriesTrays(season.facts, season.filter, compared, response);
    }

    void growOn(std::size_t tray)
    {
        UnfinishedRecord grows;
        grows.tray = season.facts.trays[tray].tray;
        grows.tray.id = {900};
        grows.tray.state = TrayState::Growing;
        grows.tray.endedOn.reset();
        grows.trialSownOn = season.facts.trays[tray].trialSownOn;
        season.facts.unfinished.push_back(grows);
    }

    ComparisonSamples season;
    ComparedTrays compared;
};

TEST_F(SeriesTraysTest, ASowingIsATrialOrADayAndTheOldestComesFirst)
{
    season.addTrays(kMix, {200, 210});
    season.sowFrom(0, date(2026, 2, 20));
    season.addTrays(kMesh, {220}, {2});
    season.sowFrom(2, date(2026, 2, 9));
    season.addTrial(4, 10, {250}, {260}); // 11 January
    // A trial whose trays are sown over several days is one sowing all the same.
    season.facts.trays.back().tray.sownOn = date(2026, 1, 14);
    const SeriesTrays series = gathered();
    ASSERT_EQ(series.sowings.size(), 3u);
    EXPECT_EQ(series.sowings[0].code, "T4");
    EXPECT_EQ(series.sowings[0].trial, TrialId{4});
    EXPECT_EQ(series.sowings[0].sownOn, date(2026, 1, 11));
    EXPECT_EQ(series.sowings[0].trays, 2);
    EXPECT_EQ(series.sowings[1].sownOn, date(2026, 2, 9));
    EXPECT_EQ(series.sowings[1].varieties, std::vector<std::string>{"Pea"});
    EXPECT_FALSE(series.sowings[1].trial);
    EXPECT_EQ(series.sowings[2].sownOn, date(2026, 2, 20));
    EXPECT_EQ(series.sowings[2].trays, 2);
    for (const Sowing& sowing : series.sowings) {
        EXPECT_TRUE(sowing.isAllIn());
    }
    // Trays stand by medium: of mix those of the day and the trial's, then of mesh.
    std::vector<std::size_t> numbers;
    for (const stats::SownTray& tray : series.trays) {
        numbers.push_back(tray.sowing);
    }
    EXPECT_EQ(numbers, (std::vector<std::size_t>{2, 2, 0, 1, 0}));
}

TEST_F(SeriesTraysTest, OneDayIsTwoSowingsWhereOneOfThemIsATrial)
{
    season.addTrial(1, 10, {250}, {260});
    season.addTrays(kMix, {240});
    season.sowFrom(2, date(2026, 1, 11));
    EXPECT_EQ(gathered().sowings.size(), 2u);
}

TEST_F(SeriesTraysTest, ASowingIsNotAllInWhileATrayOfItGrows)
{
    season.addTrial(1, 10, {250}, {260});
    growOn(0);
    const SeriesTrays series = gathered();
    EXPECT_EQ(series.sowings[0].trays, 3);
    EXPECT_EQ(series.sowings[0].in, 2);
    EXPECT_FALSE(series.values[0].isIn);
}

TEST_F(SeriesTraysTest, ATrayThatWasCutAndGrowsOnIsOneTray)
{
    season.addTrial(1, 10, {250}, {260});
    season.facts.trays[0].tray.state = TrayState::Growing;
    season.facts.trays[0].lastCut.reset();
    growOn(0);
    season.facts.unfinished.back().tray.id = season.facts.trays[0].tray.id;
    const SeriesTrays series = gathered();
    EXPECT_EQ(series.sowings[0].trays, 2);
    EXPECT_EQ(series.sowings[0].in, 1);
    EXPECT_EQ(series.trays.size(), 1u);
}

TEST_F(SeriesTraysTest, WhatIsCutAfterTheDaysAskedAboutIsNotIn)
{
    season.addTrial(1, 10, {250}, {260});
    season.facts.trays[1].cutOn = {date(2026, 3, 20), date(2026, 4, 2)};
    season.facts.trays[1].lastCut = date(2026, 4, 2);
    EXPECT_EQ(gathered().sowings[0].in, 1);
}

TEST_F(SeriesTraysTest, AChoiceHidesTraysButNotWhatStillGrows)
{
    season.addTrial(1, 10, {250}, {260});
    growOn(0);
    season.facts.unfinished.back().tray.variety = {2};
    season.filter.varieties = {VarietyId{1}};
    const SeriesTrays series = gathered();
    EXPECT_EQ(series.sowings[0].trays, 3);
    EXPECT_FALSE(series.sowings[0].isAllIn());
    EXPECT_EQ(series.sowings[0].varieties, (std::vector<std::string>{"Radish", "Pea"}));
}

TEST_F(SeriesTraysTest, ATrialWaitsForTraysOfOtherDaysAndOfItsPlan)
{
    season.addTrial(1, 10, {250}, {260});
    season.facts.standings[TrialId{1}] = {date(2026, 1, 11), 2, 0};
    EXPECT_TRUE(gathered().sowings[0].isAllIn());
    season.facts.standings[TrialId{1}].sown = 5;
    EXPECT_EQ(gathered().sowings[0].trays, 5);
    season.facts.standings[TrialId{1}].unsown = 3;
    EXPECT_EQ(gathered().sowings[0].trays, 8);
    season.facts.standings[TrialId{1}].sown = 0; // fewer than are on record
    EXPECT_EQ(gathered().sowings[0].trays, 5);
}

// 100 and 200 g on the mix are 150, 250 on the mesh: 200 together, each medium counting once.
TEST_F(SeriesTraysTest, PercentsAreOfTheMeanOverMediaOfOneSowingAndVariety)
{
    season.addTrial(1, 10, {100, 200}, {250});
    season.addTrial(2, 20, {80}, {});
    const SeriesTrays series = gathered();
    ASSERT_EQ(series.values.size(), 4u);
    EXPECT_NEAR(*series.values[0].percentOfTrial, 50, 1e-9);
    EXPECT_NEAR(*series.values[1].percentOfTrial, 100, 1e-9);
    EXPECT_NEAR(*series.values[2].percentOfTrial, 100, 1e-9) << "alone in its sowing";
    EXPECT_NEAR(*series.values[3].percentOfTrial, 125, 1e-9);
    // Peas of the same day are held against peas.
    season.facts.trays[1].tray.variety = {2};
    const SeriesTrays mixed = gathered();
    EXPECT_NEAR(*mixed.values[1].percentOfTrial, 100, 1e-9);
    EXPECT_NEAR(*mixed.values[0].percentOfTrial, 100 * 100 / 175.0, 1e-9);
}

TEST_F(SeriesTraysTest, AMeanOfNothingHasNoPercents)
{
    season.addTrial(1, 10, {0}, {0});
    EXPECT_FALSE(gathered().values.at(0).percentOfTrial);
}

TEST_F(SeriesTraysTest, AFailedTrayIsZeroPerTraySownAndItsCostInCostsAlone)
{
    season.price(PriceItem::Medium, 1, kMix); // 2 L a tray
    season.addTrial(1, 10, {200, 200}, {300});
    season.discard(1);
    const auto failedOf = [&](Response response) {
        const SeriesTrays series = gathered(response);
        EXPECT_EQ(series.trays.size(), 3u);
        EXPECT_EQ(series.values.size(), response == Response::CostPerGram ? 1u : 2u);
        return series.trays.back();
    };
    EXPECT_FALSE(failedOf(Response::YieldPerTray).value);
    EXPECT_EQ(failedOf(Response::YieldPerTraySown).value, 0.0);
    EXPECT_EQ(failedOf(Response::YieldPerTraySown).per, 1.0);
    EXPECT_FALSE(failedOf(Response::DaysToHarvest).value);
}

TEST_F(SeriesTraysTest, CostsAreARatioOfSums)
{
    season.price(PriceItem::Medium, 1, kMix); // 2 L a tray: 2.00
    season.addTrays(kMix, {200, 200});
    season.discard(1);
    const SeriesTrays series = gathered(Response::CostPerGram);
    ASSERT_EQ(series.trays.size(), 2u);
    EXPECT_NEAR(*series.trays[0].value, 2, 1e-9);
    EXPECT_NEAR(series.trays[0].per, 200, 1e-9);
    EXPECT_NEAR(*series.trays[1].value, 2, 1e-9);
    EXPECT_EQ(series.trays[1].per, 0);
    EXPECT_NEAR(series.values.at(0).value, 0.01, 1e-12);
}

TEST_F(SeriesTraysTest, ASquareThatMissesAPlaceIsNone)
{
    season.addTrial(1, 10, {250, 251}, {260, 261});
    season.addTrial(2, 20, {250}, {260});
    for (SeasonRecord& record : season.facts.trays) {
        record.column = 1;
        record.tray.block = 2;
    }
    season.facts.trays[2].column.reset();
    const SeriesTrays series = gathered();
    for (const stats::SownTray& tray : series.trays) {
        EXPECT_EQ(tray.column.has_value(), tray.sowing == 1) << tray.sowing;
        EXPECT_EQ(tray.block, 2u);
    }
    // A tray that was thrown away is not missed.
    season.facts.trays[2].column = 1;
    season.facts.trays[1].column.reset();
    season.discard(1);
    EXPECT_TRUE(gathered().trays.front().column);
}

TEST_F(SeriesTraysTest, DiscardsAreCountedOfSowingsThatAreIn)
{
    season.addTrial(1, 10, {250, 251, 252}, {260});
    season.addTrial(2, 20, {250}, {260});
    season.discard(0);
    season.discard(4);
    growOn(4);
    season.facts.trays[1].tray.setAsideReason = "knocked over";
    const SeriesTrays series = gathered();
    ASSERT_EQ(series.discards.size(), 2u) << "trial 2 still grows";
    EXPECT_EQ(series.discards[0].medium, 0u);
    EXPECT_EQ(series.discards[0].sown, 2) << "without the one set aside";
    EXPECT_EQ(series.discards[0].discarded, 1);
    EXPECT_EQ(series.discards[1].medium, 1u);
    EXPECT_EQ(series.discards[1].sown, 1);
    EXPECT_EQ(series.discards[1].discarded, 0);
}

TEST_F(SeriesTraysTest, OfNothingAreNone)
{
    const SeriesTrays series = gathered();
    EXPECT_TRUE(series.sowings.empty());
    EXPECT_TRUE(series.trays.empty());
    EXPECT_TRUE(series.discards.empty());
}

TEST(ScaleOf, CountsAndVariationsAreLinearAndSumsOverSumsRatios)
{
    EXPECT_EQ(scaleOf(Response::YieldPerTray), stats::CellScale::Log);
    EXPECT_EQ(scaleOf(Response::HeightOnDay), stats::CellScale::Log);
    EXPECT_EQ(scaleOf(Response::Residue), stats::CellScale::Log);
    EXPECT_EQ(scaleOf(Response::YieldPerTraySown), stats::CellScale::LogOfRatio);
    EXPECT_EQ(scaleOf(Response::CostPerGram), stats::CellScale::LogOfRatio);
    EXPECT_EQ(scaleOf(Response::DaysToHarvest), stats::CellScale::Linear);
    EXPECT_EQ(scaleOf(Response::Evenness), stats::CellScale::Linear);
}

} // namespace
} // namespace plumule
