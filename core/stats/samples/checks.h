#pragma once

#include "core/stats/samples/oneway.h"

#include <optional>

// Checks of what the tests take for granted: like spreads, normal residuals, no stray value.
namespace plumule::stats {

// Brown and Forsythe 1974, JASA 69:364: analysis of variance of the absolute deviations from the
// group medians. Errors as oneWayAnova; NotEstimable when the deviations of every group
// are all alike.
[[nodiscard]] Result<VarianceRatio> brownForsythe(Groups groups);

struct Normality
{
    double w = 0;
    double p = 1;
};

// Shapiro-Wilk by Royston 1995, Appl. Stat. 44:547 (AS R94), for 3 to 5000 values. Errors: TooFew
// under 3, Invalid above 5000 or when one is not finite, NotEstimable when all are alike.
[[nodiscard]] Result<Normality> shapiroWilk(std::span<const double> values);

// The value farthest from the mean, in standard deviations (Grubbs 1969, Technometrics 11:1).
// `pTwoSided` is 2n times the t tail, at most 1: a bound, exact where it is small.
struct StrayValue
{
    std::size_t index = 0;
    double value = 0;
    double g = 0;
    double pTwoSided = 1;
};

// Errors: TooFew under 3 values, NotEstimable without spread, Invalid when one is not finite.
[[nodiscard]] Result<StrayValue> grubbs(std::span<const double> values);
} // namespace plumule::stats
