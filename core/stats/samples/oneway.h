#pragma once

#include "core/stats/samples/samples.h"

#include <span>
#include <vector>

namespace plumule::stats {

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

} // namespace plumule::stats
