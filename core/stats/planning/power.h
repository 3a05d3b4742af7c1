#pragma once

#include "core/base/result.h"
#include "core/stats/planning/power_reason.h"

#include <span>

// Power of t and F designs, by the noncentral distributions. Counts may be fractional, so that
// exact counts can be sought; a grower rounds up. Errors: Invalid with the reason that names the
// argument at fault, TooFew when no degree of freedom is left (TooFewEach), NoConvergence when a
// wanted power is out of reach (OutOfReach).
namespace plumule::stats {

// Two media: two-sided, both tails counted, n trays each.
struct TPlan
{
    double sd = 1;
    double alpha = 0.05;
};

[[nodiscard]] Result<double> tPower(const TPlan& plan, double n, double difference);
// The exact count for that power, and the next whole one that reaches it (at least 2).
[[nodiscard]] Result<double> tCountFor(const TPlan& plan, double difference, double power);
[[nodiscard]] Result<int> tWholeCountFor(const TPlan& plan, double difference, double power);
[[nodiscard]] Result<double> tSmallestDifference(const TPlan& plan, double n, double power);

// For an estimate with degrees of freedom of its own, as a difference in blocks has: the two-sided
// power at a shift counted in its standard errors, and the shift that is seen with that power.
// TooFewEach under one degree of freedom.
[[nodiscard]] Result<double> tPowerOfShift(double shift, double df, double alpha);
[[nodiscard]] Result<double> tShiftFor(double power, double df, double alpha);

enum class FDesign
{
    CompletelyRandom,
    RandomizedBlocks, // one tray of each group in every block; n is then the number of blocks
};

struct FPlan
{
    int groups = 2;
    double sd = 1;
    double alpha = 0.05;
    FDesign design = FDesign::CompletelyRandom;
};

// Spread given as the variance of the group means with divisor groups - 1.
[[nodiscard]] Result<double> fPowerForVariance(const FPlan& plan, double n, double variance);
[[nodiscard]] Result<double> fCountForVariance(const FPlan& plan, double variance, double power);
[[nodiscard]] Result<int> fWholeCountForVariance(const FPlan& plan, double variance, double power);
// The same for two groups `difference` apart with all others half way between them.
[[nodiscard]] double varianceOfExtremes(int groups, double difference);
[[nodiscard]] Result<double> fSmallestDifference(const FPlan& plan, double n, double power);

} // namespace plumule::stats
