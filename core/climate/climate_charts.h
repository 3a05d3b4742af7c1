#pragma once

#include "core/chart/chart_spec.h"
#include "core/climate/climate_days.h"

namespace plumule {

// What is drawn by day of growth beneath heights.
enum class ClimateLine
{
    Temperature, // °C: the day's mean within its least and greatest
    Humidity,    // percent
    Vpd,         // kPa
    DailyLight   // mol/m²
};
inline constexpr std::array kClimateLines = {ClimateLine::Temperature, ClimateLine::Humidity,
                                             ClimateLine::Vpd, ClimateLine::DailyLight};

// Days told by the same loggers, under their name.
struct ClimateTrack
{
    std::string name;
    std::vector<ClimateDay> days; // oldest first
};

// A curve a track over days of growth from the sowing on; with one track as a band from each day's
// least to its greatest where those are known. A day that is not known parts the curve. Keys
// "climate_temperature", "climate_humidity", "climate_vpd", "climate_dli".
[[nodiscard]] ChartSpec climateChart(ClimateLine line, const std::vector<ClimateTrack>& tracks,
                                     Date sownOn);

[[nodiscard]] bool isEmpty(const ChartSpec& spec);

} // namespace plumule
