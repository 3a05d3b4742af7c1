#pragma once

#include "core/base/result.h"

#include <cstdint>
#include <span>
#include <vector>

namespace plumule::stats {

// Exact permutation tests: every assignment the draw could have given is worked through, and an
// assignment counts when its statistic is at least the observed one (but for rounding, 1e-9).
// Errors of all: TooFew (an empty group, a single group or block too small), Invalid (a value is
// not finite; with subject "permutation.constant", all values alike; with subject
// "permutation.many", more than kMostPermutations assignments to work through).
inline constexpr double kMostPermutations = 3e7;

// Of a difference of means.
struct PermutedDifference
{
    double observed = 0;
    std::uint64_t permutations = 0;
    std::uint64_t countTwoSided = 0;
    std::uint64_t countGreater = 0;
    std::uint64_t countLess = 0;

    [[nodiscard]] double pTwoSided() const;
    [[nodiscard]] double pGreater() const;
    [[nodiscard]] double pLess() const;
};

// Mean of y less mean of x over all splits of the values in two groups of these sizes.
[[nodiscard]] Result<PermutedDifference> permuteTwoGroups(std::span<const double> y,
                                                          std::span<const double> x);
// Mean of paired differences over all 2ⁿ signs.
[[nodiscard]] Result<PermutedDifference> flipSigns(std::span<const double> differences);

// Of an F ratio. F is infinite where nothing is left over.
struct PermutedF
{
    double f = 0;
    std::uint64_t permutations = 0;
    std::uint64_t count = 0;

    [[nodiscard]] double p() const;
};

// One-way F over all assignments to groups of these sizes.
[[nodiscard]] Result<PermutedF> permuteGroups(std::span<const std::vector<double>> groups);
// F of the treatments, the blocks taken out, over all orders within each block; one vector a block,
// one value a treatment.
[[nodiscard]] Result<PermutedF> permuteWithinBlocks(std::span<const std::vector<double>> blocks);

} // namespace plumule::stats
