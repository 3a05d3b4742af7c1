#include "tests/core/tray/tray_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

const Moment kSown{date(2026, 3, 2), 8 * 60};

std::vector<TrayStage> sownBroccoli()
{
    return stagesFor(broccoli(), inertMat(), kSown, FirstStage::AfterSoak);
}

void start(TrayStage& stage, Moment at)
{
    stage.startedOn = at.date;
    stage.startedMinute = at.minute;
}

// Common practice, no source: under weight from day 1, blackout from day 4, light from day 5, cut
// on the morning of day 13.
TEST(StagePlanTest, BroccoliSownOnDayOneIsCutOnTheMorningOfDayThirteen)
{
    const StagePlan plan = planOf(sownBroccoli());
    ASSERT_EQ(plan.spans.size(), 3u);
    EXPECT_EQ(dayCount(kSown.date, plan.spans[0].start.date), 1);
    EXPECT_EQ(dayCount(kSown.date, plan.spans[1].start.date), 4);
    EXPECT_EQ(dayCount(kSown.date, plan.spans[2].start.date), 5);
    EXPECT_EQ(dayCount(kSown.date, plan.harvest.date), 13);
    EXPECT_EQ(plan.harvest.minute, kSown.minute);
    EXPECT_EQ(plan.harvest, plan.harvestPlanned);
}

TEST(StagePlanTest, TheFirstStageOfANewTrayHasBegunAndNoOther)
{
    const auto stages = sownBroccoli();
    EXPECT_EQ(stages[0].started(), kSown);
    EXPECT_FALSE(stages[1].started());
    EXPECT_FALSE(stages[2].started());
    EXPECT_EQ(planOf(stages).current, 0u);
}

TEST(StagePlanTest, EachStageEndsWhereTheNextBeginsAndTheLastAtTheHarvest)
{
    const StagePlan plan = planOf(sownBroccoli());
    EXPECT_EQ(plan.spans[0].end, plan.spans[1].start);
    EXPECT_EQ(plan.spans[1].end, plan.spans[2].start);
    EXPECT_EQ(plan.spans[2].end, plan.harvest);
}

TEST(StagePlanTest, NotYetMovesEverythingAfterItAndLeavesThePlanOfSowing)
{
    auto stages = sownBroccoli();
    stages[0].delayMinutes = 12 * 60;
    const StagePlan plan = planOf(stages);
    for (std::size_t i = 1; i < 3; ++i) {
        EXPECT_EQ(plan.spans[i].start - plan.spans[i].planned, 12 * 60);
    }
    EXPECT_EQ(plan.spans[0].start, kSown);
    EXPECT_EQ(plan.harvest - plan.harvestPlanned, 12 * 60);
}

TEST(StagePlanTest, ADelayNoLongerCountsOnceTheNextStageHasBegun)
{
    auto stages = sownBroccoli();
    stages[0].delayMinutes = 5 * kDay;
    start(stages[1], kSown + 3 * kDay);
    EXPECT_EQ(planOf(stages).harvest, planOf(stages).harvestPlanned);
}

TEST(StagePlanTest, TheRestChainsFromAStageThatBeganEarlyOrLate)
{
    for (const int shift : {-kDay, 2 * kDay}) {
        auto stages = sownBroccoli();
        start(stages[1], kSown + (3 * kDay + shift));
        const StagePlan plan = planOf(stages);
        EXPECT_EQ(plan.current, 1u);
        EXPECT_EQ(plan.spans[2].start - plan.spans[2].planned, shift);
        EXPECT_EQ(plan.harvest - plan.harvestPlanned, shift);
        EXPECT_EQ(plan.spans[0].end, plan.spans[1].start);
    }
}

TEST(StagePlanTest, ATrayWithNothingBegunHasNoCurrentStage)
{
    auto stages = sownBroccoli();
    stages[0].startedOn.reset();
    const StagePlan plan = planOf(stages);
    EXPECT_FALSE(plan.current);
    EXPECT_EQ(plan.spans[0].start, kSown);
}

TEST(StagePlanTest, ASoakComesFirstAndSowingFollowsIt)
{
    const auto stages = stagesFor(soaked(), inertMat(), kSown, FirstStage::Soak);
    ASSERT_EQ(stages.size(), 4u);
    EXPECT_EQ(stages[0].stage, Stage::Soak);
    EXPECT_EQ(stages[1].planned(), kSown + 8 * 60);
    EXPECT_EQ(stages[3].position, 3);
}

TEST(StagePlanTest, SeedThatIsSownAtOnceLeavesTheSoakOut)
{
    const auto stages = stagesFor(soaked(), inertMat(), kSown, FirstStage::AfterSoak);
    ASSERT_EQ(stages.size(), 3u);
    EXPECT_EQ(stages[0].stage, Stage::UnderWeight);
    EXPECT_EQ(stages[0].planned(), kSown);
    EXPECT_EQ(stages[0].position, 0);
}

TEST(StagePlanTest, SowingIsReckonedBackFromTheWantedHarvest)
{
    const Moment harvest{date(2026, 3, 14), 8 * 60};
    const SowingTimes plain = timesForHarvest(broccoli(), harvest);
    EXPECT_EQ(plain.sow, kSown);
    EXPECT_FALSE(plain.soak);
    const SowingTimes withSoak = timesForHarvest(soaked(), harvest);
    EXPECT_EQ(withSoak.sow, kSown);
    EXPECT_EQ(withSoak.soak, Moment(date(2026, 3, 2), 0));
    EXPECT_EQ(planOf(stagesFor(soaked(), inertMat(), *withSoak.soak, FirstStage::Soak)).harvest,
              harvest);
}

TEST(StagePlanTest, ANutrientBearingMediumGetsNoNutrientUnlessItsProtocolSaysSo)
{
    Medium soil = inertMat();
    soil.isNutrientBearing = true;
    ProtocolStage light = broccoli().stages[2];
    EXPECT_EQ(waterFor(light, inertMat()), WaterKind::Nutrient);
    EXPECT_EQ(waterFor(light, soil), WaterKind::PhSet);
    light.waterOnNutrientBearing = WaterKind::Plain;
    EXPECT_EQ(waterFor(light, soil), WaterKind::Plain);
    EXPECT_EQ(waterFor(light, inertMat()), WaterKind::Nutrient);
    light.waterOnNutrientBearing = WaterKind::Nutrient;
    EXPECT_EQ(waterFor(light, soil), WaterKind::Nutrient);
    EXPECT_EQ(waterFor(broccoli().stages[0], soil), WaterKind::Plain);
    EXPECT_EQ(stagesFor(broccoli(), soil, kSown, FirstStage::AfterSoak)[2].water, WaterKind::PhSet);
}

TEST(WaterOfATrial, IsNutrientOrNotAsTheTreatmentSaysWhereTheProtocolFeeds)
{
    Medium soil = inertMat();
    soil.isNutrientBearing = true;
    ProtocolStage light = broccoli().stages.back();
    EXPECT_EQ(waterFor(light, soil, Feeding::Nutrient), WaterKind::Nutrient);
    EXPECT_EQ(waterFor(light, inertMat(), Feeding::Nutrient), WaterKind::Nutrient);
    EXPECT_EQ(waterFor(light, inertMat(), Feeding::NoNutrient), WaterKind::PhSet);
    EXPECT_EQ(waterFor(light, soil, Feeding::NoNutrient), WaterKind::PhSet);
    light.waterOnNutrientBearing = WaterKind::Nutrient;
    EXPECT_EQ(waterFor(light, soil, Feeding::NoNutrient), WaterKind::PhSet);
    for (const Feeding feeding : {Feeding::AsProtocol, Feeding::Nutrient, Feeding::NoNutrient}) {
        EXPECT_EQ(waterFor(broccoli().stages[0], soil, feeding), WaterKind::Plain);
    }
}

TEST(CalendarOf, HasTheEndOrTheSowingOfATrayWithoutStages)
{
    TrayRecord record;
    record.tray.sownOn = kSown.date;
    record.tray.sownMinute = kSown.minute;
    EXPECT_EQ(calendarOf(record).harvest, kSown);
    record.tray.endedOn = kSown.date + 9;
    EXPECT_EQ(calendarOf(record).harvest, (Moment{kSown.date + 9, 0}));
    record.stages = stagesFor(broccoli(), inertMat(), kSown, FirstStage::AfterSoak);
    EXPECT_EQ(calendarOf(record).harvest, planOf(record.stages).harvest);
}

TEST(StagePlanTest, ARimReadingIsCorrectedByTheDepthOfTheMedium)
{
    Height height;
    height.reading = millimetres(35);
    EXPECT_EQ(heightAboveSurface(height, inertMat()), millimetres(35));
    height.from = ReadFrom::Rim;
    EXPECT_EQ(heightAboveSurface(height, inertMat()), millimetres(55));
    height.reading = millimetres(-12);
    EXPECT_EQ(heightAboveSurface(height, inertMat()), millimetres(8));
}

TEST(StagePlanTest, ARimReadingOnAMediumOfUnknownDepthIsNoHeight)
{
    Medium unknown = inertMat();
    unknown.surfaceBelowRim.reset();
    Height height;
    height.reading = millimetres(35);
    EXPECT_TRUE(heightAboveSurface(height, unknown));
    height.from = ReadFrom::Rim;
    const auto above = heightAboveSurface(height, unknown);
    ASSERT_FALSE(above);
    EXPECT_EQ(above.error().kind, ErrorKind::NotEstimable);
}

TEST(StagePlanTest, TheNextCodeFollowsTheHighestOneEverUsed)
{
    EXPECT_EQ(nextCode("RD", {}), "RD001");
    EXPECT_EQ(nextCode("RD", {"RD001", "RD028", "RD007"}), "RD029");
    EXPECT_EQ(nextCode("RD", {"rd041"}), "RD042");
    EXPECT_EQ(nextCode("RD", {"RD999"}), "RD1000");
    EXPECT_EQ(nextCode("RD", {"RD12b", "RDX", "RC050", "RD", "RD99999999999"}), "RD001");
}

} // namespace
} // namespace plumule
