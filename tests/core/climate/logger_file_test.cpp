#include "core/base/work_reason.h"
#include "core/climate/logger_file.h"
#include "core/exchange/exchange_reason.h"
#include "tests/core/journal/journal_fixture.h"

#include <fstream>
#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;

// The room's clock is the one of the file.
class SameZone : public TimeZone
{
public:
    [[nodiscard]] Moment localOf(std::int64_t utcMinute) const override
    {
        return Moment{} + utcMinute;
    }
    [[nodiscard]] int standardOffset(int) const override { return 0; }
};

class LoggerFileTest : public testing::Test
{
protected:
    static CsvTable table(const std::string& text) { return csvFrom(text).value(); }
    [[nodiscard]] Result<LoggerReadings> read(const CsvTable& table,
                                              const LoggerColumns& columns) const
    {
        return readingsOf(table, columns, zone, now);
    }
    [[nodiscard]] LoggerReadings readAsProposed(const std::string& text) const
    {
        const CsvTable rows = table(text);
        const auto readings = read(rows, proposedColumns(rows));
        EXPECT_TRUE(readings) << told(readings.error());
        return readings.value_or(LoggerReadings{});
    }
    SameZone zone;
    Moment now{date(2026, 3, 20), 720};
};

TEST_F(LoggerFileTest, GuessesWhatItsColumnsAre)
{
    const LoggerColumns all = proposedColumns(
        table("No,Date Time,Temperature (°F),RH (%),PPFD\n1,03/13/2026 06:50,70,55,200\n"));
    EXPECT_EQ(all.time, 1U);
    EXPECT_EQ(all.temperature, 2U);
    EXPECT_EQ(all.temperatureUnit, TemperatureUnit::Fahrenheit);
    EXPECT_EQ(all.humidity, 3U);
    EXPECT_EQ(all.light, 4U);
    EXPECT_EQ(all.lightUnit, LightUnit::Ppfd);
    EXPECT_EQ(all.order, DayOrder::MonthDayYear);
    EXPECT_FALSE(all.clock);
    const LoggerColumns two =
        proposedColumns(table("Date;Time;Temp °C;Lux\n01.02.2026;06:50;21,5;900\n"));
    EXPECT_EQ(two.time, 0U);
    EXPECT_EQ(two.clock, 1U);
    EXPECT_EQ(two.temperatureUnit, TemperatureUnit::Celsius);
    EXPECT_EQ(two.lightUnit, LightUnit::Lux);
    EXPECT_FALSE(two.order); // the 1st of February or the 2nd of January
    EXPECT_EQ(proposedColumns(table("a,b\n1,2\n")), LoggerColumns{});
}

TEST_F(LoggerFileTest, MakesHoursOfItsLines)
{
    const LoggerReadings read = readAsProposed("time,temp,rh\n"
                                               "2026-03-12 06:50,20,60\n"
                                               "2026-03-12 06:55,21,\n"
                                               "2026-03-12 07:00,22,62\n");
    EXPECT_EQ(read.readings, 3);
    EXPECT_EQ(read.faulty, 0);
    EXPECT_EQ(read.first, (Moment{date(2026, 3, 12), 410}));
    EXPECT_EQ(read.last, (Moment{date(2026, 3, 12), 420}));
    ASSERT_EQ(read.hours.size(), 2U);
    EXPECT_EQ(read.hours[0].hour, 6);
    EXPECT_EQ(read.hours[0].firstMinute, 50);
    EXPECT_EQ(read.hours[0].lastMinute, 55);
    EXPECT_EQ(read.hours[0].of(Measure::Temperature), (HourReadings{2, 20'500, 20'000, 21'000}));
    EXPECT_EQ(read.hours[0].of(Measure::Humidity), (HourReadings{1, 60'000, 60'000, 60'000}));
    EXPECT_FALSE(read.hours[0].of(Measure::Light));
}

TEST_F(LoggerFileTest, ReadsLinesInAnyOrderAndEachOnce)
{
    const LoggerReadings read = readAsProposed("time,temp\n"
                                               "2026-03-12 08:50,22\n"
                                               "2026-03-12 06:50,20\n"
                                               "2026-03-12 06:50,20\n"
                                               "2026-03-12 06:50,24\n");
    EXPECT_EQ(read.repeated, 1);
    EXPECT_EQ(read.readings, 3);
    ASSERT_EQ(read.hours.size(), 2U);
    EXPECT_EQ(read.hours[0].hour, 6);
    // The hour that autumn repeats gives two readings of one minute: both count.
    EXPECT_EQ(read.hours[0].of(Measure::Temperature), (HourReadings{2, 22'000, 20'000, 24'000}));
}

TEST_F(LoggerFileTest, TurnsFahrenheitAndReadsCommas)
{
    const LoggerReadings us = readAsProposed("time,temp (F)\n2026-03-12 06:50,68\n");
    EXPECT_EQ(us.hours.at(0).of(Measure::Temperature)->mean, 20'000);
    const LoggerReadings comma = readAsProposed("Zeit;Temp;rh\n2026-03-12 06:50;21,375;55 %\n");
    EXPECT_EQ(comma.hours.at(0).of(Measure::Temperature)->mean, 21'375);
    EXPECT_EQ(comma.hours.at(0).of(Measure::Humidity)->mean, 55'000);
    const LoggerReadings unit = readAsProposed("time,temp\n2026-03-12 06:50,-1.5 °C\n");
    EXPECT_EQ(unit.hours.at(0).of(Measure::Temperature)->mean, -1'500);
}

TEST_F(LoggerFileTest, JoinsADayAndATimeOfDay)
{
    const LoggerReadings read =
        readAsProposed("Date,Time,Temp\n13.02.2026,06:50:30,20\n14.02.2026,06:50:30,20\n");
    EXPECT_EQ(read.first, (Moment{date(2026, 2, 13), 410}));
    EXPECT_EQ(read.hours.size(), 2U);
}

TEST_F(LoggerFileTest, AsksForWhatItCantTell)
{
    const CsvTable rows = table("time,temp,rh\n01/02/2026 06:50,20,60\n");
    LoggerColumns columns = proposedColumns(rows);
    EXPECT_TRUE(read(rows, columns).error().is(ClimateReason::DateOrderUnclear));
    EXPECT_EQ(read(rows, columns).error().values, std::vector<std::string>{"01/02/2026 06:50"});
    columns.order = DayOrder::DayMonthYear;
    EXPECT_EQ(read(rows, columns)->first->date, date(2026, 2, 1));
    columns.time.reset();
    EXPECT_TRUE(read(rows, columns).error().is(ClimateReason::TimeMissing));
    columns.time = 7;
    EXPECT_TRUE(read(rows, columns).error().is(ClimateReason::TimeMissing));
    columns.time = 0;
    columns.humidity = 1;
    EXPECT_TRUE(read(rows, columns).error().is(ClimateReason::ColumnTwice));
    columns.humidity.reset();
    columns.temperature.reset();
    EXPECT_TRUE(read(rows, columns).error().is(ClimateReason::MeasureMissing));
}

TEST_F(LoggerFileTest, LeavesOutLinesThatCantBeReadWithTheirReasons)
{
    const LoggerReadings read = readAsProposed("time,temp,rh,ppfd\n"
                                               "2026-03-12 06:50,20,60,1\n"
                                               "2026-03-12 26:50,20,60,1\n"
                                               "2026-03-12 06:51,warm,60,1\n"
                                               "2026-03-12 06:52,81,60,1\n"
                                               "2026-03-12 06:53,20,104,1\n"
                                               "2026-03-12 06:54,20,60,-1\n"
                                               "2026-03-20 12:01,20,60,1\n"
                                               "1989-03-12 06:50,20,60,1\n"
                                               ",,,\n"
                                               "Logger stopped,,,\n"
                                               "2026-03-12 06:55,1e9,60,1\n"
                                               "2026-03-12 06:56,nan,60,1\n");
    EXPECT_EQ(read.readings, 1);
    EXPECT_EQ(read.faulty, 9);
    std::vector<std::int64_t> lines;
    std::vector<Reason> reasons;
    for (const Error& fault : read.faults) {
        lines.push_back(fault.row->number);
        reasons.push_back(fault.reason);
    }
    EXPECT_THAT(lines, ElementsAre(3, 4, 5, 6, 7, 8, 9, 12, 13));
    EXPECT_THAT(reasons, ElementsAre(ClimateReason::TimeForm, ClimateReason::CellForm,
                                     ClimateReason::CellBeyond, ClimateReason::CellBeyond,
                                     ClimateReason::CellBeyond, ClimateReason::TimeAhead,
                                     ClimateReason::TimeForm, ClimateReason::CellForm,
                                     ClimateReason::CellForm));
    EXPECT_EQ(read.faults[2].values, (std::vector<std::string>{"temp", "81", "-50", "80"}));
}

TEST_F(LoggerFileTest, CountsAllFaultsAndKeepsTheFirst)
{
    std::string text = "time,temp\n";
    for (int line = 0; line < 250; ++line) {
        text += "2026-03-12 06:50," + std::string(5000, 'x') + "\n";
    }
    const LoggerReadings read = readAsProposed(text);
    EXPECT_EQ(read.faulty, 250);
    EXPECT_EQ(read.faults.size(), kMostLoggerFaults);
    EXPECT_LE(read.faults[0].values[1].size(), 60U);
    EXPECT_TRUE(read.hours.empty());
    EXPECT_FALSE(read.first);
}

TEST_F(LoggerFileTest, SaysWhereAMarkMayBeThousandsOrDecimals)
{
    const LoggerReadings read =
        readAsProposed("time;lux\n2026-03-12 06:50;1,234\n2026-03-12 06:55;900\n");
    EXPECT_EQ(read.faulty, 1);
    EXPECT_TRUE(read.faults.at(0).is(ClimateReason::CellAmbiguous));
    // The temperature beside it tells.
    const LoggerReadings beside = readAsProposed("time;temp;lux\n2026-03-12 06:50;21,5;1.234\n");
    EXPECT_EQ(beside.hours.at(0).of(Measure::Light)->mean, 1'234'000);
}

TEST_F(LoggerFileTest, StopsWhenItIsAsked)
{
    const CsvTable rows = table("time,temp\n2026-03-12 06:50,20\n");
    std::stop_source stop;
    stop.request_stop();
    const Progress progress({}, stop.get_token());
    const auto stopped = readingsOf(rows, proposedColumns(rows), zone, now, progress);
    EXPECT_TRUE(stopped.error().is(WorkReason::Stopped));
}

// What is none of a logger's files is refused, and never harms.
TEST_F(LoggerFileTest, RefusesWhatIsNoTable)
{
    const TemporaryFolder folder;
    const auto fileOf = [&](const std::string& text) {
        const auto path = folder.path() / "logger.csv";
        std::ofstream(path, std::ios::binary) << text;
        return path.string();
    };
    EXPECT_TRUE(loggerTableIn(fileOf("")).error().is(ExchangeReason::Empty));
    EXPECT_TRUE(loggerTableIn(fileOf("a,b\n1\n")).error().is(ExchangeReason::CellCount));
    EXPECT_TRUE(loggerTableIn(fileOf("a,\xFF\n1,2\n")).error().is(ExchangeReason::NotUtf8));
    EXPECT_TRUE(loggerTableIn(fileOf("a,\"b\n1,2\n")).error().is(ExchangeReason::OpenQuote));
    EXPECT_TRUE(loggerTableIn((folder.path() / "none.csv").string())
                    .error()
                    .is(ExchangeReason::FileUnreadable));
    EXPECT_TRUE(loggerTableIn(fileOf("a,b\n" + std::string(kMostLoggerRows + 5, '\n')))
                    .error()
                    .is(ClimateReason::TooManyRows));
}

TEST_F(LoggerFileTest, DoesNotReadAFileThatIsTooLarge)
{
    const TemporaryFolder folder;
    const auto path = folder.path() / "logger.csv";
    std::ofstream(path) << "time,temp\n";
    std::filesystem::resize_file(path, 64'000'001); // of holes
    EXPECT_TRUE(loggerTableIn(path.string()).error().is(ClimateReason::FileTooLarge));
}

// Random bytes between a sound head and a sound line change nothing of that line and end nothing.
TEST_F(LoggerFileTest, BearsAnyCells)
{
    std::mt19937 random(11);
    const std::string letters = "0123456789-+:./,; TZaAPM%°eEx\"'";
    for (int round = 0; round < 2000; ++round) {
        std::vector<std::string> cells(3);
        for (std::string& cell : cells) {
            const auto length = random() % 24;
            for (std::size_t i = 0; i < length; ++i) {
                cell += letters[random() % letters.size()];
            }
        }
        CsvTable rows = table("time,temp,rh\n2026-03-12 06:50,20,60\n");
        rows.rows.push_back(cells);
        rows.lines.push_back(3);
        LoggerColumns columns = proposedColumns(rows);
        columns.order = DayOrder::YearMonthDay;
        const auto readings = read(rows, columns);
        ASSERT_TRUE(readings);
        EXPECT_LE(readings->faulty, 1);
        EXPECT_GE(readings->readings, readings->faulty == 1 ? 0 : 1);
    }
}

} // namespace
} // namespace plumule
