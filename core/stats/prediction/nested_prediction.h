#pragma once

#include <vector>

namespace plumule::stats {

// Values that share their group's luck: yields of the trays of each sowing. No group is empty.
using NestedValues = std::vector<std::vector<double>>;

// How far groups, and values within a group, lie apart.
struct NestedVariances
{
    double group = 0;
    double value = 0;
};

// What a sample tells of its variances: sums of squares within groups and of the groups' means.
struct NestedSquares
{
    double mean = 0; // of the groups' means
    double within = 0;
    double between = 0;
    double dfWithin = 0;
    double dfBetween = 0;
    double perGroup = 1; // harmonic mean of the groups' sizes
};
// At least one group.
[[nodiscard]] NestedSquares nestedSquaresOf(const NestedValues& values);

// The next value, of a group not seen yet: Student's t around the mean.
struct NestedPrediction
{
    double mean = 0;
    double meanVariance = 0;  // of the mean, as an estimate
    double groupVariance = 0; // between groups
    double valueVariance = 0; // within a group
    double degreesOfFreedom = 0;

    [[nodiscard]] double variance() const { return meanVariance + groupVariance + valueVariance; }
    // The same with every interval that many times as wide.
    [[nodiscard]] NestedPrediction widened(double times) const;
};

// What an expected variance weighs beside one that was measured, in degrees of freedom.
inline constexpr double kExpectedWeight = 4;

// Groups, not values, are the replicates: the mean is that of the groups' means. Both variances
// are the measured sums of squares drawn to the expected ones, which weigh kExpectedWeight degrees
// of freedom (a scaled inverse chi-square, as Smyth 2004 does for many small samples; from memory);
// the degrees of freedom of their sum are Satterthwaite's. One group is enough.
[[nodiscard]] NestedPrediction predictNested(const NestedValues& values,
                                             const NestedVariances& expected);

// The variances of many samples together, drawn to the expected ones in the same way; samples may
// have means of their own.
[[nodiscard]] NestedVariances pooledVariances(const std::vector<NestedSquares>& samples,
                                              const NestedVariances& expected);

} // namespace plumule::stats
