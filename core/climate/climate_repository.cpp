#include "core/climate/climate_repository.h"

#include "core/storage/id_list.h"
#include "core/storage/table.h"

#include <algorithm>

namespace plumule {

template <>
struct TableOf<ClimateLogger>
{
    static constexpr const char* name = "climate_logger";
    static constexpr auto columns = std::tuple{
        column("name", &ClimateLogger::name), column("rack_id", &ClimateLogger::rack),
        column("shelf_id", &ClimateLogger::shelf), column("light_unit", &ClimateLogger::lightUnit)};
    static bool isSound(const ClimateLogger& logger) { return !(logger.rack && logger.shelf); }
};

template <>
struct TableOf<ShelfPpfd>
{
    static constexpr const char* name = "shelf_ppfd";
    static constexpr auto columns =
        std::tuple{column("shelf_id", &ShelfPpfd::shelf), column("ppfd_milli", &ShelfPpfd::milli)};
    static bool isSound(const ShelfPpfd& ppfd) { return ppfd.milli >= 0; }
};

namespace {

constexpr const char* kHourTable = "climate_hour";
constexpr int kHoursADay = 24;
constexpr int kMinutesAnHourRow = 60;
constexpr int kColumnsAMeasure = 4;
// Behind the id, in the order of the statements below.
constexpr int kFirstMeasure = 5;
constexpr int kLoggerColumn = 17;

constexpr const char* kMeasureColumns =
    "temperature_readings, temperature_mean_milli, temperature_low_milli, temperature_high_milli, "
    "humidity_readings, humidity_mean_milli, humidity_low_milli, humidity_high_milli, "
    "light_readings, light_mean_milli, light_low_milli, light_high_milli";

std::optional<HourReadings> readingsIn(const Statement& row, int first)
{
    const auto readings = row.get<std::optional<int>>(first);
    if (!readings) {
        return std::nullopt;
    }
    return HourReadings{*readings, row.get<std::int64_t>(first + 1),
                        row.get<std::int64_t>(first + 2), row.get<std::int64_t>(first + 3)};
}

bool isSound(const ClimateHour& hour)
{
    return hour.hour >= 0 && hour.hour < kHoursADay && hour.firstMinute >= 0 &&
           hour.firstMinute <= hour.lastMinute && hour.lastMinute < kMinutesAnHourRow &&
           std::all_of(hour.measures.begin(), hour.measures.end(), [](const auto& readings) {
               return !readings || (readings->readings > 0 && readings->low <= readings->mean &&
                                    readings->mean <= readings->high);
           });
}

ClimateHour hourIn(const Statement& row)
{
    ClimateHour hour;
    hour.id = row.get<ClimateHourId>(0);
    hour.on = row.get<Date>(1);
    hour.hour = row.get<int>(2);
    hour.firstMinute = row.get<int>(3);
    hour.lastMinute = row.get<int>(4);
    for (std::size_t i = 0; i < hour.measures.size(); ++i) {
        hour.measures[i] = readingsIn(row, kFirstMeasure + kColumnsAMeasure * static_cast<int>(i));
    }
    if (!isSound(hour)) {
        throw damagedRow(kHourTable, hour.id.value);
    }
    return hour;
}

// ?1 is the id, ?2 the logger, then as kMeasureColumns from ?7 on.
void bindHour(Statement& statement, ClimateLoggerId logger, const ClimateHour& hour)
{
    statement.bind(hour.id, logger, hour.on, hour.hour, hour.firstMinute, hour.lastMinute);
    int index = kFirstMeasure + 2;
    for (const auto& readings : hour.measures) {
        const std::array<Cell, kColumnsAMeasure> cells =
            readings
                ? std::array<Cell, kColumnsAMeasure>{std::int64_t{readings->readings},
                                                     readings->mean, readings->low, readings->high}
                : std::array<Cell, kColumnsAMeasure>{};
        for (const Cell& cell : cells) {
            statement.bindCell(index++, cell);
        }
    }
}

} // namespace

std::vector<ClimateLogger> ClimateRepository::loggers()
{
    return selectRows<ClimateLogger>(m_database, "ORDER BY name, id");
}

std::optional<ClimateLogger> ClimateRepository::find(const ClimateLogger& logger)
{
    return selectRow<ClimateLogger>(m_database,
                                    "WHERE name = ?1 AND rack_id IS ?2 AND shelf_id IS ?3",
                                    logger.name, logger.rack, logger.shelf);
}

void ClimateRepository::insert(ClimateLogger& logger)
{
    insertRow(m_database, logger);
}

void ClimateRepository::update(const ClimateLogger& logger)
{
    updateRow(m_database, logger);
}

ClimateRepository::HoursByLogger ClimateRepository::hours(const std::vector<ClimateLogger>& loggers,
                                                          Date from, Date to)
{
    HoursByLogger hours;
    if (loggers.empty()) {
        return hours;
    }
    Statement rows = m_database.prepare(
        std::string("SELECT id, on_date, hour, first_minute, last_minute, ") + kMeasureColumns +
        ", logger_id FROM climate_hour WHERE logger_id IN (SELECT value FROM json_each(?1)) AND "
        "on_date BETWEEN ?2 AND ?3 ORDER BY logger_id, on_date, hour");
    rows.bind(idListOf(loggers), from, to);
    while (rows.step()) {
        hours[rows.get<ClimateLoggerId>(kLoggerColumn)].push_back(hourIn(rows));
    }
    return hours;
}

void ClimateRepository::insert(ClimateLoggerId logger, ClimateHour& hour)
{
    hour.id.value = m_database.nextId();
    Statement statement = m_database.prepare(
        std::string("INSERT INTO climate_hour (id, logger_id, on_date, hour, first_minute, "
                    "last_minute, ") +
        kMeasureColumns +
        ") VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, "
        "?18)");
    bindHour(statement, logger, hour);
    statement.run();
}

void ClimateRepository::update(ClimateLoggerId logger, const ClimateHour& hour)
{
    Statement statement = m_database.prepare(
        std::string(
            "UPDATE climate_hour SET (logger_id, on_date, hour, first_minute, last_minute, ") +
        kMeasureColumns +
        ") = (?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18) WHERE "
        "id = ?1");
    bindHour(statement, logger, hour);
    statement.run();
}

std::vector<ShelfPpfd> ClimateRepository::ppfds()
{
    return selectRows<ShelfPpfd>(m_database, "ORDER BY shelf_id");
}

void ClimateRepository::setPpfd(ShelfId shelf, std::optional<std::int64_t> milli)
{
    auto stored = selectRow<ShelfPpfd>(m_database, "WHERE shelf_id = ?1", shelf);
    if (stored && milli) {
        stored->milli = *milli;
        updateRow(m_database, *stored);
    } else if (stored) {
        deleteRow<ShelfPpfd>(m_database, stored->id);
    } else if (milli) {
        ShelfPpfd ppfd{{}, shelf, *milli};
        insertRow(m_database, ppfd);
    }
}

RoomClimate ClimateRepository::climate(Date from, Date to)
{
    RoomClimate climate;
    climate.loggers = loggers();
    const HoursByLogger byLogger = hours(climate.loggers, from, to);
    for (const ClimateLogger& logger : climate.loggers) {
        const auto found = byLogger.find(logger.id);
        if (found == byLogger.end()) {
            continue;
        }
        for (const ClimateDay& day : daysOf(found->second, logger.lightUnit)) {
            climate.days[logger.id].emplace(day.on, day);
        }
    }
    for (const ShelfPpfd& ppfd : ppfds()) {
        climate.lampPpfd[ppfd.shelf] = static_cast<double>(ppfd.milli) / kMilli;
    }
    return climate;
}

} // namespace plumule
