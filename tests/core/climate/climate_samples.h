#pragma once

#include "core/climate/climate.h"

namespace plumule {

inline const Date kDay = date(2026, 3, 2);

inline HourReadings steady(double value, int readings = 12)
{
    const auto milli = static_cast<std::int64_t>(value * kMilli);
    return {readings, milli, milli, milli};
}

// A whole hour of twelve readings, without a measure yet.
inline ClimateHour wholeHour(Date on, int hour)
{
    ClimateHour result;
    result.on = on;
    result.hour = hour;
    result.firstMinute = 0;
    result.lastMinute = 55;
    return result;
}

// Hours of a day at one temperature and humidity.
inline std::vector<ClimateHour> steadyDay(Date on, double celsius, double humidity, int hours = 24)
{
    std::vector<ClimateHour> day;
    for (int hour = 0; hour < hours; ++hour) {
        day.push_back(wholeHour(on, hour));
        day.back().of(Measure::Temperature) = steady(celsius);
        day.back().of(Measure::Humidity) = steady(humidity);
    }
    return day;
}

// Rack A with shelves 11 and 12, rack B with shelf 21.
inline RoomLayout twoRacks()
{
    RoomLayout layout;
    layout.racks = {{{1}, "A", 0}, {{2}, "B", 1}};
    layout.shelves = {{{11}, {1}, "1", 0, {}, 14 * 60},
                      {{12}, {1}, "2", 1, {}, 14 * 60},
                      {{21}, {2}, "1", 0, {}, 14 * 60}};
    layout.places = {{{111}, {11}, 1}, {{121}, {12}, 1}, {{211}, {21}, 1}};
    return layout;
}

} // namespace plumule
