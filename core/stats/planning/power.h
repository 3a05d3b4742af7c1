#pragma once

#include "core/base/result.h"

#include <span>

// Power of t and F designs, by the noncentral distributions. Counts may be fractional, so that
// exact counts can be sought; a grower rounds up. Errors: Invalid with the name of the argument at
// fault
// ("sd", "alpha", "power", "difference", "count"), TooFew "count" when no degree of freedom is
// left, NoConvergence when a wanted power is out of reach.
namespace plumule::stats {

enum class TDesign
{
    OneSample, // also paired: n pairs, sd of the differences
    TwoSamples,
};

// Strict counts both tails of the two-sided test, the honest power; Near only the tail on the side
// of the difference, as tables usually have it.
enum class Alternative
{
    TwoSidedStrict,
    TwoSidedNear,
    OneSided,
};

struct TPlan
{
    TDesign design = TDesign::TwoSamples;
    Alternative alternative = Alternative::TwoSidedStrict;
    double sd = 1;
    double alpha = 0.05;
};

// n is per group, or the number of pairs.
[[nodiscard]] Result<double> tPower(const TPlan& plan, double n, double difference);
[[nodiscard]] Result<double> tPowerUnequal(double n1, double n2, double difference, double sd,
                                           double alpha = 0.05);
// The exact count for that power, and the next whole one that reaches it (at least 2).
[[nodiscard]] Result<double> tCountFor(const TPlan& plan, double difference, double power);
[[nodiscard]] Result<int> tWholeCountFor(const TPlan& plan, double difference, double power);
[[nodiscard]] Result<double> tSmallestDifference(const TPlan& plan, double n, double power);

// For an estimate with degrees of freedom of its own, as a difference in blocks has: the two-sided
// power at a shift counted in its standard errors, and the shift that is seen with that power.
// TooFew "count" under one degree of freedom.
[[nodiscard]] Result<double> tPowerOfShift(double shift, double df, double alpha);
[[nodiscard]] Result<double> tShiftFor(double power, double df, double alpha);

struct FPlan
{
    int groups = 2;
    double sd = 1;
    double alpha = 0.05;
    // Randomized blocks: one tray of each group in every block; n is then the number of blocks.
    bool blocks = false;
};

// `effects` are the groups' means or shifts, one a group; only their spread about their mean
// counts.
[[nodiscard]] Result<double> fPower(const FPlan& plan, double n, std::span<const double> effects);
// Spread given as the variance of the group means with divisor groups - 1.
[[nodiscard]] Result<double> fPowerForVariance(const FPlan& plan, double n, double variance);
[[nodiscard]] Result<double> fCountForVariance(const FPlan& plan, double variance, double power);
[[nodiscard]] Result<int> fWholeCountForVariance(const FPlan& plan, double variance, double power);
// The same for two groups `difference` apart with all others half way between them.
[[nodiscard]] double varianceOfExtremes(int groups, double difference);
[[nodiscard]] Result<double> fSmallestDifference(const FPlan& plan, double n, double power);

} // namespace plumule::stats
