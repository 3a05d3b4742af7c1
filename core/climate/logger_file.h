#pragma once

#include "core/base/progress.h"
#include "core/climate/climate.h"
#include "core/climate/climate_reason.h"
#include "core/climate/logger_time.h"
#include "core/exchange/csv.h"

namespace plumule {

enum class TemperatureUnit
{
    Celsius,
    Fahrenheit
};

// What a person says that the columns of a logger's file are, by their places.
struct LoggerColumns
{
    std::optional<std::size_t> time;  // day and time, or the day alone
    std::optional<std::size_t> clock; // the time of day, where it has a column of its own
    std::optional<std::size_t> temperature;
    std::optional<std::size_t> humidity;
    std::optional<std::size_t> light;
    TemperatureUnit temperatureUnit = TemperatureUnit::Celsius;
    LightUnit lightUnit = LightUnit::Ppfd;
    std::optional<DayOrder> order; // none: the days may be read in two ways, and nobody has said
    LoggerClock clockOfTimes = LoggerClock::Room;
    bool operator==(const LoggerColumns&) const = default;
};

// No file is read that is larger or has more rows: ten years of a reading every five minutes.
inline constexpr std::int64_t kMostLoggerMegabytes = 64;
inline constexpr std::int64_t kMostLoggerRows = 1'100'000;
// As many faults are kept as anyone would read; all are counted.
inline constexpr std::size_t kMostLoggerFaults = 100;

// The table in the file; FileTooLarge before it is read, TooManyRows, or what csvFrom() refuses.
[[nodiscard]] Result<CsvTable> loggerTableIn(const std::string& path);

// A guess by the columns' names and the whole of their days, to be looked at.
[[nodiscard]] LoggerColumns proposedColumns(const CsvTable& table);

// What a file tells, by hours.
struct LoggerReadings
{
    std::vector<ClimateHour> hours; // oldest first
    std::optional<Moment> first;
    std::optional<Moment> last;
    std::int64_t readings = 0; // lines that gave at least one value
    std::int64_t repeated = 0; // lines that say again what another said
    std::int64_t faulty = 0;   // lines that can't be read, and are left out
    std::vector<Error> faults; // of them the first, with their lines
};

// Reads every line. A line without a value gives nothing; one with a value that can't be read or
// can't be true (temperature −50 to 80 °C, humidity 0 to 100 %, light 0 to 5000 µmol/m²/s or 200
// 000 lx, a time before 1990 or after `now`) is left out whole, with its reason. Seconds are cut
// off. Missing for columns that are not chosen, Ambiguous while the order of the days is not said,
// Cancelled when stopped.
[[nodiscard]] Result<LoggerReadings> readingsOf(const CsvTable& table, const LoggerColumns& columns,
                                                const TimeZone& zone, Moment now,
                                                const Progress& progress = {});

} // namespace plumule
