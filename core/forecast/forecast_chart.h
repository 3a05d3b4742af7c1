#pragma once

#include "core/chart/chart_spec.h"
#include "core/forecast/forecast.h"

namespace plumule {

inline constexpr std::size_t kHarvestsInChart = 40;

// The latest harvests whose yields were foretold from the room's past, in order: what was weighed
// in percent of the middle that was foretold, over its interval; hollow where it fell outside.
// Nothing of none.
[[nodiscard]] ChartSpec coverageChart(const std::vector<ScoredForecast>& scored);

} // namespace plumule
