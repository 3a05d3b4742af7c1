#include "tests/core/review/comparison/comparison_samples.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::Not;

class FairnessTest : public testing::Test
{
protected:
    FairnessTest()
    {
        season.addTrays(kMix, {250, 251, 252, 253});
        season.addTrays(kMesh, {260, 261, 262, 263});
    }

    // A tray's number: 0 to 3 on the mix, 4 to 7 on the mesh.
    SeasonRecord& tray(std::size_t number) { return season.facts.trays[number]; }

    void feed(std::size_t number, bool isFed)
    {
        tray(number).use.waterings = 10;
        tray(number).nutrientWaterings = isFed ? 4 : 0;
    }

    [[nodiscard]] std::vector<Finding> findings() { return season.compare().fairness; }
    [[nodiscard]] Finding finding(Aspect aspect)
    {
        for (const Finding& one : findings()) {
            if (one.aspect == aspect) {
                return one;
            }
        }
        ADD_FAILURE() << "nothing is said of it";
        return {};
    }
    [[nodiscard]] bool isSaid(Aspect aspect)
    {
        const auto all = findings();
        return std::any_of(all.begin(), all.end(),
                           [&](const Finding& one) { return one.aspect == aspect; });
    }
    [[nodiscard]] std::vector<Advice> advice()
    {
        std::vector<Advice> all;
        for (const Advice suggestion : suggestionsFor(season.compare().fairness)) {
            all.push_back(suggestion);
        }
        return all;
    }

    ComparisonSamples season;
};

TEST_F(FairnessTest, SaysFirstThatEveryMeshWasFedAndNoMixWas)
{
    for (std::size_t i = 0; i < 8; ++i) {
        feed(i, i >= 4);
    }
    const Finding first = findings().at(0);
    EXPECT_EQ(first.aspect, Aspect::Feeding);
    EXPECT_EQ(first.confounding, Confounding::Fully);
    EXPECT_FALSE(first.isInModel);
    ASSERT_EQ(first.media.size(), 2u);
    EXPECT_THAT(first.media[0].levels, ElementsAre(AspectLevel{"no_nutrient", 4}));
    EXPECT_THAT(first.media[1].levels, ElementsAre(AspectLevel{"nutrient", 4}));
    EXPECT_EQ(first.worst, (std::pair<std::size_t, std::size_t>(1, 0)));
    EXPECT_EQ(advice().at(0), Advice::FeedAllAlike);
}

TEST_F(FairnessTest, SaysPartlyWhereSharesDiffer)
{
    for (std::size_t i = 0; i < 8; ++i) {
        feed(i, i >= 3);
    }
    EXPECT_EQ(finding(Aspect::Feeding).confounding, Confounding::Partly);
    EXPECT_THAT(advice(), Contains(Advice::FeedAllAlike));
}

TEST_F(FairnessTest, SaysAlikeWhereAllWereFed)
{
    for (std::size_t i = 0; i < 8; ++i) {
        feed(i, true);
    }
    EXPECT_EQ(finding(Aspect::Feeding).confounding, Confounding::Alike);
    EXPECT_EQ(finding(Aspect::Feeding).worst, std::nullopt);
    EXPECT_THAT(advice(), Not(Contains(Advice::FeedAllAlike)));
}

TEST_F(FairnessTest, GoesByThePlanWhereNoWateringIsOnRecord)
{
    EXPECT_EQ(wasFed(tray(0)), std::nullopt);
    tray(0).hasStages = true;
    EXPECT_EQ(wasFed(tray(0)), false);
    tray(0).plansNutrient = true;
    EXPECT_EQ(wasFed(tray(0)), true);
    feed(0, false);
    EXPECT_EQ(wasFed(tray(0)), false);
}

TEST_F(FairnessTest, IsSilentWhereNothingIsOnRecord)
{
    EXPECT_FALSE(isSaid(Aspect::Feeding));
    EXPECT_FALSE(isSaid(Aspect::SeedLot));
    EXPECT_FALSE(isSaid(Aspect::Person));
    feed(0, true);
    EXPECT_FALSE(isSaid(Aspect::Feeding)) << "of one medium only";
    feed(4, true);
    EXPECT_EQ(finding(Aspect::Feeding).media[0].unknown, 3);
}

TEST_F(FairnessTest, ComparesSeedLotsWithinAVariety)
{
    SeedLot lot;
    lot.lotNumber = "L9";
    season.facts.cost.lots[SeedLotId{9}] = lot;
    for (std::size_t i = 0; i < 8; ++i) {
        tray(i).tray.variety = {i % 2 == 0 ? 1 : 2};
        tray(i).tray.seedLot = SeedLotId{i % 2 == 0 ? 8 : 9};
    }
    EXPECT_EQ(finding(Aspect::SeedLot).confounding, Confounding::Alike);
    // Now the mesh gets lots of its own in both.
    for (std::size_t i = 4; i < 8; ++i) {
        tray(i).tray.seedLot = SeedLotId{i % 2 == 0 ? 6 : 7};
    }
    const Finding lots = finding(Aspect::SeedLot);
    EXPECT_EQ(lots.confounding, Confounding::Fully);
    EXPECT_THAT(lots.media[0].levels, Contains(AspectLevel{"L9", 2}));
}

TEST_F(FairnessTest, AShelfForEachTrayTellsNothingOfShelves)
{
    for (std::size_t i = 0; i < 8; ++i) {
        tray(i).shelf = ShelfId{static_cast<std::int64_t>(i) + 1};
    }
    EXPECT_EQ(finding(Aspect::Shelf).confounding, Confounding::Partly);
}

TEST_F(FairnessTest, NamesShelvesByTheirRacks)
{
    Rack rack;
    rack.id = {1};
    rack.name = "A";
    Shelf shelf;
    shelf.id = {5};
    shelf.rack = {1};
    shelf.name = "2";
    season.facts.cost.layout.racks = {rack};
    season.facts.cost.layout.shelves = {shelf};
    for (std::size_t i = 0; i < 8; ++i) {
        tray(i).shelf = ShelfId{5};
    }
    EXPECT_THAT(finding(Aspect::Shelf).media[0].levels, ElementsAre(AspectLevel{"A/2", 4}));
    EXPECT_EQ(finding(Aspect::Shelf).confounding, Confounding::Alike);
}

TEST_F(FairnessTest, SaysWhereMediaGrewInOtherMonths)
{
    for (std::size_t i = 4; i < 8; ++i) {
        tray(i).tray.sownOn = date(2026, 1, 20);
    }
    const Finding months = finding(Aspect::Season);
    EXPECT_EQ(months.confounding, Confounding::Fully);
    EXPECT_THAT(months.media[1].levels, ElementsAre(AspectLevel{"2026-01", 4}));
    EXPECT_THAT(advice(), Contains(Advice::SowAllOnOneDay));
}

TEST_F(FairnessTest, ComparesDensityAndDaysByTheirNumbers)
{
    for (std::size_t i = 0; i < 8; ++i) {
        tray(i).tray.seed = grams(i < 4 ? 25 : 30);
        tray(i).lastCut = tray(i).tray.sownOn + (i < 2 ? 12 : 14);
    }
    const Finding density = finding(Aspect::SeedDensity);
    EXPECT_EQ(density.confounding, Confounding::Fully);
    EXPECT_NEAR(density.media[0].numbers->mean, 25 / (0.254 * 0.508), 1e-9);
    const Finding days = finding(Aspect::DaysGrown);
    EXPECT_EQ(days.confounding, Confounding::Partly);
    EXPECT_EQ(*days.media[0].numbers, (AspectNumbers{14, 13, 15}));
    EXPECT_EQ(*days.media[1].numbers, (AspectNumbers{15, 15, 15}));
}

TEST_F(FairnessTest, DoesNotHoldDaysAgainstAComparisonOfDays)
{
    const auto all = season.compare(Response::DaysToHarvest).fairness;
    EXPECT_TRUE(std::none_of(all.begin(), all.end(),
                             [](const Finding& one) { return one.aspect == Aspect::DaysGrown; }));
}

TEST_F(FairnessTest, ComparesUsesAmongReusableMediaOnly)
{
    for (std::size_t i = 4; i < 8; ++i) {
        tray(i).pieceUse = 20;
    }
    EXPECT_FALSE(isSaid(Aspect::PieceUses));
    for (std::size_t i = 0; i < 4; ++i) {
        tray(i).pieceUse = 1;
    }
    EXPECT_EQ(finding(Aspect::PieceUses).confounding, Confounding::Fully);
}

TEST_F(FairnessTest, ComparesTheClimateThatLoggersTold)
{
    EXPECT_FALSE(isSaid(Aspect::Temperature));
    for (std::size_t i = 0; i < 8; ++i) {
        tray(i).climate.temperature = i < 4 ? 20.0 + 0.2 * static_cast<double>(i) : 23.0;
        tray(i).climate.vpd = 0.9;
        tray(i).climate.dli = i < 4 ? 9.0 : i == 4 ? 9.0 : 12.0;
    }
    tray(7).climate.temperature.reset();
    const Finding warmth = finding(Aspect::Temperature);
    EXPECT_EQ(warmth.confounding, Confounding::Fully);
    EXPECT_NEAR(warmth.media[0].numbers->mean, 20.3, 1e-9);
    EXPECT_EQ(warmth.media[0].numbers->low, 20.0);
    EXPECT_NEAR(warmth.media[0].numbers->high, 20.6, 1e-9);
    EXPECT_EQ(warmth.media[1].unknown, 1);
    EXPECT_EQ(finding(Aspect::Vpd).confounding, Confounding::Alike);
    EXPECT_EQ(finding(Aspect::DailyLight).confounding, Confounding::Partly);
    EXPECT_THAT(advice(), Contains(Advice::GrowInOneClimate));
    EXPECT_THAT(advice(), Contains(Advice::LightAllAlike));
}

// Two loggers side by side differ by as much.
TEST_F(FairnessTest, DoesNotHoldALoggersOwnErrorAgainstTheMedia)
{
    for (std::size_t i = 0; i < 8; ++i) {
        tray(i).climate.temperature = i < 4 ? 20.0 : 20.9;
        tray(i).climate.vpd = i < 4 ? 0.80 : 0.89;
    }
    EXPECT_EQ(finding(Aspect::Temperature).confounding, Confounding::Alike);
    EXPECT_EQ(finding(Aspect::Vpd).confounding, Confounding::Alike);
}

TEST_F(FairnessTest, GivesAnAdviceOnce)
{
    for (std::size_t i = 0; i < 8; ++i) {
        tray(i).climate.temperature = i < 4 ? 18 : 25;
        tray(i).climate.vpd = i < 4 ? 0.5 : 1.5;
    }
    const auto all = advice();
    EXPECT_EQ(std::count(all.begin(), all.end(), Advice::GrowInOneClimate), 1);
}

TEST_F(FairnessTest, NamesPeople)
{
    for (std::size_t i = 0; i < 8; ++i) {
        tray(i).tray.sownBy = i < 4 ? "Ada" : "Mo";
    }
    const Finding people = finding(Aspect::Person);
    EXPECT_EQ(people.confounding, Confounding::Fully);
    EXPECT_THAT(people.media[1].levels, ElementsAre(AspectLevel{"Mo", 4}));
}

TEST_F(FairnessTest, NamesTheTrialInWhichItIsFullyConfounded)
{
    season.nameTrials(2);
    // In the first trial feeding goes with the medium, in the second all are fed.
    for (std::size_t i = 0; i < 8; ++i) {
        const bool isFirst = i % 4 < 2;
        tray(i).tray.trial = TrialId{isFirst ? 1 : 2};
        feed(i, !isFirst || i >= 4);
    }
    const Finding feeding = finding(Aspect::Feeding);
    EXPECT_EQ(feeding.confounding, Confounding::Partly);
    EXPECT_THAT(feeding.fullyInTrials, ElementsAre("T1"));
}

TEST_F(FairnessTest, PutsTheWorstFirstAndMarksWhatTheModelTakesIn)
{
    season.addTrays(kMesh, {400, 401}, {2});
    season.addTrays(kMix, {390}, {2});
    for (std::size_t i = 0; i < season.facts.trays.size(); ++i) {
        feed(i, tray(i).tray.medium == kMesh);
    }
    const auto all = findings();
    EXPECT_EQ(all.front().confounding, Confounding::Fully);
    EXPECT_EQ(all.back().confounding, Confounding::Alike);
    EXPECT_TRUE(std::is_sorted(all.begin(), all.end(), [](const Finding& a, const Finding& b) {
        return a.confounding < b.confounding;
    }));
    const Finding varieties = finding(Aspect::Variety);
    EXPECT_EQ(varieties.confounding, Confounding::Partly);
    EXPECT_TRUE(varieties.isInModel);
    EXPECT_THAT(advice(), Not(Contains(Advice::GrowEachVarietyOnEveryMedium)));
}

} // namespace
} // namespace plumule
