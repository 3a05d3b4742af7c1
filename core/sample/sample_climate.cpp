#include "core/sample/sample_climate.h"

#include "core/climate/climate_repository.h"
#include "core/room/room_repository.h"

#include <cmath>
#include <numbers>

namespace plumule {
namespace {

constexpr int kSampleHours = 24;
constexpr int kCoolest = 5;
constexpr int kLampsOn = 6;
constexpr int kReadingsAnHour = 12;
constexpr int kLastReading = 55;

std::int64_t inMilli(double value)
{
    return std::llround(value * kMilli);
}

HourReadings around(double mean, double spread)
{
    return {kReadingsAnHour, inMilli(mean), inMilli(mean - spread), inMilli(mean + spread)};
}

ClimateHour sampleHour(const SampleRow& row, Date on, int hour, int lampHours)
{
    ClimateHour result;
    result.on = on;
    result.hour = hour;
    result.lastMinute = kLastReading;
    // 0 at the coolest hour, 1 twelve hours later.
    const double warmth =
        (1 - std::cos(2 * std::numbers::pi * (hour - kCoolest) / kSampleHours)) / 2;
    const double low = row.number("low_c");
    const double night = row.number("humidity_night_percent");
    result.of(Measure::Temperature) = around(low + (row.number("high_c") - low) * warmth, 0.2);
    result.of(Measure::Humidity) =
        around(night + (row.number("humidity_day_percent") - night) * warmth, 1);
    if (const auto ppfd = row.maybeNumber("ppfd")) {
        const bool isLit = hour >= kLampsOn && hour < kLampsOn + lampHours;
        result.of(Measure::Light) = isLit ? around(*ppfd, 3) : around(0, 0);
    }
    return result;
}

// The logger of the row, stored where it is a new one.
ClimateLogger sampleLogger(ClimateRepository& climate, RoomRepository& rooms, const SampleRow& row,
                           const SampleStock& stock)
{
    ClimateLogger logger;
    logger.name = row.text("logger");
    if (row.has("shelf")) {
        const std::string place = row.text("rack") + "/" + row.text("shelf") + "/1";
        const auto found = rooms.find(row.foundAs(stock.places, place, "shelf"));
        logger.shelf = found ? std::optional(found->shelf) : std::nullopt;
    }
    if (const auto stored = climate.find(logger)) {
        return *stored;
    }
    if (row.has("ppfd")) {
        logger.lightUnit = LightUnit::Ppfd;
    }
    climate.insert(logger);
    return logger;
}

} // namespace

void storeSampleClimate(Database& database, SampleTables& tables, const SampleStock& stock)
{
    ClimateRepository climate(database);
    RoomRepository rooms(database);
    const auto shelves = rooms.layout().shelves;
    const int lampHours = shelves.empty() ? 0
                                          : shelves.front().lightMinutes.value_or(0) /
                                                (kMinutesPerDay / kSampleHours);
    tables.forEach("climate", [&](const SampleRow& row) {
        const ClimateLogger logger = sampleLogger(climate, rooms, row, stock);
        const Date on = row.day("day");
        const int until = row.maybeWhole("until_h").value_or(kSampleHours);
        for (int hour = 0; hour < until && !tables.isFaulty(); ++hour) {
            const Moment end = Moment{on, 0} + std::int64_t{hour + 1} * 60;
            if (end <= tables.now()) {
                ClimateHour whole = sampleHour(row, on, hour, lampHours);
                climate.insert(logger.id, whole);
            }
        }
    });
}

} // namespace plumule
