#include "ui/week/week_text.h"

#include "core/week/repeat_rules.h"
#include "ui/week/week_calendar.h"

#include <gtest/gtest.h>

#include <set>

namespace plumule::ui {
namespace {

WeekEntry radish(int count, int proposed)
{
    WeekEntry entry;
    entry.name = "Radish, rose";
    entry.count = count;
    entry.proposed = proposed;
    return entry;
}

TEST(WeekText, WhatIsProposedBearsAStar)
{
    EXPECT_EQ(countText(radish(3, 0)), "3");
    EXPECT_EQ(countText(radish(4, 4)), "4*");
    EXPECT_EQ(countText(radish(7, 4)), "4* + 3");
    EXPECT_EQ(entryText(radish(7, 4)), "Sow 4* + 3 Radish, rose");
}

TEST(WeekText, OneShelfIsNamedAndSeveralAreNot)
{
    WeekEntry entry = radish(2, 0);
    entry.task = WeekTask::Cut;
    entry.shelves = {"A3"};
    EXPECT_EQ(entryText(entry), "Cut 2 Radish, rose, A3");
    entry.shelves = {"A3", "B1"};
    EXPECT_EQ(entryText(entry), "Cut 2 Radish, rose");
    entry.furtherCuts = 2;
    EXPECT_EQ(entryText(entry), "Cut 2 Radish, rose, cut again");
}

TEST(WeekText, AnOrderIsOfSeedOrOfPieces)
{
    WeekEntry entry = radish(1, 0);
    entry.task = WeekTask::Order;
    EXPECT_EQ(entryText(entry), "Order seed of Radish, rose");
    entry.supply = SupplyKind::Pieces;
    entry.name = "Steel mesh";
    entry.count = 3;
    EXPECT_EQ(entryText(entry), "Order 3 Steel mesh");
}

TEST(WeekText, GramsAreRoundedToTensAndOuncesToTenths)
{
    const ExpectedGrams expected{grams(978), grams(1043), grams(1106)};
    EXPECT_EQ(meanText(expected, UnitText()), "1040 g");
    EXPECT_EQ(rangeText(expected, UnitText()), "980–1110");
    EXPECT_EQ(meanText(expected, UnitText(UnitSystem::UsCustomary)), "36.8 oz");
}

TEST(WeekText, ARhythmIsSaidInWords)
{
    Repeat repeat;
    repeat.weekdays = weekdayBit(1);
    EXPECT_EQ(rhythmText(repeat), "every Tuesday");
    repeat.weekdays = weekdayBit(1) + weekdayBit(4);
    EXPECT_EQ(rhythmText(repeat), "every Tue, Fri");
    repeat.weekdays = kEveryWeekday;
    EXPECT_EQ(rhythmText(repeat), "every day");
    repeat.weekdays.reset();
    repeat.everyDays = 3;
    EXPECT_EQ(rhythmText(repeat), "every 3 days");
}

TEST(WeekText, AnEntryOfTheCalendarKeepsItsNameFromFileToFile)
{
    Week week;
    week.from = date(2026, 11, 28);
    week.days.resize(2);
    week.days[0].on = week.from;
    week.days[1].on = week.from + 1;
    WeekEntry wash;
    wash.task = WeekTask::Wash;
    wash.subject = 1;
    wash.name = "Steel mesh";
    wash.count = 3;
    week.days[0].entries = {radish(4, 0), wash};
    week.days[1].entries = {radish(4, 0)};
    Room room;
    room.name = "A room";
    const auto events = calendarOf(week, room);
    ASSERT_EQ(events.size(), 3U);
    EXPECT_EQ(events[0].minute, room.morningMinute);
    EXPECT_FALSE(events[1].minute) << "washing is of the day";
    EXPECT_EQ((std::set<std::string>{events[0].uid, events[1].uid, events[2].uid}).size(), 3U);
    week.days[0].entries[0].count = 5;
    EXPECT_EQ(calendarOf(week, room)[0].uid, events[0].uid);
    EXPECT_NE(calendarOf(week, room)[0].summary, events[0].summary);
    room.name = "Another room";
    EXPECT_NE(calendarOf(week, room)[0].uid, events[0].uid);
}

} // namespace
} // namespace plumule::ui
