#pragma once

#include "core/climate/climate.h"

#include <map>
#include <vector>

namespace plumule {

// A day's mean needs three quarters of its hours, else it would be that of the hours at hand.
inline constexpr int kHoursForMean = 18;
// A day's sum of light needs all but one: the hour that a day of spring lacks.
inline constexpr int kHoursForSum = 23;
// Over a tray's growth a mean needs this share of its days.
inline constexpr double kShareOfDays = 0.75;

// The mean of a day's hours, with the least and the greatest reading.
struct DayMean
{
    double mean = 0;
    double low = 0;
    double high = 0;
    bool operator==(const DayMean&) const = default;
};

// A day of one logger, or of one shelf by the loggers nearest to it. What is missing is not known:
// too few of its hours were read.
struct ClimateDay
{
    Date on;
    int hours = 0;                      // with any reading
    std::optional<DayMean> temperature; // °C
    std::optional<DayMean> humidity;    // percent
    std::optional<double> vpd;  // mean of the hours' deficits in kPa, each of its hour's means
    std::optional<double> dli;  // mol/m²
    std::optional<double> lux;  // mean, not converted
    bool isLightOfLamp = false; // dli is the lamp's flux times its hours
    bool operator==(const ClimateDay&) const = default;
};

// Days with at least one hour, oldest first, of one logger's hours in order.
[[nodiscard]] std::vector<ClimateDay> daysOf(const std::vector<ClimateHour>& hours,
                                             std::optional<LightUnit> unit);

// What all loggers tell of some days.
struct RoomClimate
{
    std::vector<ClimateLogger> loggers;
    std::map<ClimateLoggerId, std::map<Date, ClimateDay>> days;
    std::map<ShelfId, double> lampPpfd; // µmol/m²/s

    [[nodiscard]] bool isEmpty() const { return loggers.empty() && lampPpfd.empty(); }
};

// Loggers from the nearest on: the shelf's own, the rack's, the room's; those equally near by name.
// A shelf that is not known has the room's only.
[[nodiscard]] std::vector<const ClimateLogger*>
nearestLoggers(const RoomClimate& climate, const RoomLayout& layout, std::optional<ShelfId> shelf);

// A day at a shelf: each measure of the nearest logger that knows it. Light is taken of the shelf's
// or the rack's logger only, else of the shelf's lamp: what shines elsewhere in the room tells
// nothing.
[[nodiscard]] ClimateDay climateAt(const RoomClimate& climate, const RoomLayout& layout,
                                   std::optional<ShelfId> shelf, Date on);

// A day of a tray and where it stood.
struct TrayDay
{
    Date on;
    std::optional<ShelfId> shelf;
    bool isInLight = false; // out from under its cover, so that the shelf's light was its own
};

// The climate of each of a tray's days, of days that nothing is known of too. Light is known of
// days in light only.
[[nodiscard]] std::vector<ClimateDay>
climateOf(const RoomClimate& climate, const RoomLayout& layout, const std::vector<TrayDay>& days);

// What a tray grew in: means over its days, where enough of them are known; of light, over its days
// in light.
struct GrowthClimate
{
    std::optional<double> temperature; // °C
    std::optional<double> vpd;         // kPa
    std::optional<double> dli;         // mol/m²/d
    bool operator==(const GrowthClimate&) const = default;
};
// `daysInLight`: how many of `days` the light's mean is over.
[[nodiscard]] GrowthClimate growthClimate(const std::vector<ClimateDay>& days, int daysInLight);

} // namespace plumule
