#pragma once

#include <vector>

namespace plumule::stats {

// A chance that is known as far as trials have told it: a beta distribution.
struct UncertainChance
{
    double mean = 0.5; // above 0, below 1
    double weight = 1; // trials that it is worth: alpha + beta

    [[nodiscard]] double alpha() const { return mean * weight; }
    [[nodiscard]] double beta() const { return (1 - mean) * weight; }
};

// Chances of 0, 1, … `trials` successes: beta-binomial.
[[nodiscard]] std::vector<double> chancesOfCounts(int trials, const UncertainChance& chance);

// P(that many successes or fewer) of so many trials with that chance each. Both may be fractional:
// the binomial distribution's incomplete beta function goes on between whole numbers.
[[nodiscard]] double binomialAtMost(double successes, double trials, double chance);

} // namespace plumule::stats
