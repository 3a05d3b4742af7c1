#include "core/harvest/harvest.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

std::vector<Mass> yieldsOfGrams(std::initializer_list<double> values)
{
    std::vector<Mass> yields;
    for (const double value : values) {
        yields.push_back(grams(value));
    }
    return yields;
}

TEST(ExpectedRange, SaysNothingUnderThreeYields)
{
    EXPECT_EQ(expectedRange({}).trays, 0);
    const ExpectedRange two = expectedRange(yieldsOfGrams({280, 290}));
    EXPECT_EQ(two.trays, 2);
    EXPECT_FALSE(two.low);
    EXPECT_FALSE(two.high);
}

// By hand: mean 120, s 10, n 3; t(0.975, 2) = 4.302653 (from memory), so 120 ± 4.302653 · 10 ·
// √(4/3) = 120 ± 49.6828.
TEST(ExpectedRange, IsThePredictionIntervalOfOneMoreTray)
{
    const ExpectedRange range = expectedRange(yieldsOfGrams({110, 120, 130}));
    EXPECT_EQ(range.trays, 3);
    EXPECT_NEAR(inGrams(*range.low), 120 - 49.6828, 0.001);
    EXPECT_NEAR(inGrams(*range.high), 120 + 49.6828, 0.001);
}

// PlantGrowth, control (R datasets; Dobson 1983): n 10, mean 5.032, s 0.58309; t(0.975, 9) =
// 2.262157, so 5.032 ± 2.262157 · 0.58309 · √1.1 = 5.032 ± 1.38342.
TEST(ExpectedRange, HoldsForThePublishedPlantWeights)
{
    const ExpectedRange range =
        expectedRange(yieldsOfGrams({4.17, 5.58, 5.18, 6.11, 4.50, 4.61, 5.17, 4.53, 5.33, 5.14}));
    EXPECT_NEAR(inGrams(*range.low), 3.6486, 0.001);
    EXPECT_NEAR(inGrams(*range.high), 6.4154, 0.001);
}

TEST(ExpectedRange, NeverGoesBelowNothing)
{
    const ExpectedRange range = expectedRange(yieldsOfGrams({10, 20, 30}));
    EXPECT_EQ(*range.low, Mass{});
    EXPECT_GT(*range.high, grams(60));
}

TEST(ExpectedRange, IsAPointWhereAllYieldsAreAlike)
{
    const ExpectedRange range = expectedRange(yieldsOfGrams({250, 250, 250, 250}));
    EXPECT_EQ(*range.low, grams(250));
    EXPECT_EQ(*range.high, grams(250));
}

} // namespace
} // namespace plumule
