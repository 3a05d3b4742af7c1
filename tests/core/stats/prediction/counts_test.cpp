#include "core/stats/prediction/counts.h"

#include <gtest/gtest.h>

#include <numeric>

namespace plumule::stats {
namespace {

// A beta(1, 1) chance makes every count as likely as another.
TEST(Counts, OfAnEvenChanceAreAllAlike)
{
    for (const double chance : chancesOfCounts(4, {0.5, 2})) {
        EXPECT_NEAR(chance, 0.2, 1e-12);
    }
}

TEST(Counts, SumToOneAndKeepTheMean)
{
    const auto chances = chancesOfCounts(30, {0.93, 34});
    double sum = 0;
    double mean = 0;
    for (std::size_t count = 0; count < chances.size(); ++count) {
        sum += chances[count];
        mean += static_cast<double>(count) * chances[count];
    }
    EXPECT_NEAR(sum, 1, 1e-12);
    EXPECT_NEAR(mean, 30 * 0.93, 1e-9);
}

TEST(Counts, OfNothingAreNothing)
{
    EXPECT_EQ(chancesOfCounts(0, {0.9, 10}).size(), 1U);
}

// 0.2⁶ + 6·0.8·0.2⁵ + 15·0.8²·0.2⁴ + 20·0.8³·0.2³ of six.
TEST(Counts, BinomialTailIsTheSum)
{
    EXPECT_NEAR(binomialAtMost(3, 6, 0.8), 0.09888, 1e-12);
    EXPECT_NEAR(binomialAtMost(0, 2, 0.8), 0.04, 1e-12);
    EXPECT_DOUBLE_EQ(binomialAtMost(6, 6, 0.8), 1);
}

TEST(Counts, BinomialTailRisesBetweenWholeNumbers)
{
    EXPECT_GT(binomialAtMost(3.5, 6, 0.8), binomialAtMost(3, 6, 0.8));
    EXPECT_LT(binomialAtMost(3.5, 6, 0.8), binomialAtMost(4, 6, 0.8));
}

} // namespace
} // namespace plumule::stats
