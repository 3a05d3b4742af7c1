#pragma once

#include "core/base/result.h"
#include "core/stats/samples/groups_reason.h"

#include <optional>

namespace plumule::stats {

// Probability of at least `right` right answers in `n`, each right by chance alone with
// probability `chance` (1/3 in a triangle test, 1/2 in a pair).
[[nodiscard]] double atLeastByChance(int n, int right, double chance);

struct ForcedChoice
{
    int n = 0;
    int right = 0;
    double p = 1;
    // Share of tasters who really tell the samples apart, once guesses are taken off; never
    // below 0.
    double discriminators = 0;
};
// Triangle test (binomial with 1/3, one-sided). Errors: TooFew (n < 1), Invalid (right not in
// 0..n).
[[nodiscard]] Result<ForcedChoice> triangleTest(int n, int right);
// Fewest right answers that are significant at alpha; nothing where even n of n are not.
[[nodiscard]] std::optional<int> fewestRight(int n, double chance, double alpha);
} // namespace plumule::stats
