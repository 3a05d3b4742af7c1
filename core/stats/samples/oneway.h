#pragma once

#include "core/stats/samples/samples.h"

#include <span>
#include <vector>

namespace plumule::stats {

// One-way analysis of variance with effect sizes: eta^2 = SSb / SSt; omega^2 = (SSb - dfb MSw) /
// (SSt + MSw); epsilon^2 = (SSb - dfb MSw) / SSt; Cohen's f = sqrt(eta^2 / (1 - eta^2)).
struct OneWayAnova
{
    double ssBetween = 0;
    double ssWithin = 0;
    double dfBetween = 0;
    double dfWithin = 0;
    double msBetween = 0;
    double msWithin = 0;
    double f = 0;
    double p = 1;
    double residualSd = 0;
    double eta2 = 0; // R^2
    double omega2 = 0;
    double epsilon2 = 0;
    double cohensF = 0;
};

// Errors: TooFew "groups" (fewer than two, or an empty one), TooFew "values" (no degree of freedom
// within groups), NotEstimable "spread" (all values of every group alike), Invalid "values".
[[nodiscard]] Result<OneWayAnova> oneWayAnova(Groups groups);

// An F test whose second degrees of freedom may be fractional.
struct VarianceRatio
{
    double f = 0;
    double df1 = 0;
    double df2 = 0;
    double p = 1;
};

// Welch 1951, Biometrika 38:330, for unlike spreads. Errors as oneWayAnova; also TooFew "values"
// when a group has a single value, NotEstimable "spread" when one group has no spread.
[[nodiscard]] Result<VarianceRatio> welchAnova(Groups groups);

// An estimate with its t test and the interval at the level asked for.
struct TEstimate
{
    double estimate = 0;
    double se = 0;
    double t = 0;
    double df = 0;
    double p = 1; // two-sided
    double lower = 0;
    double upper = 0;
};

// From estimate, se and df (may be infinite). NotEstimable "spread" when se is 0, Invalid "level"
// outside 0 to 1.
[[nodiscard]] Result<TEstimate> tEstimate(double estimate, double se, double df,
                                          double level = 0.95);

// Sum of weight * group mean on the pooled spread; weights must sum to zero (Invalid "weights").
// Errors otherwise as oneWayAnova.
[[nodiscard]] Result<TEstimate> oneWayContrast(Groups groups, std::span<const double> weights,
                                               double level = 0.95);

// A group's mean over the control's, on the pooled spread.
struct RatioToControl
{
    std::size_t group = 0;
    double ratio = 0;
    // Fieller 1954, JRSS B 16:175; missing where the control's mean is not clearly off zero.
    std::optional<double> lower;
    std::optional<double> upper;
    // Ratio of geometric means, by the t test on logarithms; missing unless all values are above 0.
    std::optional<TEstimate> geometric;
};

// One for every group but the control. Errors as oneWayAnova; Invalid "control" out of range, and
// NotEstimable "control" when its mean is 0.
[[nodiscard]] Result<std::vector<RatioToControl>>
ratiosToControl(Groups groups, std::size_t control, double level = 0.95);

} // namespace plumule::stats
