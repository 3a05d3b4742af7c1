#pragma once

#include "core/base/result.h"
#include "core/stats/samples/groups_reason.h"

#include <span>
#include <vector>

namespace plumule::stats {

// Ranks from 1; equal values share the mean of their ranks.
[[nodiscard]] std::vector<double> midranks(std::span<const double> values);
// Σ(t³ − t) over the groups of t equal values.
[[nodiscard]] double tieSum(std::span<const double> values);

// Kruskal and Wallis 1952, JASA 47:583, corrected for ties; p by χ².
struct KruskalWallis
{
    double h = 0;
    int df = 0;
    double p = 1;
};

// Errors: TooFew (one group only, an empty group), Invalid (a value is not finite, all are alike).
[[nodiscard]] Result<KruskalWallis> kruskalWallis(std::span<const std::vector<double>> groups);

} // namespace plumule::stats
