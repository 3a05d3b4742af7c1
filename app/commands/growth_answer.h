#pragma once

#include "core/stats/growth/tray_growth.h"

#include <nlohmann/json.hpp>

namespace plumule::app {

// A curve, and whether trays stood behind its intervals.
struct GrowthAnswer
{
    stats::GrowthReport report;
    std::optional<stats::TrayGrowth> ofTrays;
};

[[nodiscard]] nlohmann::ordered_json jsonOf(const GrowthAnswer& answer);
// In words, of the columns x and y, of which so many rows were left out as empty.
void printGrowth(const GrowthAnswer& answer, const std::string& x, const std::string& y,
                 std::size_t leftOut);

} // namespace plumule::app
