#include "core/climate/logger_time.h"

#include <cstdlib>
#include <ctime>
#include <gtest/gtest.h>

namespace plumule {
namespace {

constexpr auto kYear = DayOrder::YearMonthDay;
constexpr auto kDayFirst = DayOrder::DayMonthYear;
constexpr auto kMonthFirst = DayOrder::MonthDayYear;

TEST(WrittenTimeTest, IsReadInTheFormsThatLoggersWrite)
{
    struct Case
    {
        const char* text;
        DayOrder order;
        Date on;
        int minute;
        std::optional<int> offset;
    };
    const Date day = date(2026, 3, 12);
    const Case kCases[] = {
        {"2026-03-12 06:50", kYear, day, 410, {}},
        {" 2026/03/12 6:50:59 ", kDayFirst, day, 410, {}},
        {"2026-03-12T06:50:00.000", kYear, day, 410, {}},
        {"12.03.2026 06:50", kDayFirst, day, 410, {}},
        {"12.3.26, 6:50:30", kDayFirst, day, 410, {}},
        {"03/12/2026 06:50:00 PM", kMonthFirst, day, 1130, {}},
        {"3/12/26 12:05 am", kMonthFirst, day, 5, {}},
        {"3/12/26 12:05 PM", kMonthFirst, day, 725, {}},
        {"2026-03-12T06:50:00Z", kYear, day, 410, 0},
        {"2026-03-12 06:50:00 +01:00", kYear, day, 410, 60},
        {"2026-03-12T06:50-0530", kYear, day, 410, -330},
        {"2026-03-12T06:50+02", kYear, day, 410, 120},
        {"2028-02-29 00:00", kYear, date(2028, 2, 29), 0, {}},
    };
    for (const Case& each : kCases) {
        EXPECT_EQ(writtenTime(each.text, each.order),
                  (WrittenTime{{each.on, each.minute}, each.offset}))
            << each.text;
    }
}

TEST(WrittenTimeTest, IsNothingElse)
{
    for (const char* text : {"",
                             "06:50",
                             "2026-03-12",
                             "2026-02-29 06:50",
                             "2026-13-01 06:50",
                             "2026-03-12 24:00",
                             "2026-03-12 06:60",
                             "2026-03-12 06:50:61",
                             "2026-03-12 06:5",
                             "2026-03/12 06:50",
                             "2026-03-12 06:50 x",
                             "2026-03-12 06:50 +1",
                             "2026-03-12 06:50 +15:00",
                             "2026-03-12 13:05 PM",
                             "2026-03-12 0:05 AM",
                             "20260312 06:50",
                             "12345-03-12 06:50",
                             "2026-03-12 06:50 +01:00:00",
                             "2026-3-012 06:50",
                             "-2026-03-12 06:50",
                             "99999999999999999999",
                             "2026-03-12 06:50 A"}) {
        EXPECT_FALSE(writtenTime(text, kYear)) << text;
    }
    // A year of two digits does not come first.
    EXPECT_FALSE(writtenTime("26-03-12 06:50", kYear));
    EXPECT_FALSE(writtenTime("31.03.2026 06:50", kMonthFirst));
}

TEST(DayOrderTest, IsTakenFromTheWholeColumn)
{
    EXPECT_EQ(dateOrderOf({"2026-03-12 06:50", "2026-03-13 06:50"}).order, kYear);
    EXPECT_EQ(dateOrderOf({"01.02.2026", "13.02.2026"}).order, kDayFirst);
    EXPECT_EQ(dateOrderOf({"01/02/2026", "01/31/2026"}).order, kMonthFirst);
    const OrderFound unclear = dateOrderOf({"01/02/2026", "02/02/2026"});
    EXPECT_FALSE(unclear.order);
    EXPECT_EQ(unclear.unclear, "01/02/2026");
    EXPECT_FALSE(dateOrderOf({"13/02/2026", "02/13/2026"}).order);
    EXPECT_FALSE(dateOrderOf({}).order);
    EXPECT_FALSE(dateOrderOf({"", "no day"}).order);
}

// The zone of the process, put back afterwards.
class RoomTime : public testing::Test
{
protected:
    void SetUp() override
    {
        const char* before = std::getenv("TZ");
        m_before = before == nullptr ? "" : before;
    }
    void TearDown() override { use(m_before.c_str()); }
    static void use(const char* zone)
    {
        *zone == '\0' ? ::unsetenv("TZ") : ::setenv("TZ", zone, 1);
        ::tzset();
    }
    // In the middle of Europe: from the last Sunday of March to that of October an hour ahead.
    static void useEurope() { use("CET-1CEST,M3.5.0,M10.5.0/3"); }
    SystemZone zone;

private:
    std::string m_before;
};

TEST_F(RoomTime, IsWhatTheRoomsClockShowed)
{
    useEurope();
    const WrittenTime spring{{date(2026, 3, 29), 150}, {}}; // leapt over
    EXPECT_EQ(roomTime(spring, LoggerClock::Room, zone), spring.at);
}

TEST_F(RoomTime, IsTurnedFromUniversalTime)
{
    useEurope();
    const WrittenTime winter{{date(2026, 1, 10), 23 * 60 + 30}, {}};
    EXPECT_EQ(roomTime(winter, LoggerClock::Utc, zone), (Moment{date(2026, 1, 11), 30}));
    const WrittenTime summer{{date(2026, 7, 10), 23 * 60 + 30}, {}};
    EXPECT_EQ(roomTime(summer, LoggerClock::Utc, zone), (Moment{date(2026, 7, 11), 90}));
}

TEST_F(RoomTime, LeapsAnHourInSpringAndRepeatsOneInAutumn)
{
    useEurope();
    const auto at = [&](Date on, int minute) {
        return roomTime({{on, minute}, {}}, LoggerClock::Utc, zone);
    };
    EXPECT_EQ(at(date(2026, 3, 29), 59), (Moment{date(2026, 3, 29), 119}));
    EXPECT_EQ(at(date(2026, 3, 29), 60), (Moment{date(2026, 3, 29), 180}));
    EXPECT_EQ(at(date(2026, 10, 25), 0), (Moment{date(2026, 10, 25), 120}));
    EXPECT_EQ(at(date(2026, 10, 25), 60), (Moment{date(2026, 10, 25), 120}));
}

TEST_F(RoomTime, IsTurnedFromALoggerThatKeepsWinterTime)
{
    useEurope();
    const WrittenTime winter{{date(2026, 1, 10), 600}, {}};
    EXPECT_EQ(roomTime(winter, LoggerClock::StandardTime, zone), winter.at);
    const WrittenTime summer{{date(2026, 7, 10), 600}, {}};
    EXPECT_EQ(roomTime(summer, LoggerClock::StandardTime, zone), (Moment{date(2026, 7, 10), 660}));
}

TEST_F(RoomTime, GoesByTheOffsetThatTheTextSays)
{
    useEurope();
    const WrittenTime time{{date(2026, 7, 10), 600}, 0};
    EXPECT_EQ(roomTime(time, LoggerClock::Room, zone), (Moment{date(2026, 7, 10), 720}));
    const WrittenTime far{{date(2026, 7, 10), 600}, -600};
    EXPECT_EQ(roomTime(far, LoggerClock::StandardTime, zone), (Moment{date(2026, 7, 10), 1320}));
}

// South of the equator summer is in January.
TEST_F(RoomTime, KnowsTheSouthsStandardTime)
{
    use("AEST-10AEDT,M10.1.0,M4.1.0/3");
    EXPECT_EQ(zone.standardOffset(2026), 600);
    useEurope();
    EXPECT_EQ(zone.standardOffset(2026), 60);
    use("UTC0");
    EXPECT_EQ(zone.standardOffset(2026), 0);
}

} // namespace
} // namespace plumule
