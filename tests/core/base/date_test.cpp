#include "core/base/date.h"

#include "core/base/clock.h"
#include "core/base/text_reason.h"

#include <gtest/gtest.h>

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

} // namespace
} // namespace plumule
