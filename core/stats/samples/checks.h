#pragma once

#include "core/stats/samples/oneway.h"

#include <optional>

// Checks of what the tests take for granted: like spreads, normal residuals, no stray value.
namespace plumule::stats {

// Levene 1960 (from group means) and Brown and Forsythe 1974, JASA 69:364 (from group medians):
// analysis of variance of the absolute deviations. Errors as oneWayAnova; NotEstimable "spread"
// when the deviations of every group are all alike.
[[nodiscard]] Result<VarianceRatio> levene(Groups groups);
[[nodiscard]] Result<VarianceRatio> brownForsythe(Groups groups);

struct ChiSquareTest
{
    double statistic = 0;
    double df = 0;
    double p = 1;
};

// Bartlett 1937, Proc. R. Soc. A 160:268. Every group needs two values (TooFew) and some spread
// (NotEstimable "spread").
[[nodiscard]] Result<ChiSquareTest> bartlett(Groups groups);

struct Normality
{
    double w = 0;
    double p = 1;
};

// Shapiro-Wilk by Royston 1995, Appl. Stat. 44:547 (AS R94), for 3 to 5000 values. Errors: TooFew
// under 3, Invalid above 5000 or when one is not finite, NotEstimable "spread" when all are alike.
[[nodiscard]] Result<Normality> shapiroWilk(std::span<const double> values);

// Every value less its group's mean, in the order given. Errors as sumGroups.
[[nodiscard]] Result<std::vector<double>> residualsOf(Groups groups);

// The value farthest from the mean, in standard deviations (Grubbs 1969, Technometrics 11:1).
// `pTwoSided` is 2n times the t tail, at most 1: a bound, exact where it is small.
struct StrayValue
{
    std::size_t index = 0;
    double value = 0;
    double g = 0;
    double pTwoSided = 1;
};

// Errors: TooFew under 3 values, NotEstimable "spread", Invalid "values".
[[nodiscard]] Result<StrayValue> grubbs(std::span<const double> values);
// The largest G that chance leaves at alpha. TooFew under 3 values, Invalid "alpha".
[[nodiscard]] Result<double> grubbsCritical(std::size_t n, double alpha, bool twoSided = true);

} // namespace plumule::stats
