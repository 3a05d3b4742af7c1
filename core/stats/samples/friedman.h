#pragma once

#include "core/base/result.h"
#include "core/stats/samples/groups_reason.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace plumule::stats {

// Ranks within blocks (judges, shelves): one vector a block, one value a treatment.
// All functions on blocks fail with TooFew (fewer than two blocks or treatments) and Invalid
// (blocks of unlike length, a value that is not finite, every block constant).

// Friedman 1937, JASA 32:675, corrected for ties.
struct Friedman
{
    std::vector<double> rankSums;
    double chiSquare = 0;
    int df = 0;
    double p = 1; // by χ²
    // Kendall's coefficient of concordance, 0 to 1.
    double kendallW = 0;
    // Iman and Davenport 1980, Comm. Stat. A9:571; infinite where the blocks agree wholly.
    double imanDavenportF = 0;
    int fDf1 = 0;
    int fDf2 = 0;
    double pF = 1;
    // From all orders of the observed (tied) ranks in each block; unknown where they are too many.
    std::optional<double> pExact;
};
[[nodiscard]] Result<Friedman> friedman(std::span<const std::vector<double>> blocks);

// Nemenyi 1963: pairs by the studentized range with infinite df, not corrected for ties.
struct NemenyiPair
{
    std::size_t a = 0;
    std::size_t b = 0;
    // Rank sum of b less that of a.
    double rankSumDifference = 0;
    double z = 0;
    double p = 1;
};
[[nodiscard]] Result<std::vector<NemenyiPair>> nemenyi(std::span<const std::vector<double>> blocks);

// Difference of two rank sums that is significant among all pairs (Newell and MacFarlane 1987,
// J. Food Sci. 52:1721, by the studentized range; their table has exact values, up to 1 lower, for
// very few panellists).
[[nodiscard]] Result<int> rankSumCriticalDifference(int blocks, int treatments,
                                                    double alpha = 0.05);
} // namespace plumule::stats
