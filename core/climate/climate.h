#pragma once

#include "core/room/room.h"

#include <array>

namespace plumule {

struct ClimateLoggerTag;
struct ClimateHourTag;
struct ShelfPpfdTag;
using ClimateLoggerId = Id<ClimateLoggerTag>;
using ClimateHourId = Id<ClimateHourTag>;
using ShelfPpfdId = Id<ShelfPpfdTag>;

// What a logger's light is counted in. Lux are of the human eye: how many photons a lux is depends
// on the lamp's spectrum, so they are kept and never converted.
enum class LightUnit
{
    Ppfd, // µmol/m²/s
    Lux
};
[[nodiscard]] const char* toText(LightUnit unit);
bool fromText(std::string_view text, LightUnit& unit);

// A logger at a place; without rack and shelf it hung in the room.
struct ClimateLogger
{
    ClimateLoggerId id;
    std::string name;
    std::optional<RackId> rack;
    std::optional<ShelfId> shelf; // its rack is not repeated
    std::optional<LightUnit> lightUnit;
    bool operator==(const ClimateLogger&) const = default;
};

enum class Measure
{
    Temperature, // °C
    Humidity,    // percent, relative
    Light        // in the logger's unit
};
inline constexpr std::array kMeasures = {Measure::Temperature, Measure::Humidity, Measure::Light};

// The readings of one measure in one hour, in thousandths of its unit.
struct HourReadings
{
    int readings = 0;
    std::int64_t mean = 0;
    std::int64_t low = 0;
    std::int64_t high = 0;
    bool operator==(const HourReadings&) const = default;
};

// One hour of a logger in the room's civil time.
struct ClimateHour
{
    ClimateHourId id;
    Date on;
    int hour = 0;        // 0 to 23
    int firstMinute = 0; // of its readings, within the hour
    int lastMinute = 0;
    std::array<std::optional<HourReadings>, kMeasures.size()> measures;
    bool operator==(const ClimateHour&) const = default;

    [[nodiscard]] const std::optional<HourReadings>& of(Measure measure) const
    {
        return measures[static_cast<std::size_t>(measure)];
    }
    std::optional<HourReadings>& of(Measure measure)
    {
        return measures[static_cast<std::size_t>(measure)];
    }
};

// The photon flux density under a shelf's lamps, in thousandths of µmol/m²/s.
struct ShelfPpfd
{
    ShelfPpfdId id;
    ShelfId shelf;
    std::int64_t milli = 0;
    bool operator==(const ShelfPpfd&) const = default;
};

inline constexpr double kMilli = 1000;
inline constexpr double kMostPpfd = 5000; // full sun is about 2000 (common practice, no source)

} // namespace plumule
