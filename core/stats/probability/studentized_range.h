#pragma once

#include "core/base/result.h"
#include "core/stats/probability/probability_reason.h"

// The studentized range (Tukey): the range of `groups` independent normal means over an independent
// spread estimate with `df` degrees of freedom. groups from 2, df > 0 or infinite. Computed as the
// double integral of its definition, both integrals to near rounding; the upper tail keeps its
// relative accuracy. Invalid when an argument is out of its range.
namespace plumule::stats {

[[nodiscard]] Result<double> studentizedRangeUpper(double q, int groups, double df);
// The q with probability p below it, 0 < p < 1.
[[nodiscard]] Result<double> studentizedRangeQuantile(double p, int groups, double df);

} // namespace plumule::stats
