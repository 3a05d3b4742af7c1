#include "tests/core/watering/round_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

const Date kDayOne = date(2026, 3, 2);
const Moment kSown{kDayOne, 7 * 60};

class RoundTest : public ::testing::Test
{
protected:
    void SetUp() override
    {
        facts.layout = oneShelf(4);
        facts.growing = {trayOf(1, broccoli(), inertMat(), kSown)};
    }

    TrayRecord& tray() { return facts.growing.front(); }
    [[nodiscard]] Round morning(int day) const
    {
        return roundFrom(facts, kDayOne + (day - 1), Slot::Morning);
    }
    [[nodiscard]] Round evening(int day) const
    {
        return roundFrom(facts, kDayOne + (day - 1), Slot::Evening);
    }
    void giveMist(int day, Slot slot)
    {
        facts.waterings.push_back(misted(tray().tray.id, kDayOne + (day - 1), slot));
    }

    RoundFacts facts;
};

// Sixteen light-stage waterings of 118 mL take 1.89 L and 22.2 mL of concentrate at 11.72 mL/L,
// which is 1.5 US fl oz per US gallon; misted until light (common practice, no source).
TEST_F(RoundTest, BroccoliTakesSixteenLightWateringsAndTheirConcentrate)
{
    const Volume dose = millilitres(1.5 * millilitresPerLitreFrom(1));
    EXPECT_NEAR(inMillilitres(dose), 11.72, 0.005);
    Volume below;
    int mistings = 0;
    int waterings = 0;
    for (int day = 1; day <= 13; ++day) {
        for (const Slot slot : {Slot::Morning, Slot::Evening}) {
            const Date on = kDayOne + (day - 1);
            Round round = roundFrom(facts, on, slot);
            if (!round.decisions.empty() && round.decisions[0].to) {
                begin(tray(), *planOf(tray().stages).current + 1, round.decisions[0].due);
                round = roundFrom(facts, on, slot);
            }
            if (!round.decisions.empty()) {
                ASSERT_EQ(day, 13);
                EXPECT_TRUE(round.trays.empty());
                continue;
            }
            ASSERT_EQ(round.trays.size(), 1u) << day;
            EXPECT_FALSE(round.trays[0].drought) << day;
            facts.waterings.push_back(wateringOf(round.trays[0], on, slot));
            if (round.trays[0].method == WateringMethod::Below) {
                EXPECT_EQ(round.trays[0].water, WaterKind::Nutrient);
                below += *round.trays[0].amount;
                ++waterings;
            } else {
                ++mistings;
            }
        }
    }
    EXPECT_EQ(mistings, 8);
    EXPECT_EQ(waterings, 16);
    EXPECT_NEAR(inLitres(below), 1.89, 0.005);
    // 22.13 mL of 1.888 L; 22.2 mL is that of sixteen whole half cups, 1.893 L.
    EXPECT_NEAR(inMillilitres(concentrateFor(below, dose)), 22.13, 0.005);
    EXPECT_NEAR(inMillilitres(concentrateFor(usCups(0.5) * 16, dose)), 22.2, 0.05);
}

TEST_F(RoundTest, AStageThatIsDueIsADecisionAndIsWateredAsItStands)
{
    EXPECT_TRUE(evening(3).decisions.empty());
    const Round round = morning(4);
    ASSERT_EQ(round.decisions.size(), 1u);
    EXPECT_EQ(round.decisions[0].from, Stage::UnderWeight);
    EXPECT_EQ(round.decisions[0].to, Stage::Blackout);
    EXPECT_EQ(round.decisions[0].cue, "leave under_weight");
    EXPECT_EQ(round.decisions[0].daysLate, 0);
    EXPECT_EQ(round.decisions[0].day, 4);
    ASSERT_EQ(round.trays.size(), 1u);
    EXPECT_EQ(round.trays[0].stage, Stage::UnderWeight);
}

TEST_F(RoundTest, WhatIsDueUpToThreeHoursAfterTheRoundBelongsToIt)
{
    facts.growing = {trayOf(1, broccoli(), inertMat(), {kDayOne, 10 * 60}),
                     trayOf(2, broccoli(), inertMat(), {kDayOne, 10 * 60 + 1})};
    ASSERT_EQ(morning(4).decisions.size(), 1u);
    EXPECT_EQ(morning(4).decisions[0].tray, TrayId{1});
    EXPECT_EQ(evening(4).decisions.size(), 2u);
}

TEST_F(RoundTest, ALateDecisionStaysAndSaysHowLate)
{
    EXPECT_EQ(evening(4).decisions.at(0).daysLate, 0);
    EXPECT_EQ(morning(6).decisions.at(0).daysLate, 2);
    EXPECT_EQ(morning(6).decisions.at(0).to, Stage::Blackout);
}

TEST_F(RoundTest, OnceReadyIsSaidTheNewStageAsksAndTheDecisionIsGone)
{
    begin(tray(), 1, {kDayOne + 3, 7 * 60 + 20});
    begin(tray(), 2, {kDayOne + 4, 7 * 60 + 20});
    const Round round = morning(5);
    EXPECT_TRUE(round.decisions.empty());
    ASSERT_EQ(round.trays.size(), 1u);
    EXPECT_EQ(round.trays[0].stage, Stage::Light);
    EXPECT_EQ(round.trays[0].method, WateringMethod::Below);
    EXPECT_EQ(round.trays[0].amount, millilitres(118));
}

TEST_F(RoundTest, NotYetTakesTheDecisionToTheNextRound)
{
    tray().stages[0].delayMinutes = 12 * 60;
    EXPECT_TRUE(morning(4).decisions.empty());
    EXPECT_EQ(evening(4).decisions.size(), 1u);
    tray().stages[0].delayMinutes += 12 * 60;
    EXPECT_TRUE(evening(4).decisions.empty());
    EXPECT_EQ(morning(5).decisions.size(), 1u);
}

TEST_F(RoundTest, ATrayDueToBeCutIsADecisionAndIsNotWatered)
{
    begin(tray(), 1, kSown + 3 * kDay);
    begin(tray(), 2, kSown + 4 * kDay);
    EXPECT_EQ(evening(12).trays.size(), 1u);
    const Round round = morning(13);
    EXPECT_TRUE(round.trays.empty());
    ASSERT_EQ(round.decisions.size(), 1u);
    EXPECT_FALSE(round.decisions[0].to);
    EXPECT_EQ(round.decisions[0].from, Stage::Light);
    EXPECT_EQ(round.decisions[0].day, 13);
}

TEST_F(RoundTest, ATrayThatIsNotCutYetIsWateredOn)
{
    begin(tray(), 1, kSown + 3 * kDay);
    begin(tray(), 2, kSown + 4 * kDay);
    tray().stages[2].delayMinutes = 12 * 60;
    EXPECT_EQ(morning(13).trays.size(), 1u);
    EXPECT_TRUE(morning(13).decisions.empty());
    EXPECT_EQ(evening(13).decisions.size(), 1u);
}

TEST_F(RoundTest, ATrayThatIsCutAgainLaterIsWateredOnAfterItsFirstCut)
{
    begin(tray(), 1, kSown + 3 * kDay);
    begin(tray(), 2, kSown + 4 * kDay);
    facts.cuts[tray().tray.id] = {{kDayOne + 12, 8 * 60}};
    EXPECT_EQ(morning(13).trays.size(), 1u);
    EXPECT_TRUE(morning(13).decisions.empty());
    EXPECT_EQ(morning(20).trays.size(), 1u);
    facts.cuts[tray().tray.id] = {{kDayOne + 13, 8 * 60}};
    EXPECT_EQ(evening(13).decisions.size(), 1u) << "it was still to cut then";
    facts.cuts[tray().tray.id] = {{kDayOne + 10, 8 * 60}};
    EXPECT_EQ(morning(13).decisions.size(), 1u) << "a cut before the harvest was due";
    facts.cuts[tray().tray.id] = {{kDayOne + 12, 8 * 60}};
    facts.now = Moment{kDayOne + 13, 8 * 60};
    EXPECT_EQ(morning(20).trays.size(), 1u);
}

TEST_F(RoundTest, DaysAreCountedFromTheDayOfSowing)
{
    EXPECT_EQ(morning(1).trays.at(0).day, 1);
    EXPECT_EQ(evening(2).trays.at(0).day, 2);
    EXPECT_EQ(morning(1).trays.at(0).harvestDay, 13);
}

TEST_F(RoundTest, OnceADayMeansMornings)
{
    tray().stages[0].wateringsPerDay = 1;
    EXPECT_EQ(morning(2).trays.size(), 1u);
    EXPECT_TRUE(evening(2).trays.empty());
    tray().stages[0].wateringsPerDay = 0;
    tray().stages[0].method = WateringMethod::None;
    EXPECT_TRUE(morning(2).trays.empty());
}

TEST_F(RoundTest, ATrayIsNotAskedForInARoundBeforeItWasSown)
{
    facts.growing = {trayOf(1, broccoli(), inertMat(), {kDayOne, 8 * 60})};
    EXPECT_TRUE(morning(1).trays.empty());
    EXPECT_EQ(evening(1).trays.size(), 1u);
    EXPECT_TRUE(evening(0).trays.empty());
    EXPECT_FALSE(evening(1).trays[0].drought);
}

TEST_F(RoundTest, AMissedWateringIsFlaggedInTheNextRound)
{
    giveMist(1, Slot::Morning);
    EXPECT_FALSE(evening(1).trays.at(0).drought);
    const auto drought = morning(2).trays.at(0).drought;
    ASSERT_TRUE(drought);
    EXPECT_EQ(drought->missed, (RoundKey{kDayOne, Slot::Evening}));
    EXPECT_FALSE(morning(2).trays.at(0).isForgotten()) << "one round is not forgetting yet";
    giveMist(1, Slot::Evening);
    EXPECT_FALSE(morning(2).trays.at(0).drought);
}

TEST_F(RoundTest, OnlyTheLastWateringThatWasDueCountsAsMissed)
{
    giveMist(2, Slot::Morning);
    EXPECT_FALSE(evening(2).trays.at(0).drought);
    tray().stages[0].wateringsPerDay = 1;
    EXPECT_FALSE(morning(3).trays.at(0).drought);
    const auto drought = morning(4).trays.at(0).drought;
    ASSERT_TRUE(drought);
    EXPECT_EQ(drought->missed, (RoundKey{kDayOne + 2, Slot::Morning}));
}

TEST_F(RoundTest, ForgottenTraysAreNamedTheWorstFirst)
{
    facts.growing.push_back(trayOf(2, broccoli(), inertMat(), kSown));
    facts.growing.push_back(trayOf(3, broccoli(), inertMat(), kSown));
    giveMist(1, Slot::Morning);
    facts.waterings.push_back(misted({2}, kDayOne + 1, Slot::Evening));
    facts.lastWaterings[{3}] = misted({3}, kDayOne, Slot::Evening);
    const Round round = morning(4);
    const auto forgotten = round.forgotten();
    ASSERT_EQ(forgotten.size(), 3u);
    EXPECT_EQ(forgotten[0]->tray, TrayId{1});
    EXPECT_EQ(forgotten[0]->drought->days, 3);
    EXPECT_EQ(forgotten[1]->tray, TrayId{3});
    EXPECT_EQ(forgotten[2]->tray, TrayId{2});
    EXPECT_EQ(forgotten[2]->drought->days, 2);
    giveMist(4, Slot::Morning);
    EXPECT_EQ(morning(4).forgotten().size(), 2u) << "ticked, it is forgotten no longer";
}

TEST_F(RoundTest, ATrayNeverWateredIsForgottenAfterADay)
{
    EXPECT_FALSE(evening(1).trays.at(0).isForgotten());
    EXPECT_TRUE(morning(2).trays.at(0).isForgotten());
    EXPECT_TRUE(morning(2).trays.at(0).drought->isNever);
}

TEST_F(RoundTest, WaterBetweenRoundsIsNoTickButMakesUpForAMissedOne)
{
    Watering given = misted(tray().tray.id, kDayOne + 1, Slot::Morning);
    given.isBetween = true;
    given.minute = 11 * 60;
    facts.waterings.push_back(given);
    const Round round = morning(2);
    ASSERT_EQ(round.trays.size(), 1u);
    EXPECT_FALSE(round.trays[0].isDone());
    ASSERT_EQ(round.trays[0].between.size(), 1u);
    EXPECT_EQ(round.doneCount(), 0);
    EXPECT_EQ(round.toDoCount(), 1);
    EXPECT_FALSE(evening(2).trays.at(0).drought);
    EXPECT_EQ(evening(2).trays.at(0).last, given);
}

TEST_F(RoundTest, ATrayThatIsNotAskedForIsShownForTheWaterThatItGotAndCountsForNothing)
{
    tray().stages[0].wateringsPerDay = 1;
    Watering given = misted(tray().tray.id, kDayOne + 1, Slot::Evening);
    given.isBetween = true;
    given.amount = millilitres(50);
    facts.waterings.push_back(given);
    const Round round = evening(2);
    ASSERT_EQ(round.trays.size(), 1u);
    EXPECT_TRUE(round.trays[0].isAside());
    EXPECT_EQ(round.toDoCount(), 0);
    EXPECT_EQ(round.doneCount(), 0);
    EXPECT_TRUE(round.mix.empty()) << "it was given already";
}

TEST_F(RoundTest, ATrayWateredAsNeededIsDoneWhenItNeededNothing)
{
    tray().stages[0].wateringsPerDay = 0;
    tray().stages[0].amount = millilitres(40);
    Round round = morning(2);
    ASSERT_EQ(round.trays.size(), 1u);
    EXPECT_TRUE(round.trays[0].isAsNeeded);
    EXPECT_EQ(round.mix.at(0).total, millilitres(40));
    EXPECT_EQ(round.mix.at(0).asNeeded, millilitres(40));
    facts.looks = {{{1}, tray().tray.id, kDayOne + 1, Slot::Morning, 430}};
    round = morning(2);
    EXPECT_TRUE(round.trays[0].isDone());
    EXPECT_EQ(round.doneCount(), 1);
    EXPECT_TRUE(round.mix.empty());
}

TEST_F(RoundTest, NotNeededAgainAndAgainIsCountedAndInTheEndForgotten)
{
    tray().stages[0].wateringsPerDay = 0;
    giveMist(1, Slot::Morning);
    facts.looks = {{{1}, tray().tray.id, kDayOne, Slot::Evening, 1080},
                   {{2}, tray().tray.id, kDayOne + 1, Slot::Morning, 420},
                   {{3}, tray().tray.id, kDayOne + 1, Slot::Evening, 1080}};
    EXPECT_FALSE(morning(3).trays.at(0).isForgotten());
    EXPECT_TRUE(morning(4).trays.at(0).isForgotten());
    EXPECT_EQ(morning(4).trays.at(0).looksSince, 3);
    EXPECT_EQ(morning(2).trays.at(0).looksSince, 2) << "this round's own included";
}

TEST_F(RoundTest, NothingIsMissedInAStageThatIsNotWatered)
{
    tray().stages[1].wateringsPerDay = 0;
    tray().stages[1].method = WateringMethod::None;
    begin(tray(), 1, kSown + 3 * kDay);
    begin(tray(), 2, kSown + 5 * kDay);
    giveMist(3, Slot::Evening);
    EXPECT_FALSE(evening(4).trays.size());
    EXPECT_EQ(morning(6).trays.size(), 1u);
    EXPECT_FALSE(morning(6).trays[0].drought);
}

TEST_F(RoundTest, AStageBegunInTheMiddleOfARoundWasNotMissedInIt)
{
    tray().stages[0].wateringsPerDay = 0;
    tray().stages[0].method = WateringMethod::None;
    begin(tray(), 1, {kDayOne + 3, 12 * 60});
    ASSERT_EQ(evening(4).trays.size(), 1u);
    EXPECT_FALSE(evening(4).trays[0].drought);
}

TEST_F(RoundTest, ATickedTrayStaysInTheRoundAsDone)
{
    giveMist(2, Slot::Morning);
    const Round round = morning(2);
    ASSERT_EQ(round.trays.size(), 1u);
    EXPECT_TRUE(round.trays[0].isDone());
    EXPECT_EQ(round.doneCount(), 1);
    EXPECT_EQ(evening(2).doneCount(), 0);
}

TEST_F(RoundTest, ATrayNeverWateredIsStillAskedFor)
{
    ASSERT_EQ(morning(1).trays.size(), 1u);
    EXPECT_FALSE(morning(1).trays[0].last);
    facts.lastWaterings[tray().tray.id] = misted(tray().tray.id, kDayOne, Slot::Morning);
    ASSERT_TRUE(evening(1).trays.at(0).last);
    EXPECT_EQ(evening(1).trays[0].last->slot, Slot::Morning);
}

TEST_F(RoundTest, AnEndedTrayIsGoneButForWhatItWasGivenInThatRound)
{
    giveMist(2, Slot::Morning);
    tray().tray.state = TrayState::Discarded;
    tray().tray.endedOn = kDayOne + 1;
    tray().tray.endedMinute = 8 * 60;
    EXPECT_EQ(morning(2).trays.size(), 1u);
    EXPECT_TRUE(morning(2).trays[0].isDone());
    EXPECT_TRUE(evening(2).trays.empty());
    EXPECT_TRUE(morning(5).decisions.empty());
    EXPECT_EQ(evening(1).trays.size(), 1u) << "it grew then";
    EXPECT_EQ(evening(2).tomorrow.freePlaces, 4);
    EXPECT_EQ(evening(1).tomorrow.freePlaces, 3);
}

TEST_F(RoundTest, APastRoundIsShownAsThingsStoodThen)
{
    begin(tray(), 1, kSown + 3 * kDay);
    begin(tray(), 2, kSown + 4 * kDay);
    facts.now = Moment{kDayOne + 7, 8 * 60};
    EXPECT_EQ(morning(3).trays.at(0).stage, Stage::UnderWeight);
    EXPECT_EQ(evening(4).trays.at(0).stage, Stage::Blackout);
    EXPECT_EQ(morning(7).trays.at(0).stage, Stage::Light);
}

TEST_F(RoundTest, AFutureRoundIsShownAsPlanned)
{
    facts.now = Moment{kDayOne, 8 * 60};
    const Round decided = morning(5);
    EXPECT_EQ(decided.trays.at(0).stage, Stage::Blackout);
    EXPECT_EQ(decided.decisions.at(0).to, Stage::Light);
    const Round lit = evening(5);
    EXPECT_EQ(lit.trays.at(0).stage, Stage::Light);
    EXPECT_TRUE(lit.decisions.empty());
    EXPECT_FALSE(lit.trays[0].drought) << "what is still to come is not missed";
    EXPECT_FALSE(morning(13).decisions.at(0).to);
    EXPECT_TRUE(evening(13).trays.empty());
    EXPECT_TRUE(evening(13).decisions.empty());
    EXPECT_EQ(evening(13).tomorrow.freePlaces, 4);
}

TEST_F(RoundTest, ALateStageIsTakenAsBegunNowInAFutureRound)
{
    facts.now = Moment{kDayOne + 5, 8 * 60};
    EXPECT_EQ(morning(6).decisions.at(0).to, Stage::Blackout);
    EXPECT_EQ(evening(6).trays.at(0).stage, Stage::Blackout);
    EXPECT_EQ(morning(7).decisions.at(0).to, Stage::Light);
}

TEST_F(RoundTest, TraysComeInWalkingOrderAndThoseWithoutAPlaceLast)
{
    facts.growing = {trayOf(3, broccoli(), inertMat(), kSown),
                     trayOf(2, broccoli(), inertMat(), kSown),
                     trayOf(1, broccoli(), inertMat(), kSown)};
    facts.growing[2].place.reset();
    const Round round = morning(2);
    ASSERT_EQ(round.trays.size(), 3u);
    EXPECT_EQ(round.trays[0].tray, TrayId{2});
    EXPECT_EQ(round.trays[1].tray, TrayId{3});
    EXPECT_EQ(round.trays[2].tray, TrayId{1});
    EXPECT_FALSE(round.trays[2].spot);
    EXPECT_EQ(round.trays[0].spot->rack, "A");
}

class MixTest : public RoundTest
{
protected:
    void SetUp() override
    {
        facts.layout = oneShelf(4);
        Medium soil = inertMat();
        soil.isNutrientBearing = true;
        for (int i = 1; i <= 3; ++i) {
            facts.growing.push_back(trayOf(i, broccoli(), i == 3 ? soil : inertMat(), kSown));
            begin(facts.growing.back(), 1, kSown + 3 * kDay);
            begin(facts.growing.back(), 2, kSown + 4 * kDay);
        }
        WaterRecipe nutrient;
        nutrient.dosePerLitre = millilitres(11.72);
        WaterRecipe phSet;
        phSet.water = WaterKind::PhSet;
        facts.recipes = {nutrient, phSet};
    }
};

TEST_F(MixTest, TheMixIsSummedByKindOfWater)
{
    const Round round = morning(6);
    ASSERT_EQ(round.mix.size(), 2u);
    EXPECT_EQ(round.mix[0].water, WaterKind::Nutrient);
    EXPECT_EQ(round.mix[0].total, millilitres(236));
    EXPECT_NEAR(inMillilitres(round.mix[0].concentrate.value()), 0.236 * 11.72, 0.001);
    EXPECT_EQ(round.mix[1].water, WaterKind::PhSet);
    EXPECT_EQ(round.mix[1].total, millilitres(118));
    EXPECT_FALSE(round.mix[1].concentrate);
}

TEST_F(MixTest, WhatWasReallyGivenCountsInTheMix)
{
    Watering given = wateringOf(morning(6).trays[0], kDayOne + 5, Slot::Morning);
    given.amount = millilitres(200);
    facts.waterings = {given};
    EXPECT_EQ(morning(6).mix[0].total, millilitres(318));
    facts.waterings[0].amount.reset();
    EXPECT_EQ(morning(6).mix[0].total, millilitres(118));
    EXPECT_EQ(morning(6).mix[0].unmeasured, 1);
}

TEST_F(MixTest, MistingHasItsOwnLineAndItsUnmeasuredTrays)
{
    facts.growing.push_back(trayOf(4, broccoli(), inertMat(), {kDayOne + 4, 7 * 60}));
    const Round round = morning(6);
    ASSERT_EQ(round.mix.size(), 3u);
    EXPECT_EQ(round.mix[2].method, WateringMethod::Mist);
    EXPECT_EQ(round.mix[2].total, Volume());
    EXPECT_EQ(round.mix[2].unmeasured, 1);
}

TEST_F(MixTest, TheLastReadingOfTheMixIsShownAndNoLaterOneNorATrays)
{
    WaterReading reading;
    reading.on = kDayOne + 4;
    reading.ph = 5.9;
    facts.readings = {reading};
    reading.ph = 6.4;
    reading.tray = TrayId{1};
    facts.readings.push_back(reading);
    reading.tray.reset();
    reading.on = kDayOne + 5;
    reading.slot = Slot::Evening;
    facts.readings.push_back(reading);
    ASSERT_TRUE(morning(6).mix[0].lastReading);
    EXPECT_EQ(morning(6).mix[0].lastReading->ph, 5.9);
    EXPECT_EQ(evening(6).mix[0].lastReading->ph, 6.4);
    EXPECT_FALSE(morning(6).mix[1].lastReading);
}

TEST(TomorrowTest, CountsWhatFallsDueInTomorrowsRounds)
{
    const Date today = date(2026, 3, 2);
    RoundFacts facts;
    facts.layout = oneShelf(8);
    facts.growing = {trayOf(1, broccoli(), inertMat(), {today - 11, 8 * 60}),
                     trayOf(2, broccoli(), inertMat(), {today - 3, 8 * 60}),
                     trayOf(3, broccoli(), inertMat(), {today - 2, 8 * 60}),
                     trayOf(4, broccoli(), inertMat(), {today - 2, 22 * 60}),
                     trayOf(5, soaked(), inertMat(), {today, 17 * 60 + 30}, true)};
    begin(facts.growing[0], 1, {today - 8, 8 * 60});
    begin(facts.growing[0], 2, {today - 7, 8 * 60});
    begin(facts.growing[1], 1, {today, 8 * 60});
    const Tomorrow tomorrow = roundFrom(facts, today, Slot::Evening).tomorrow;
    EXPECT_EQ(tomorrow.harvests, 1);
    EXPECT_EQ(tomorrow.intoLight, 1);
    EXPECT_EQ(tomorrow.intoBlackout, 1) << "22:00 tomorrow belongs to the morning after";
    EXPECT_EQ(tomorrow.toSow, 1);
    EXPECT_EQ(tomorrow.places, 8);
    EXPECT_EQ(tomorrow.freePlaces, 3);
}

TEST(SoakTest, SeedThatHasSoakedIsADecisionToSowAndIsNotWatered)
{
    RoundFacts facts;
    facts.layout = oneShelf(2);
    facts.growing = {trayOf(1, soaked(), inertMat(), {kDayOne, 8 * 60}, true)};
    const Round round = roundFrom(facts, kDayOne, Slot::Evening);
    EXPECT_TRUE(round.trays.empty());
    ASSERT_EQ(round.decisions.size(), 1u);
    EXPECT_EQ(round.decisions[0].from, Stage::Soak);
    EXPECT_EQ(round.decisions[0].to, Stage::UnderWeight);
    EXPECT_EQ(round.decisions[0].day, 1);
}

TEST(BareTrayTest, ATrayBroughtInWithoutStagesAsksForNothingAndHoldsItsPlace)
{
    RoundFacts facts;
    facts.layout = oneShelf(2);
    TrayRecord record;
    record.tray.id = {1};
    record.place = PlaceId{1};
    facts.growing = {record};
    const Round round = roundFrom(facts, kDayOne, Slot::Morning);
    EXPECT_TRUE(round.trays.empty());
    EXPECT_TRUE(round.decisions.empty());
    EXPECT_EQ(round.tomorrow.freePlaces, 1);
}

} // namespace
} // namespace plumule
