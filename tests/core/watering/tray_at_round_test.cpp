#include "core/watering/tray_at_round.h"

#include "tests/core/watering/round_samples.h"

#include <gtest/gtest.h>
#include <set>

namespace plumule {
namespace {

const Date kFirst = date(2026, 3, 2);
const Moment kAtSeven{kFirst, 7 * 60};

class TrayAtRoundTest : public ::testing::Test
{
protected:
    [[nodiscard]] std::optional<TrayAtRound> at(int day, Slot slot,
                                                std::optional<Moment> now = std::nullopt) const
    {
        return trayAtRound(record, cuts, room, {kFirst + (day - 1), slot}, now);
    }
    [[nodiscard]] std::optional<Drought> drought(int day, Slot slot,
                                                 std::optional<Moment> now = std::nullopt) const
    {
        const auto after = given.lower_bound(key(day, slot));
        const auto last = after == given.begin() ? std::nullopt : std::optional(*std::prev(after));
        return droughtBefore(record, cuts, room, key(day, slot), now, last);
    }
    [[nodiscard]] std::optional<RoundKey> missed(int day, Slot slot) const
    {
        const auto found = drought(day, slot);
        return found ? found->missed : std::nullopt;
    }
    static RoundKey key(int day, Slot slot) { return {kFirst + (day - 1), slot}; }

    Room room;
    TrayRecord record = trayOf(1, broccoli(), inertMat(), kAtSeven);
    CutMoments cuts;
    std::set<RoundKey> given;
};

TEST_F(TrayAtRoundTest, ThereIsNothingBeforeSowing)
{
    EXPECT_FALSE(at(0, Slot::Evening));
    ASSERT_TRUE(at(1, Slot::Morning));
    EXPECT_TRUE(at(1, Slot::Morning)->isAsked) << "sown at the very minute of the round";
}

TEST_F(TrayAtRoundTest, KnowsItsStageAndWhatComesNext)
{
    const auto tray = at(2, Slot::Morning);
    ASSERT_TRUE(tray);
    EXPECT_EQ(tray->present().stage, Stage::UnderWeight);
    EXPECT_EQ(tray->nextDue(), kAtSeven + 3 * kDay);
    EXPECT_FALSE(tray->isNextDue);
    EXPECT_TRUE(at(4, Slot::Morning)->isNextDue);
    EXPECT_FALSE(at(4, Slot::Morning)->isHarvestDue);
}

TEST_F(TrayAtRoundTest, NothingComesNextButTheHarvestInTheLastStage)
{
    begin(record, 1, kAtSeven + 3 * kDay);
    begin(record, 2, kAtSeven + 4 * kDay);
    EXPECT_EQ(at(6, Slot::Morning)->nextDue(), kAtSeven + 12 * kDay);
    EXPECT_FALSE(at(12, Slot::Evening)->isHarvestDue);
    EXPECT_TRUE(at(13, Slot::Morning)->isHarvestDue);
    EXPECT_FALSE(at(13, Slot::Morning)->isNextDue);
    EXPECT_FALSE(at(13, Slot::Morning)->isAsked);
}

TEST_F(TrayAtRoundTest, AnOverdueHarvestStaysDueUntilItIsCutOrPutOff)
{
    begin(record, 1, kAtSeven + 3 * kDay);
    begin(record, 2, kAtSeven + 4 * kDay);
    EXPECT_TRUE(at(15, Slot::Evening)->isHarvestDue);
    EXPECT_FALSE(at(15, Slot::Evening)->isAsked);
    record.stages[2].delayMinutes = 3 * kDay;
    EXPECT_FALSE(at(15, Slot::Evening)->isHarvestDue);
    EXPECT_TRUE(at(15, Slot::Evening)->isAsked);
    cuts = {kAtSeven + 15 * kDay};
    EXPECT_TRUE(at(16, Slot::Morning)->isAsked) << "cut, and to be cut again";
}

TEST_F(TrayAtRoundTest, AnEndedTrayIsGoneFromTheRoundInWhichItEnded)
{
    record.tray.endedOn = kFirst + 2;
    record.tray.endedMinute = 18 * 60 + 30;
    EXPECT_TRUE(at(3, Slot::Morning));
    EXPECT_FALSE(at(3, Slot::Evening));
    EXPECT_FALSE(at(4, Slot::Morning));
}

TEST_F(TrayAtRoundTest, AFutureRoundTakesEveryStageInBetweenAsBegun)
{
    const Moment now = kAtSeven + kDay;
    EXPECT_EQ(at(4, Slot::Evening, now)->present().stage, Stage::Blackout);
    EXPECT_EQ(at(9, Slot::Morning, now)->present().stage, Stage::Light);
    EXPECT_EQ(at(9, Slot::Morning, now)->plan.harvest, kAtSeven + 12 * kDay);
    EXPECT_TRUE(at(13, Slot::Morning, now)->isHarvestDue);
    EXPECT_FALSE(at(13, Slot::Evening, now)) << "cut by then";
    EXPECT_EQ(record.stages[1].started(), std::nullopt) << "the record is left alone";
}

TEST_F(TrayAtRoundTest, ALateStageMovesTheRestOfAFutureRound)
{
    const Moment now = kAtSeven + 6 * kDay;
    const auto tray = at(8, Slot::Evening, now);
    ASSERT_TRUE(tray);
    EXPECT_EQ(tray->present().stage, Stage::Light);
    EXPECT_EQ(tray->plan.harvest, kAtSeven + (6 + 1 + 8) * kDay);
}

TEST_F(TrayAtRoundTest, MissedIsTheLastRoundThatAskedForWater)
{
    EXPECT_EQ(missed(1, Slot::Evening), key(1, Slot::Morning));
    EXPECT_EQ(missed(3, Slot::Morning), key(2, Slot::Evening));
    given = {key(1, Slot::Morning)};
    EXPECT_FALSE(missed(1, Slot::Evening));
    EXPECT_EQ(missed(2, Slot::Morning), key(1, Slot::Evening));
    EXPECT_FALSE(missed(1, Slot::Morning)) << "nothing was due before the sowing";
}

TEST_F(TrayAtRoundTest, MissedSkipsRoundsThatAskForNothing)
{
    record.stages[0].wateringsPerDay = 1;
    EXPECT_EQ(missed(3, Slot::Morning), key(2, Slot::Morning));
    record.stages[0].wateringsPerDay = 0;
    record.stages[0].method = WateringMethod::None;
    EXPECT_FALSE(missed(3, Slot::Morning));
}

TEST_F(TrayAtRoundTest, AWateringThatWasNotAskedForMakesUpForAMissedOne)
{
    record.stages[0].wateringsPerDay = 1;
    given = {key(2, Slot::Evening)};
    EXPECT_FALSE(missed(3, Slot::Morning));
}

TEST_F(TrayAtRoundTest, MissedIsNotForgottenInAStageThatIsNotWatered)
{
    record.stages[1].wateringsPerDay = 0;
    record.stages[1].method = WateringMethod::None;
    begin(record, 1, kAtSeven + (3 * kDay - 10));
    EXPECT_EQ(missed(5, Slot::Morning), key(3, Slot::Evening));
    EXPECT_EQ(missed(9, Slot::Morning), key(3, Slot::Evening));
    given = {key(3, Slot::Evening)};
    EXPECT_FALSE(drought(9, Slot::Morning)) << "nothing was asked since";
}

TEST_F(TrayAtRoundTest, NothingIsMissedInARoundThatIsStillAhead)
{
    const Moment now = kAtSeven + kDay;
    EXPECT_TRUE(drought(2, Slot::Morning, now));
    EXPECT_FALSE(drought(2, Slot::Evening, now));
}

TEST_F(TrayAtRoundTest, DaysWithoutWaterAreCountedFromTheLastWater)
{
    given = {key(1, Slot::Morning), key(1, Slot::Evening)};
    EXPECT_FALSE(drought(2, Slot::Morning));
    EXPECT_EQ(drought(2, Slot::Evening), (Drought{kFirst, 1, false, key(2, Slot::Morning)}));
    begin(record, 1, kAtSeven + 3 * kDay);
    EXPECT_EQ(drought(5, Slot::Morning), (Drought{kFirst, 4, false, key(4, Slot::Evening)}));
    given.insert(key(5, Slot::Morning));
    EXPECT_FALSE(drought(5, Slot::Evening));
}

TEST_F(TrayAtRoundTest, ATrayNeverWateredIsCountedFromTheFirstRoundThatAsked)
{
    EXPECT_FALSE(drought(1, Slot::Morning));
    EXPECT_EQ(drought(1, Slot::Evening), (Drought{kFirst, 0, true, key(1, Slot::Morning)}));
    EXPECT_EQ(drought(3, Slot::Morning), (Drought{kFirst, 2, true, key(2, Slot::Evening)}));
    EXPECT_EQ(drought(50, Slot::Morning)->days, 49);
    EXPECT_EQ(drought(100, Slot::Morning)->days, 60) << "as far as it looks";
}

TEST_F(TrayAtRoundTest, ATraySownAfterTheRoundsTimeHasMissedNothingOfThatRound)
{
    record = trayOf(1, broccoli(), inertMat(), kAtSeven + 10);
    EXPECT_FALSE(at(1, Slot::Morning)->isAsked);
    EXPECT_FALSE(drought(1, Slot::Evening));
    EXPECT_EQ(drought(2, Slot::Morning), (Drought{kFirst, 1, true, key(1, Slot::Evening)}));
    record = trayOf(1, soaked(), inertMat(), kAtSeven + -8 * 60, true);
    begin(record, 1, kAtSeven + 90);
    EXPECT_FALSE(drought(1, Slot::Evening)) << "soaked overnight and sown at half past eight";
}

TEST_F(TrayAtRoundTest, WhatIsWateredAsNeededIsOfferedInEveryRoundAndMissesNone)
{
    record.stages[0].wateringsPerDay = 0;
    for (const Slot slot : {Slot::Morning, Slot::Evening}) {
        EXPECT_TRUE(at(2, slot)->isOffered);
        EXPECT_FALSE(at(2, slot)->isAsked);
    }
    given = {key(1, Slot::Morning)};
    EXPECT_EQ(drought(3, Slot::Evening), (Drought{kFirst, 2, false, std::nullopt}));
    record.stages[0].method = WateringMethod::None;
    EXPECT_FALSE(at(2, Slot::Morning)->isOffered);
    EXPECT_FALSE(drought(3, Slot::Evening));
}

} // namespace
} // namespace plumule
