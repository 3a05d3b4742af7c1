#include "core/journal/watering/ticking.h"

#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/watering/round_key.h"
#include "core/watering/watering_reason.h"
#include "core/watering/watering_repository.h"
#include "tests/core/storage/store_fixture.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

const Date kToday = date(2026, 3, 12);
const Moment kNow{kToday, 7 * 60 + 30};

RoundKey morningOf(Date day)
{
    return {day, Slot::Morning};
}

// A room that is walked at 07:00 and 18:00, and trays in light that get 50 mL of nutrient twice a
// day.
class TickingTest : public StoreTest
{
protected:
    TickingTest()
    {
        database.execute(
            "INSERT INTO room VALUES (1, 'Room', 'metric', 'EUR', 420, 1080, 508000, 254000);"
            "INSERT INTO variety VALUES (1, 'Cress', 'CR', NULL, '', '', 0);"
            "INSERT INTO medium VALUES (5, 'Felt', 'mat', 0, 0, NULL, NULL, NULL, 0, '', '', 0);"
            "INSERT INTO rack VALUES (1, 'A', 0);"
            "INSERT INTO shelf VALUES (1, 1, '1', 0, NULL, NULL);"
            "INSERT INTO place VALUES (1, 1, 1), (2, 1, 2);"
            "INSERT INTO water_recipe VALUES (1, 'nutrient', 'Grow', 8000, NULL, NULL, NULL, "
            "NULL)");
    }

    TrayId grow(const std::string& code, Moment sown)
    {
        Tray tray;
        tray.code = code;
        tray.variety = {1};
        tray.medium = {5};
        tray.sownOn = sown.date;
        tray.sownMinute = sown.minute;
        trays.insert(tray);
        TrayStage stage;
        stage.tray = tray.id;
        stage.stage = Stage::Light;
        stage.plannedOn = sown.date;
        stage.plannedMinute = sown.minute;
        stage.startedOn = sown.date;
        stage.startedMinute = sown.minute;
        stage.lengthMinutes = 60 * kMinutesPerDay;
        stage.wateringsPerDay = 2;
        stage.method = WateringMethod::Below;
        stage.water = WaterKind::Nutrient;
        stage.amount = millilitres(50);
        trays.insert(stage);
        return tray.id;
    }
    TrayId growSince(int days) { return grow("CR" + std::to_string(days), kNow + -days * 1440); }

    TrayRepository trays{database};
};

TEST_F(TickingTest, TodayATickIsMadeNowAndLaterAtTheRoundsTime)
{
    EXPECT_EQ(minuteOfTick(database, morningOf(kToday), {kToday, 600}), 600);
    EXPECT_EQ(minuteOfTick(database, {kToday, Slot::Evening}, {kToday, 600}), 600);
    EXPECT_EQ(minuteOfTick(database, {kToday - 1, Slot::Evening}, kNow), 18 * 60);
    EXPECT_EQ(minuteOfTick(database, morningOf(kToday - 3), kNow), 7 * 60);
}

TEST_F(TickingTest, ARoundOfADayToComeIsAhead)
{
    EXPECT_TRUE(checkNotAhead({kToday, Slot::Evening}, kNow)) << "it may be walked early";
    EXPECT_TRUE(checkNotAhead(morningOf(kToday - 400), kNow));
    const Done ahead = checkNotAhead(morningOf(kToday + 1), kNow);
    ASSERT_FALSE(ahead);
    EXPECT_EQ(ahead.error().kind, ErrorKind::Conflict);
    EXPECT_TRUE(ahead.error().is(WateringReason::RoundAhead));
    EXPECT_THAT(ahead.error().values, ElementsAre("2026-03-13"));
}

TEST_F(TickingTest, WhatIsStoredIsWhatWasAskedFor)
{
    const TrayId tray = growSince(2);
    const auto asked = openTick(database, tray, morningOf(kToday), kNow);
    ASSERT_TRUE(asked);
    const Watering given = storeTick(database, *asked, morningOf(kToday), 451);
    const auto stored = WateringRepository(database).wateringsSince({tray}, kToday);
    EXPECT_THAT(stored, ElementsAre(given));
    EXPECT_EQ(given.tray, tray);
    EXPECT_EQ(given.on, kToday);
    EXPECT_EQ(given.slot, Slot::Morning);
    EXPECT_EQ(given.minute, 451);
    EXPECT_EQ(given.method, WateringMethod::Below);
    EXPECT_EQ(given.water, WaterKind::Nutrient);
    EXPECT_EQ(given.amount, millilitres(50));
    EXPECT_FALSE(given.isBetween);
}

TEST_F(TickingTest, ATickIsOpenOnceARound)
{
    const TrayId tray = growSince(2);
    const auto whyNot = [&](RoundKey round) {
        const auto open = openTick(database, tray, round, kNow);
        return open ? Error() : open.error();
    };
    storeTick(database, openTick(database, tray, morningOf(kToday), kNow).value(),
              morningOf(kToday), 450);
    EXPECT_TRUE(whyNot(morningOf(kToday)).is(WateringReason::TickedAlready));
    EXPECT_THAT(whyNot(morningOf(kToday)).values, ElementsAre("CR2"));
    EXPECT_TRUE(openTick(database, tray, {kToday - 1, Slot::Evening}, kNow));
    EXPECT_TRUE(whyNot(morningOf(kToday - 9)).is(WateringReason::NotAsked)) << "not sown yet";
    EXPECT_TRUE(openTick(database, {99}, morningOf(kToday), kNow).error().is(TrayReason::Unknown));
}

TEST_F(TickingTest, ATrayThatIsAskedForNothingIsNotTicked)
{
    const TrayId tray = growSince(2);
    database.execute("UPDATE tray_stage SET waterings_per_day = 1"); // mornings
    EXPECT_TRUE(openTick(database, tray, morningOf(kToday), kNow));
    const auto evening = openTick(database, tray, {kToday - 1, Slot::Evening}, kNow);
    ASSERT_FALSE(evening);
    EXPECT_TRUE(evening.error().is(WateringReason::NotAsked));
}

TEST_F(TickingTest, ALookIsATickToo)
{
    const TrayId tray = growSince(2);
    database.execute("UPDATE tray_stage SET waterings_per_day = 0"); // as needed
    const auto asked = openTick(database, tray, morningOf(kToday), kNow);
    ASSERT_TRUE(asked);
    EXPECT_TRUE(asked->isAsNeeded);
    database.execute("INSERT INTO watering_look VALUES (1, " + std::to_string(tray.value) +
                     ", '2026-03-12', 'morning', 440)");
    EXPECT_TRUE(openTick(database, tray, morningOf(kToday), kNow)
                    .error()
                    .is(WateringReason::TickedAlready));
}

TEST_F(TickingTest, OfSomeTraysOnlyTheirPartIsShown)
{
    const TrayId first = growSince(2);
    const TrayId second = growSince(3);
    EXPECT_THAT(wholeRound(database, morningOf(kToday), kNow).trays, SizeIs(2));
    const Round part = roundOfTrays(database, {second}, morningOf(kToday), kNow);
    ASSERT_THAT(part.trays, SizeIs(1));
    EXPECT_EQ(part.trays[0].tray, second);
    EXPECT_THAT(roundOfTrays(database, {}, morningOf(kToday), kNow).trays, IsEmpty());
    EXPECT_NE(first, second);
}

TEST_F(TickingTest, TheWholeRoundHoldsTheTraysOfItsTimeWhereTheyStoodThen)
{
    const TrayId tray = growSince(9);
    const std::string id = std::to_string(tray.value);
    database.execute("INSERT INTO stay VALUES (1, " + id +
                     ", 1, '2026-03-03', 450, '2026-03-10', 1100);"
                     "INSERT INTO stay VALUES (2, " +
                     id + ", 2, '2026-03-10', 1100, NULL, NULL)");
    const auto placeIn = [&](RoundKey round) {
        const Round shown = wholeRound(database, round, kNow);
        return shown.trays.empty() || !shown.trays[0].spot ? 0 : shown.trays[0].spot->number;
    };
    EXPECT_EQ(placeIn(morningOf(kToday - 2)), 1);
    EXPECT_EQ(placeIn({kToday - 2, Slot::Evening}), 2) << "moved during the round of 18:00";
    EXPECT_EQ(placeIn(morningOf(kToday)), 2);
    database.execute("UPDATE tray SET state = 'discarded', ended_on = '2026-03-11', "
                     "ended_minute = 480; UPDATE stay SET to_on = '2026-03-11', to_minute = 480 "
                     "WHERE id = 2");
    EXPECT_EQ(placeIn(morningOf(kToday - 2)), 1) << "it grew then";
    EXPECT_THAT(wholeRound(database, morningOf(kToday), kNow).trays, IsEmpty());
}

TEST_F(TickingTest, AReadingOfTheMixSaysNothingAfterThirtyDays)
{
    growSince(2);
    const auto readingOn = [&](const char* day) {
        database.execute("DELETE FROM water_reading");
        database.execute(std::string("INSERT INTO water_reading VALUES (1, '") + day +
                         "', 'morning', 430, 'nutrient', NULL, 6.1, 1200)");
        const Round round = wholeRound(database, morningOf(kToday), kNow);
        EXPECT_THAT(round.mix, SizeIs(1));
        return !round.mix.empty() && round.mix[0].lastReading.has_value();
    };
    EXPECT_TRUE(readingOn("2026-03-12"));
    EXPECT_TRUE(readingOn("2026-02-10")) << "thirty days before";
    EXPECT_FALSE(readingOn("2026-02-09"));
    EXPECT_FALSE(readingOn("2026-03-13")) << "of tomorrow";
}

} // namespace
} // namespace plumule
