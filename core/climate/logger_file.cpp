#include "core/climate/logger_file.h"

#include "core/base/number_text.h"
#include "core/base/work_reason.h"
#include "core/climate/climate_sums.h"
#include "core/exchange/exchange_reason.h"
#include "core/exchange/tray_import.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fmt/format.h>
#include <set>

namespace plumule {
namespace {

constexpr double kColdest = -50; // °C; what a logger for rooms can read (from memory)
constexpr double kHottest = 80;
constexpr double kMostLux = 200'000; // twice a summer noon (common practice, no source)
constexpr std::size_t kRowsAStep = 10'000;
constexpr int kMinutesAnHour = 60;

// One line's values in thousandths, at a minute since 1970 on the room's clock.
struct LoggerReading
{
    std::int64_t minute = 0;
    std::array<std::optional<std::int64_t>, kMeasures.size()> values;
    auto operator<=>(const LoggerReading&) const = default;
};

// A column of one measure: how its numbers are written, and what they may be.
struct MeasureColumn
{
    Measure measure = Measure::Temperature;
    std::size_t index = 0;
    DecimalMark mark = DecimalMark::Ours;
    double low = 0; // in the column's unit
    double high = 0;
    bool isFahrenheit = false;
};

tl::unexpected<Error> lineFault(int line, ErrorKind kind, ClimateReason reason,
                                std::vector<std::string> values)
{
    return tl::unexpected<Error>(Error{kind, reason, std::move(values), RowAt{"", line}});
}

// Names and cells as they are said: no longer than a line.
std::string shortened(std::string_view text)
{
    constexpr std::size_t kMost = 60;
    std::size_t length = std::min(text.size(), kMost);
    // Not in the middle of a letter.
    while (length < text.size() && length > 0 &&
           (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U) {
        --length;
    }
    return std::string(text.substr(0, length));
}

// Numbers under 100 have no thousands: a comma can only be the decimal mark.
DecimalMark markOfSmall(const std::vector<std::string_view>& cells)
{
    const bool hasComma = std::any_of(cells.begin(), cells.end(), [](std::string_view cell) {
        return cell.find(',') != std::string_view::npos;
    });
    return hasComma ? DecimalMark::Comma : DecimalMark::Point;
}

// "21.5 °C" and "55%" without what stands behind the number.
std::string_view withoutUnit(std::string_view cell)
{
    std::string_view text = trimmed(cell);
    const std::size_t end = text.find_last_of("0123456789.,");
    return end == std::string_view::npos ? text : text.substr(0, end + 1);
}

std::vector<std::string_view> cellsOf(const CsvTable& table, std::size_t column)
{
    std::vector<std::string_view> cells;
    cells.reserve(table.rows.size());
    for (const auto& row : table.rows) {
        cells.push_back(row[column]);
    }
    return cells;
}

DecimalMark markOfLight(const CsvTable& table, std::size_t column, DecimalMark otherwise)
{
    std::vector<std::string_view> cells = cellsOf(table, column);
    std::transform(cells.begin(), cells.end(), cells.begin(), withoutUnit);
    return decimalMarkOf(cells, otherwise);
}

std::vector<MeasureColumn> measureColumns(const CsvTable& table, const LoggerColumns& columns)
{
    std::vector<MeasureColumn> measures;
    DecimalMark mark = table.separator == ',' ? DecimalMark::Ours : DecimalMark::Unclear;
    if (columns.temperature) {
        const bool isFahrenheit = columns.temperatureUnit == TemperatureUnit::Fahrenheit;
        mark = markOfSmall(cellsOf(table, *columns.temperature));
        measures.push_back({Measure::Temperature, *columns.temperature, mark,
                            isFahrenheit ? fahrenheitOfCelsius(kColdest) : kColdest,
                            isFahrenheit ? fahrenheitOfCelsius(kHottest) : kHottest, isFahrenheit});
    }
    if (columns.humidity) {
        measures.push_back({Measure::Humidity, *columns.humidity,
                            markOfSmall(cellsOf(table, *columns.humidity)), 0, 100, false});
    }
    if (columns.light) {
        measures.push_back({Measure::Light, *columns.light,
                            markOfLight(table, *columns.light, mark), 0,
                            columns.lightUnit == LightUnit::Lux ? kMostLux : kMostPpfd, false});
    }
    return measures;
}

Done checkColumns(const CsvTable& table, const LoggerColumns& columns)
{
    if (!columns.time) {
        return fail(ErrorKind::Missing, ClimateReason::TimeMissing);
    }
    if (!columns.temperature && !columns.humidity && !columns.light) {
        return fail(ErrorKind::Missing, ClimateReason::MeasureMissing);
    }
    std::set<std::size_t> taken;
    for (const auto& column :
         {columns.time, columns.clock, columns.temperature, columns.humidity, columns.light}) {
        if (column && *column >= table.header.size()) {
            return fail(ErrorKind::Missing, ClimateReason::TimeMissing);
        }
        if (column && !taken.insert(*column).second) {
            return fail(ErrorKind::Duplicate, ClimateReason::ColumnTwice,
                        shortened(table.header[*column]));
        }
    }
    if (!columns.order) {
        const auto days = cellsOf(table, *columns.time);
        return fail(ErrorKind::Ambiguous, ClimateReason::DateOrderUnclear,
                    shortened(dateOrderOf(days).unclear));
    }
    return {};
}

// Reads line after line.
class LoggerReader
{
public:
    LoggerReader(const CsvTable& table, const LoggerColumns& columns, const TimeZone& zone,
                 Moment now)
        : m_table(table)
        , m_columns(columns)
        , m_zone(zone)
        , m_now(now)
        , m_measures(measureColumns(table, columns))
    {}

    // None for a line without a value.
    [[nodiscard]] Result<std::optional<LoggerReading>> reading(std::size_t row) const
    {
        LoggerReading reading;
        bool hasValue = false;
        for (const MeasureColumn& column : m_measures) {
            const auto value = valueIn(row, column);
            if (!value) {
                return passOn(value);
            }
            reading.values[static_cast<std::size_t>(column.measure)] = *value;
            hasValue = hasValue || value->has_value();
        }
        if (!hasValue) {
            return std::nullopt;
        }
        const auto at = timeIn(row);
        if (!at) {
            return passOn(at);
        }
        reading.minute = std::int64_t{at->date.days} * kMinutesPerDay + at->minute;
        return reading;
    }

private:
    [[nodiscard]] Result<std::optional<std::int64_t>> valueIn(std::size_t row,
                                                              const MeasureColumn& column) const
    {
        const int line = m_table.lines[row];
        const std::string_view cell = trimmed(m_table.rows[row][column.index]);
        if (cell.empty()) {
            return std::nullopt;
        }
        const std::string name = shortened(m_table.header[column.index]);
        const auto number = decimalFromText(withoutUnit(cell), column.mark);
        if (!number) {
            const bool isUnclear = number.error().kind == ErrorKind::Ambiguous;
            return lineFault(line, number.error().kind,
                             isUnclear ? ClimateReason::CellAmbiguous : ClimateReason::CellForm,
                             {name, shortened(cell)});
        }
        if (!(*number >= column.low && *number <= column.high)) {
            return lineFault(line, ErrorKind::Invalid, ClimateReason::CellBeyond,
                             {name, shortened(cell), fmt::format("{:.0f}", column.low),
                              fmt::format("{:.0f}", column.high)});
        }
        const double value = column.isFahrenheit ? celsiusOfFahrenheit(*number) : *number;
        return std::llround(value * kMilli);
    }

    [[nodiscard]] Result<Moment> timeIn(std::size_t row) const
    {
        const int line = m_table.lines[row];
        std::string text = m_table.rows[row][*m_columns.time];
        if (m_columns.clock) {
            text += ' ' + m_table.rows[row][*m_columns.clock];
        }
        const auto written = writtenTime(text, *m_columns.order);
        if (!written || written->at.date < date(1990, 1, 2) ||
            written->at.date > date(2100, 12, 30)) {
            return lineFault(line, ErrorKind::Invalid, ClimateReason::TimeForm, {shortened(text)});
        }
        const Moment at = roomTime(*written, m_columns.clockOfTimes, m_zone);
        if (at > m_now) {
            return lineFault(line, ErrorKind::Invalid, ClimateReason::TimeAhead, {shortened(text)});
        }
        return at;
    }

    const CsvTable& m_table;
    const LoggerColumns& m_columns;
    const TimeZone& m_zone;
    Moment m_now;
    std::vector<MeasureColumn> m_measures;
};

Moment momentOf(std::int64_t minute)
{
    return Moment{} + minute;
}

HourReadings summaryOf(const std::vector<std::int64_t>& values)
{
    HourReadings hour;
    hour.readings = static_cast<int>(values.size());
    const auto [low, high] = std::minmax_element(values.begin(), values.end());
    hour.low = *low;
    hour.high = *high;
    double sum = 0;
    for (const std::int64_t value : values) {
        sum += static_cast<double>(value);
    }
    hour.mean = std::llround(sum / static_cast<double>(values.size()));
    return hour;
}

using Readings = std::vector<LoggerReading>;

ClimateHour hourOf(Readings::const_iterator begin, Readings::const_iterator end)
{
    const Moment first = momentOf(begin->minute);
    ClimateHour hour;
    hour.on = first.date;
    hour.hour = first.minute / kMinutesAnHour;
    hour.firstMinute = first.minute % kMinutesAnHour;
    hour.lastMinute = momentOf(std::prev(end)->minute).minute % kMinutesAnHour;
    for (std::size_t measure = 0; measure < kMeasures.size(); ++measure) {
        std::vector<std::int64_t> values;
        for (auto reading = begin; reading != end; ++reading) {
            if (reading->values[measure]) {
                values.push_back(*reading->values[measure]);
            }
        }
        if (!values.empty()) {
            hour.measures[measure] = summaryOf(values);
        }
    }
    return hour;
}

void gatherHours(Readings& all, LoggerReadings& result)
{
    std::sort(all.begin(), all.end());
    const auto end = std::unique(all.begin(), all.end());
    result.repeated = std::distance(end, all.end());
    all.erase(end, all.end());
    result.readings = static_cast<std::int64_t>(all.size());
    if (all.empty()) {
        return;
    }
    result.first = momentOf(all.front().minute);
    result.last = momentOf(all.back().minute);
    for (auto begin = all.cbegin(); begin != all.cend();) {
        const std::int64_t hour = begin->minute / kMinutesAnHour;
        const auto next = std::find_if(begin, all.cend(), [hour](const LoggerReading& reading) {
            return reading.minute / kMinutesAnHour != hour;
        });
        result.hours.push_back(hourOf(begin, next));
        begin = next;
    }
}

bool holds(const std::string& name, std::initializer_list<const char*> words)
{
    return std::any_of(words.begin(), words.end(),
                       [&](const char* word) { return name.find(word) != std::string::npos; });
}

// Takes the column for the first thing that its name speaks of and no column before it did.
void guess(LoggerColumns& columns, const std::string& name, std::size_t index)
{
    const auto take = [index](std::optional<std::size_t>& column) {
        const bool isFree = !column;
        column = column.value_or(index);
        return isFree;
    };
    if (holds(name, {"temp", "°c", "°f", "celsius", "fahrenheit"})) {
        if (take(columns.temperature) && holds(name, {"°f", "(f)", "_f", "fahrenheit", "[f]"})) {
            columns.temperatureUnit = TemperatureUnit::Fahrenheit;
        }
    } else if (holds(name, {"humid", "rh", "feuch"})) {
        take(columns.humidity);
    } else if (holds(name, {"ppfd", "par", "light", "lux", "mol", "licht"})) {
        if (take(columns.light) && holds(name, {"lux", "(lx)", "_lx", "[lx]"})) {
            columns.lightUnit = LightUnit::Lux;
        }
    } else if (holds(name, {"date", "time", "zeit", "datum", "day"})) {
        if (!take(columns.time)) {
            take(columns.clock);
        }
    }
}

} // namespace

Result<CsvTable> loggerTableIn(const std::string& path)
{
    constexpr std::int64_t kBytesAMegabyte = 1'000'000;
    std::error_code failed;
    const auto bytes = std::filesystem::file_size(path, failed);
    if (!failed && bytes > static_cast<std::uintmax_t>(kMostLoggerMegabytes * kBytesAMegabyte)) {
        return fail(ErrorKind::Invalid, ClimateReason::FileTooLarge, path, kMostLoggerMegabytes);
    }
    const auto text = textOfFile(path);
    if (!text) {
        return passOn(text);
    }
    const auto lines = std::count(text->begin(), text->end(), '\n');
    if (lines > kMostLoggerRows) {
        return fail(ErrorKind::Invalid, ClimateReason::TooManyRows, lines, kMostLoggerRows);
    }
    return csvFrom(*text);
}

LoggerColumns proposedColumns(const CsvTable& table)
{
    LoggerColumns columns;
    for (std::size_t i = 0; i < table.header.size(); ++i) {
        guess(columns, nameKey(table.header[i]), i);
    }
    if (columns.time) {
        columns.order = dateOrderOf(cellsOf(table, *columns.time)).order;
    }
    return columns;
}

Result<LoggerReadings> readingsOf(const CsvTable& table, const LoggerColumns& columns,
                                  const TimeZone& zone, Moment now, const Progress& progress)
{
    if (const Done sound = checkColumns(table, columns); !sound) {
        return passOn(sound);
    }
    LoggerReadings result;
    Readings all;
    const LoggerReader reader(table, columns, zone, now);
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        if (row % kRowsAStep == 0) {
            if (progress.isStopped()) {
                return fail(ErrorKind::Cancelled, WorkReason::Stopped);
            }
            progress.report(static_cast<double>(row) / static_cast<double>(table.rows.size()));
        }
        const auto reading = reader.reading(row);
        if (reading && *reading) {
            all.push_back(**reading);
        } else if (!reading) {
            ++result.faulty;
            if (result.faults.size() < kMostLoggerFaults) {
                result.faults.push_back(reading.error());
            }
        }
    }
    gatherHours(all, result);
    return result;
}

} // namespace plumule
