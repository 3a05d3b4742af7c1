#pragma once

#include "core/chart/chart_spec.h"
#include "core/order/order_plan.h"

namespace plumule {

// The chance in percent that a promise is met by so many trays sown, each a dot with their medium's
// marker, and a line at the chance wanted; numbers that are too few are hollow. Key
// "chance_by_trays".
[[nodiscard]] ChartSpec chanceChart(const std::vector<ChanceOfTrays>& chances, int marker);

} // namespace plumule
