#pragma once

#include "core/review/comparison/comparison.h"

namespace plumule {

inline constexpr double kPlannedPower = 0.8;
inline constexpr double kDefaultMargin = 0.1; // of the grand mean
inline constexpr double kDefaultSpread = 0.1; // coefficient of variation

// What a verdict rests on.
struct VerdictGround
{
    bool isComparable = true;
    int nA = 0;
    int nB = 0;
    std::optional<double> lower; // of a − b, for all pairs together
    std::optional<double> upper;
    bool isWithinMargin = false; // by two one-sided tests
};
[[nodiscard]] PairVerdict verdictOf(const VerdictGround& ground);

// From the ask, else the smallest margin of the trays' trials (per tray, brought to the response's
// unit by the tray's area and the mean seed and days), else 10 % of the mean.
[[nodiscard]] Margin marginFor(const SeasonFacts& facts, const ComparedTrays& trays,
                               const ComparisonAsk& ask);

// A spread to plan by where the trays themselves give none: pooled over the room's trays of like
// medium, variety and trial (outside trials, month of sowing), each as a share of their mean, else
// 10 %; times the mean of `trays`.
[[nodiscard]] SpreadOfTrays spreadToPlanBy(const SeasonFacts& facts, const SeasonFilter& filter,
                                           const ComparisonAsk& ask, const ComparedTrays& trays);

// The alpha of one pair that stands for 0.05 of all pairs of that many media by Tukey's method.
[[nodiscard]] double pairAlpha(int media, std::optional<double> df);

// What tells two media apart by `difference` with power 0.8. None where no number of trays does it.
[[nodiscard]] std::optional<TraysNeeded> traysNeeded(const SpreadOfTrays& spread, double difference,
                                                     int nA, int nB, double alpha);
// With `n` trays of each, which may be a mean; none under 2.
[[nodiscard]] std::optional<double> smallestDifference(double sd, double n, double alpha);

} // namespace plumule
