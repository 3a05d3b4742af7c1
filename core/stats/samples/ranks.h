#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <optional>
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
    // H/(n−1), the share of the spread of the ranks that lies between the groups.
    double epsilonSquared = 0;
    std::vector<double> meanRanks;
};

// Errors: TooFew (one group only, an empty group), Invalid (a value is not finite, all are alike).
[[nodiscard]] Result<KruskalWallis> kruskalWallis(std::span<const std::vector<double>> groups);

// Dunn 1964, Technometrics 6:241: pairs of groups on the ranks of all, corrected for ties.
struct DunnPair
{
    std::size_t a = 0;
    std::size_t b = 0;
    // Mean rank of b less that of a.
    double meanRankDifference = 0;
    double z = 0;
    double p = 1;
    double pHolm = 1;
    double pBonferroni = 1;
};

// All pairs a < b in order. Errors as kruskalWallis.
[[nodiscard]] Result<std::vector<DunnPair>> dunn(std::span<const std::vector<double>> groups);

// Wilcoxon's rank sum (Mann–Whitney), two-sided.
struct RankSum
{
    // Pairs in which y exceeds x, ties counted as half.
    double u = 0;
    double pNormalCorrected = 1; // with continuity correction
    double pNormal = 1;
    // From all ways to deal out the observed (tied) ranks: how often a rank sum lies as far from
    // its mean as this one. Unknown above 100 values.
    std::optional<double> pExact;
};

// Errors: TooFew (an empty sample), Invalid (a value is not finite, all are alike).
[[nodiscard]] Result<RankSum> rankSum(std::span<const double> y, std::span<const double> x);

// Wilcoxon's signed rank, two-sided; differences of zero are left out first.
struct SignedRank
{
    // Sum of the ranks of the positive differences.
    double v = 0;
    std::size_t zeroDifferences = 0;
    double pNormalCorrected = 1;
    double pNormal = 1;
    // From all 2ⁿ signs on the observed (tied) ranks. Unknown above 100 differences.
    std::optional<double> pExact;
};

// Errors: TooFew (no difference, or none but zero), Invalid (a value is not finite).
[[nodiscard]] Result<SignedRank> signedRank(std::span<const double> differences);

} // namespace plumule::stats
