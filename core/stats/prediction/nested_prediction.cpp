#include "core/stats/prediction/nested_prediction.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace plumule::stats {
namespace {

double meanOf(const std::vector<double>& values)
{
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double squaresAround(const std::vector<double>& values, double mean)
{
    return std::accumulate(values.begin(), values.end(), 0.0, [&](double sum, double each) {
        return sum + (each - mean) * (each - mean);
    });
}

double drawn(double squares, double df, double expected)
{
    return (squares + kExpectedWeight * expected) / (df + kExpectedWeight);
}

} // namespace

NestedSquares nestedSquaresOf(const NestedValues& groups)
{
    NestedSquares squares;
    std::vector<double> means;
    double reciprocals = 0;
    for (const std::vector<double>& group : groups) {
        const auto size = static_cast<double>(group.size());
        means.push_back(meanOf(group));
        squares.within += squaresAround(group, means.back());
        squares.dfWithin += size - 1;
        reciprocals += 1 / size;
    }
    const auto count = static_cast<double>(groups.size());
    squares.mean = meanOf(means);
    squares.between = squaresAround(means, squares.mean);
    squares.dfBetween = count - 1;
    squares.perGroup = count / reciprocals;
    return squares;
}

NestedPrediction NestedPrediction::widened(double times) const
{
    NestedPrediction wide = *this;
    wide.meanVariance *= times * times;
    wide.groupVariance *= times * times;
    wide.valueVariance *= times * times;
    return wide;
}

NestedPrediction predictNested(const NestedValues& values, const NestedVariances& expected)
{
    const NestedSquares squares = nestedSquaresOf(values);
    const auto groups = static_cast<double>(values.size());
    NestedPrediction next;
    next.mean = squares.mean;
    next.valueVariance = drawn(squares.within, squares.dfWithin, expected.value);
    const double ofMeans = drawn(squares.between, squares.dfBetween,
                                 expected.group + next.valueVariance / squares.perGroup);
    next.meanVariance = ofMeans / groups;
    next.groupVariance = std::max(0.0, ofMeans - next.valueVariance / squares.perGroup);
    const double byMeans = next.meanVariance + next.groupVariance;
    const double byValues = next.valueVariance;
    next.degreesOfFreedom = std::pow(byMeans + byValues, 2) /
                            (byMeans * byMeans / (squares.dfBetween + kExpectedWeight) +
                             byValues * byValues / (squares.dfWithin + kExpectedWeight));
    return next;
}

NestedVariances pooledVariances(const std::vector<NestedSquares>& samples,
                                const NestedVariances& expected)
{
    double within = 0;
    double between = 0;
    double dfWithin = 0;
    double dfBetween = 0;
    double reciprocals = 0; // of the groups' sizes, a degree of freedom each
    for (const NestedSquares& squares : samples) {
        within += squares.within;
        between += squares.between;
        dfWithin += squares.dfWithin;
        dfBetween += squares.dfBetween;
        reciprocals += squares.dfBetween / squares.perGroup;
    }
    NestedVariances pooled;
    pooled.value = drawn(within, dfWithin, expected.value);
    const double ofGroups = std::max(0.0, between - pooled.value * reciprocals);
    pooled.group = drawn(ofGroups, dfBetween, expected.group);
    return pooled;
}

} // namespace plumule::stats
