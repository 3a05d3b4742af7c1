#include "core/harvest/expected_range.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

std::vector<PastWeight> past(std::initializer_list<double> values)
{
    std::vector<PastWeight> weights;
    for (const double value : values) {
        PastWeight weight;
        weight.net = grams(value);
        weights.push_back(weight);
    }
    return weights;
}

ExpectedRange rangeOf(std::initializer_list<double> values)
{
    return rangeFrom(RangeSource::Variety, past(values));
}

TEST(ExpectedRange, SaysNothingUnderThreeWeights)
{
    EXPECT_FALSE(rangeOf({}).isKnown());
    const ExpectedRange two = rangeOf({280, 290});
    EXPECT_EQ(two.past.size(), 2U);
    EXPECT_FALSE(two.isKnown());
    EXPECT_TRUE(two.holds(grams(5000))) << "what is not known holds nothing against a weight";
    EXPECT_EQ(two.from, RangeSource::Variety);
}

// By hand: the logarithms of 110, 120 and 130 have the mean 4.785169 and s 0.0835513; t(0.975, 2) =
// 4.302653 (from memory), so 4.785169 ± 4.302653 · 0.0835513 · √(4/3) = 4.785169 ± 0.415103.
TEST(ExpectedRange, IsThePredictionIntervalOfOneMoreTray)
{
    const ExpectedRange range = rangeOf({110, 120, 130});
    EXPECT_NEAR(inGrams(*range.low), 79.0486, 0.001);
    EXPECT_NEAR(inGrams(*range.high), 181.3220, 0.001);
}

// PlantGrowth, control (R datasets; Dobson 1983): the logarithms have n 10, mean 1.609814, s
// 0.1153963; t(0.975, 9) = 2.262157, so 1.609814 ± 2.262157 · 0.1153963 · √1.1.
TEST(ExpectedRange, HoldsForThePublishedPlantWeights)
{
    const ExpectedRange range =
        rangeOf({4.17, 5.58, 5.18, 6.11, 4.50, 4.61, 5.17, 4.53, 5.33, 5.14});
    EXPECT_NEAR(inGrams(*range.low), 3.8039, 0.001);
    EXPECT_NEAR(inGrams(*range.high), 6.5771, 0.001);
}

TEST(ExpectedRange, IsNeverNarrowerThanATenthToEitherSide)
{
    const ExpectedRange range = rangeOf({250, 250, 250, 250});
    EXPECT_NEAR(inGrams(*range.low), 250 / 1.1, 0.001);
    EXPECT_NEAR(inGrams(*range.high), 250 * 1.1, 0.001);
}

TEST(ExpectedRange, IsNoneWhereTenTimesItsMiddleWouldPass)
{
    EXPECT_FALSE(rangeOf({10, 20, 30}).isKnown());
    EXPECT_TRUE(rangeOf({10, 20, 30, 12, 25, 20}).isKnown());
}

TEST(ExpectedRange, BySeedTheVarietiesCountNotTheTrays)
{
    // Grams by gram of seed 20, 22 and 24, of varieties 1 to 3; twice the first.
    std::vector<PastWeight> weights = past({200, 220, 240, 200});
    const std::int64_t varieties[] = {1, 2, 3, 1};
    for (std::size_t i = 0; i < weights.size(); ++i) {
        weights[i].variety = VarietyId{varieties[i]};
        weights[i].seed = grams(10);
    }
    const ExpectedRange range = rangeBySeed(weights, VarietyId{9}, grams(20));
    EXPECT_EQ(range.from, RangeSource::RoomBySeed);
    EXPECT_EQ(range.past.size(), 4U);
    // As of three weights of 200, 220 and 240, for twice their seed.
    const ExpectedRange three = rangeOf({200, 220, 240});
    EXPECT_NEAR(inGrams(*range.low), 2 * inGrams(*three.low), 0.001);
    EXPECT_NEAR(inGrams(*range.high), 2 * inGrams(*three.high), 0.001);
    EXPECT_FALSE(rangeBySeed(weights, VarietyId{1}, grams(20)).isKnown())
        << "two other varieties are too few";
    weights[2].seed.reset();
    EXPECT_FALSE(rangeBySeed(weights, VarietyId{9}, grams(20)).isKnown());
}

} // namespace
} // namespace plumule
