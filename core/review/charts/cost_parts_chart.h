#pragma once

#include "core/chart/chart_spec.h"
#include "core/review/season/medium_costs.h"

namespace plumule {

// A row a medium, its parts stacked one after another; a stroke marks what a what-if comes to. A
// medium without a cost of a gram has an empty row. Key "cost_parts".
[[nodiscard]] ChartSpec costPartsChart(const std::vector<MediumCosts>& media,
                                       const std::string& currency);

} // namespace plumule
