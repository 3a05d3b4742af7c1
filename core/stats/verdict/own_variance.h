#pragma once

#include "core/stats/verdict/media_design.h"

namespace plumule::stats {

// What two media of a sowing vary by themselves, in the units in which a difference of two of their
// trays has variance 2.
struct OwnVariance
{
    double variance = 0;
    double df = 0;
};

// With blocks half the variance of the blocks' differences, in a Latin square once the columns'
// effects are off, for which it pays a degree of freedom; without, from the media's own
// variances, with Welch's degrees of freedom. None where a medium has a single tray, or two media
// no two blocks in common.
[[nodiscard]] std::optional<OwnVariance> ownVarianceOf(const MediaDesign& trays, std::size_t a,
                                                       std::size_t b);

// Of several sowings: weighted by their degrees of freedom.
[[nodiscard]] std::optional<OwnVariance> pooled(const std::vector<OwnVariance>& variances);

} // namespace plumule::stats
