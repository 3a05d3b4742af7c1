#include "core/stats/prediction/nested_prediction.h"

#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

TEST(NestedPrediction, TakesGroupsForReplicates)
{
    // One group of many values weighs no more than one of two.
    const auto next = predictNested({{1, 1, 1, 1, 1, 1}, {4, 4}}, {1, 1});
    EXPECT_DOUBLE_EQ(next.mean, 2.5);
}

// By hand: groups {1, 3} and {5, 7}, expected variances 2 between and 1 within, each worth 4
// degrees of freedom. Within: (2 + 2 + 4·1) / (2 + 4) = 8/6. Of the means 2 and 6:
// (8 + 4·(2 + (8/6)/2)) / (1 + 4) = 56/15; of their mean a half of that.
TEST(NestedPrediction, DrawsBothVariancesToWhatIsExpected)
{
    const auto next = predictNested({{1, 3}, {5, 7}}, {2, 1});
    EXPECT_DOUBLE_EQ(next.mean, 4);
    EXPECT_NEAR(next.valueVariance, 8.0 / 6, 1e-12);
    EXPECT_NEAR(next.meanVariance, 56.0 / 30, 1e-12);
    EXPECT_NEAR(next.groupVariance, 56.0 / 15 - 4.0 / 6, 1e-12);
    const double byMeans = 56.0 / 30 + 56.0 / 15 - 4.0 / 6;
    const double byValues = 8.0 / 6;
    EXPECT_NEAR(next.degreesOfFreedom,
                (byMeans + byValues) * (byMeans + byValues) /
                    (byMeans * byMeans / 5 + byValues * byValues / 6),
                1e-9);
}

TEST(NestedPrediction, OneGroupIsEnoughAndRestsOnWhatIsExpected)
{
    const auto next = predictNested({{5, 5, 5}}, {2, 1});
    EXPECT_DOUBLE_EQ(next.mean, 5);
    EXPECT_NEAR(next.valueVariance, 4.0 / 6, 1e-12);
    EXPECT_NEAR(next.groupVariance, 2, 1e-12);
}

TEST(NestedPrediction, WidensEveryVarianceByTheSquare)
{
    const auto next = predictNested({{1, 3}, {5, 7}}, {2, 1});
    const auto wide = next.widened(1.5);
    EXPECT_DOUBLE_EQ(wide.mean, next.mean);
    EXPECT_NEAR(wide.variance(), 2.25 * next.variance(), 1e-12);
    EXPECT_DOUBLE_EQ(wide.degreesOfFreedom, next.degreesOfFreedom);
}

TEST(NestedPrediction, PoolsSamplesAroundTheirOwnMeans)
{
    // Means of 2 and 100 don't count as spread; nothing lies apart but what is expected.
    const auto pooled = pooledVariances({nestedSquaresOf(NestedValues{{2, 2}, {2, 2}}),
                                         nestedSquaresOf(NestedValues{{100, 100}, {100, 100}})},
                                        NestedVariances{6, 4});
    EXPECT_NEAR(pooled.value, 4 * 4.0 / (4 + 4), 1e-12);
    EXPECT_NEAR(pooled.group, 4 * 6.0 / (2 + 4), 1e-12);
}

TEST(NestedPrediction, PoolsNothingToWhatIsExpected)
{
    const auto pooled = pooledVariances({}, NestedVariances{6, 4});
    EXPECT_DOUBLE_EQ(pooled.group, 6);
    EXPECT_DOUBLE_EQ(pooled.value, 4);
}

} // namespace
} // namespace plumule::stats
