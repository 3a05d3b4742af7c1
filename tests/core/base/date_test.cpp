#include "core/base/date.h"

#include "core/base/clock.h"
#include "core/base/text_reason.h"

#include <gtest/gtest.h>
#include <random>

namespace plumule {
namespace {

TEST(Date, CountsDaysSince1970)
{
    EXPECT_EQ(date(1970, 1, 1).days, 0);
    EXPECT_EQ(date(1969, 12, 31).days, -1);
    // POSIX seconds 951 782 400 are 2000-02-29 00:00 UTC.
    EXPECT_EQ(date(2000, 2, 29).days, 951'782'400 / 86'400);
}

TEST(Date, ReadsAndWritesIso)
{
    for (const char* text :
         {"1970-01-01", "2000-02-29", "2024-02-29", "2026-12-31", "1900-02-28"}) {
        const auto day = dateFromIso(text);
        ASSERT_TRUE(day) << text;
        EXPECT_EQ(toIso(*day), text);
    }
}

TEST(Date, RefusesWhatIsNoIsoDay)
{
    for (const char* text :
         {"", "2026-3-2", "02.03.2026", "2026/03/02", "2026-13-01", "2026-00-10", "2026-02-29",
          "1900-02-29", "2026-04-31", "2026-01-00", "2026-01-32", " 2026-01-01", "2026-01-01 ",
          "2026-01-011", "-026-01-01", "2026-+1-01", "today"}) {
        const auto day = dateFromIso(text);
        ASSERT_FALSE(day) << text;
        EXPECT_EQ(static_cast<int>(day.error().kind), static_cast<int>(ErrorKind::Invalid));
        EXPECT_EQ(day.error(), fail(ErrorKind::Invalid, TextReason::NotADate, text).value());
    }
}

TEST(Date, StepsOverMonthsYearsAndLeapDays)
{
    EXPECT_EQ(date(2024, 2, 28) + 1, date(2024, 2, 29));
    EXPECT_EQ(date(2025, 2, 28) + 1, date(2025, 3, 1));
    EXPECT_EQ(date(2025, 12, 31) + 1, date(2026, 1, 1));
    EXPECT_EQ(date(2026, 1, 1) - 1, date(2025, 12, 31));
    EXPECT_EQ(date(2025, 3, 1) - date(2024, 3, 1), 365);
    EXPECT_EQ(date(2024, 3, 1) - date(2023, 3, 1), 366);
}

// The product's own rule: sown on the 2nd and cut on the 14th is cut on day 13.
TEST(Date, TheDayOfSowingIsDayOne)
{
    EXPECT_EQ(dayCount(date(2026, 3, 2), date(2026, 3, 2)), 1);
    EXPECT_EQ(dayCount(date(2026, 3, 2), date(2026, 3, 14)), 13);
    EXPECT_EQ(dayCount(date(2026, 2, 27), date(2026, 3, 1)), 3);
}

TEST(Moment, MinutesCarryOverMidnightBothWays)
{
    const Moment evening{date(2025, 12, 31), 23 * 60 + 50};
    EXPECT_EQ(evening + 20, (Moment{date(2026, 1, 1), 10}));
    EXPECT_EQ((Moment{date(2026, 1, 1), 10}) + -20, evening);
    EXPECT_EQ((Moment{date(1970, 1, 1), 0}) + -1, (Moment{date(1969, 12, 31), 1439}));
    EXPECT_EQ((Moment{date(2026, 1, 1), 10}) - evening, 20);
    EXPECT_LT(evening, (Moment{date(2026, 1, 1), 0}));
}

TEST(ClockText, ReadsHoursAndMinutesOnly)
{
    EXPECT_EQ(minuteFromText("07:30").value(), 450);
    EXPECT_EQ(minuteFromText("00:00").value(), 0);
    EXPECT_EQ(minuteFromText("23:59").value(), 1439);
    for (const char* text : {"", "7:30", "24:00", "12:60", "12.30", "12:3", "ab:cd", "12:30:00"}) {
        EXPECT_FALSE(minuteFromText(text)) << text;
    }
    EXPECT_EQ(toClockText(450), "07:30");
    EXPECT_EQ(toClockText(0), "00:00");
}

TEST(FixedClock, StandsStillUntilItIsSet)
{
    FixedClock clock({date(1970, 1, 2), 90});
    EXPECT_EQ(clock.today(), date(1970, 1, 2));
    EXPECT_EQ(clock.utcMilliseconds(), (1440 + 90) * 60'000);
    clock.set({date(2026, 3, 2), 0});
    EXPECT_EQ(clock.now(), (Moment{date(2026, 3, 2), 0}));
}

// A calendar counted on day by day by the Gregorian rule (Clavius 1603: a leap year is every
// fourth, but of the hundreds every fourth only), from 1970 over all that a journal holds.
TEST(Date, AgreesWithACalendarCountedOn)
{
    int year = 1970;
    unsigned month = 1;
    unsigned day = 1;
    for (int days = 0; days < 131 * 366; ++days) {
        const Date counted{days};
        ASSERT_EQ(date(year, month, day), counted) << year << ' ' << month << ' ' << day;
        ASSERT_EQ(monthOf(counted), year * 12 + static_cast<int>(month) - 1)
            << "from year 0, a month on after each";
        const std::string iso = toIso(counted);
        ASSERT_EQ(iso.size(), 10U);
        ASSERT_EQ(dateFromIso(iso), counted) << iso;
        const bool isLeap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
        const unsigned lengths[] = {31, isLeap ? 29U : 28U, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
        const unsigned last = lengths[month - 1];
        if (day == 1) {
            ASSERT_FALSE(dateFromIso(iso.substr(0, 8) + std::to_string(last + 1))) << iso;
        }
        month += day == last ? 1 : 0;
        day = day == last ? 1 : day + 1;
        year += month == 13 ? 1 : 0;
        month = month == 13 ? 1 : month;
    }
}

// Seed 60: minutes come back from where they were carried to, and their difference is what was
// carried.
TEST(Moment, CarriesMinutesThereAndBack)
{
    std::mt19937 draw(60);
    for (int round = 0; round < 2000; ++round) {
        const Moment from{date(2026, 3, 1) + static_cast<int>(draw() % 4000) - 2000,
                          static_cast<int>(draw() % kMinutesPerDay)};
        const std::int64_t minutes = static_cast<std::int64_t>(draw() % 20'000'000) - 10'000'000;
        const Moment to = from + minutes;
        EXPECT_EQ(to - from, minutes);
        EXPECT_EQ(to + -minutes, from);
        EXPECT_GE(to.minute, 0);
        EXPECT_LT(to.minute, kMinutesPerDay);
        EXPECT_EQ(minutes > 0, from < to);
    }
}

TEST(ClockText, ReadsBackEveryMinuteOfTheDay)
{
    for (int minute = 0; minute < kMinutesPerDay; ++minute) {
        ASSERT_EQ(minuteFromText(toClockText(minute)), minute);
    }
}

} // namespace
} // namespace plumule
