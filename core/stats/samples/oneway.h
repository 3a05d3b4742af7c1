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

// Errors: TooFew (fewer than two groups, an empty one, no degree of freedom within groups),
// NotEstimable (all values of every group alike), Invalid (not finite).
[[nodiscard]] Result<OneWayAnova> oneWayAnova(Groups groups);

// An F test whose second degrees of freedom may be fractional.
struct VarianceRatio
{
    double f = 0;
    double df1 = 0;
    double df2 = 0;
    double p = 1;
};

// Welch 1951, Biometrika 38:330, for unlike spreads. Errors as oneWayAnova; also TooFew when a
// group has a single value, NotEstimable when one group has no spread.
[[nodiscard]] Result<VarianceRatio> welchAnova(Groups groups);

} // namespace plumule::stats
