#pragma once

#include "core/base/result.h"
#include "core/stats/probability/probability_reason.h"

#include <functional>

namespace plumule::stats {

// The x where a rising function crosses 0, to near rounding. The search walks from `start` with
// growing steps until it has the root between two points; NoConvergence when it finds none.
[[nodiscard]] Result<double> risingRoot(const std::function<double(double)>& rising, double start,
                                        double firstStep);

} // namespace plumule::stats
