#include "core/stats/verdict/own_variance.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

MediaDesign plain(const std::vector<double>& ofA, const std::vector<double>& ofB)
{
    std::vector<DesignRow> rows;
    for (const double value : ofA) {
        rows.push_back({0, 0, 0, value});
    }
    for (const double value : ofB) {
        rows.push_back({1, 0, 0, value});
    }
    return MediaDesign(std::move(rows));
}

// Blocks' differences 2, 4 and 6 have the variance 4, half of which is a tray's.
TEST(OwnVariance, OfBlocksIsHalfTheirDifferences)
{
    const MediaDesign design(
        {{0, 0, 1, 12}, {1, 0, 1, 10}, {0, 0, 2, 19}, {1, 0, 2, 15}, {0, 0, 3, 11}, {1, 0, 3, 5}});
    const OwnVariance own = ownVarianceOf(design, 0, 1).value();
    EXPECT_NEAR(own.variance, 2, 1e-12);
    EXPECT_EQ(own.df, 2);
}

// Two trays of each in a block: the block's difference of means varies by 1/2 + 1/2 of a tray.
TEST(OwnVariance, CountsTraysWithinABlockOnce)
{
    std::vector<DesignRow> rows;
    const double means[][2] = {{12, 10}, {19, 15}, {11, 5}};
    for (std::size_t block = 0; block < 3; ++block) {
        for (const double off : {-1.0, 1.0}) {
            rows.push_back({0, 0, block + 1, means[block][0] + off});
            rows.push_back({1, 0, block + 1, means[block][1] + off});
        }
    }
    const OwnVariance own = ownVarianceOf(MediaDesign(std::move(rows)), 0, 1).value();
    EXPECT_NEAR(own.variance, 4, 1e-12);
    EXPECT_EQ(own.df, 2);
}

// Welch 1947, Biometrika 34:28, by hand: variances 4 and 1 of three and of two trays: u = 4/3,
// v = 1/2, df = (11/6)² / ((4/3)²/2 + (1/2)²/1) = 2.95…
TEST(OwnVariance, WithoutBlocksHasWelchsDegrees)
{
    const OwnVariance own =
        ownVarianceOf(plain({8, 10, 12}, {5, 5 + std::sqrt(2.0)}), 0, 1).value();
    EXPECT_NEAR(own.variance, (4.0 / 3 + 0.5) / (1.0 / 3 + 0.5), 1e-12);
    EXPECT_NEAR(own.df, (11.0 / 6) * (11.0 / 6) / (16.0 / 9 / 2 + 0.25), 1e-12);
}

TEST(OwnVariance, IsZeroWhereNothingVaries)
{
    const OwnVariance own = ownVarianceOf(plain({7, 7}, {9, 9, 9}), 0, 1).value();
    EXPECT_EQ(own.variance, 0);
    EXPECT_EQ(own.df, 3);
}

TEST(OwnVariance, NeedsTwoTraysOfEachOrTwoBlocksInCommon)
{
    EXPECT_FALSE(ownVarianceOf(plain({7}, {9, 9, 9}), 0, 1));
    EXPECT_FALSE(ownVarianceOf(plain({7, 8}, {9, 9}), 0, 5)) << "it did not grow there";
    const MediaDesign apart({{0, 0, 1, 12}, {1, 0, 1, 10}, {0, 0, 2, 19}, {1, 0, 3, 5}});
    EXPECT_FALSE(ownVarianceOf(apart, 0, 1));
}

TEST(OwnVariance, IsPooledByDegreesOfFreedom)
{
    const OwnVariance both = pooled({{4, 2}, {1, 6}}).value();
    EXPECT_NEAR(both.variance, (4 * 2 + 1 * 6) / 8.0, 1e-15);
    EXPECT_EQ(both.df, 8);
    EXPECT_FALSE(pooled({}));
    EXPECT_FALSE(pooled({{0, 0}}));
}

} // namespace
} // namespace plumule::stats
