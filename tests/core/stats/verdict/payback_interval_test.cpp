#include "core/stats/verdict/payback_interval.h"

#include "core/stats/probability/distributions.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

constexpr double kReusable[] = {210, 190, 200};
constexpr double kSingle[] = {195, 200, 205};

TEST(PaybackInterval, IsTheDeltaMethodOnTheRatioOfGrams)
{
    const PaybackInterval interval = paybackIntervalOf({18, 0.2, 0.9, kReusable, kSingle});
    // Means 200 and 200, variances 100 and 25, of three each.
    EXPECT_NEAR(interval.uses.value(), 18 / 0.7, 1e-9);
    const double half = tQuantile(0.975, 4) * std::sqrt(100 / (3 * 40000.0) + 25 / (3 * 40000.0));
    EXPECT_NEAR(interval.lower.value(), 18 / (0.9 * std::exp(half) - 0.2), 1e-9);
    EXPECT_NEAR(interval.upper.value(), 18 / (0.9 * std::exp(-half) - 0.2), 1e-9);
}

TEST(PaybackInterval, IsNeverWhereAWashingCostsAllThatIsSaved)
{
    const PaybackInterval never = paybackIntervalOf({18, 1.5, 0.9, kReusable, kSingle});
    EXPECT_FALSE(never.uses.has_value());
    EXPECT_FALSE(never.lower.has_value());
    const PaybackInterval perhaps = paybackIntervalOf({18, 0.88, 0.9, kReusable, kSingle});
    EXPECT_TRUE(perhaps.uses.has_value());
    EXPECT_TRUE(perhaps.lower.has_value());
    EXPECT_FALSE(perhaps.upper.has_value());
}

TEST(PaybackInterval, HasNoBandUnderThreeTrays)
{
    const double two[] = {210, 190};
    const PaybackInterval interval = paybackIntervalOf({18, 0.2, 0.9, two, kSingle});
    EXPECT_TRUE(interval.uses.has_value());
    EXPECT_FALSE(interval.hasBand);
    EXPECT_FALSE(paybackIntervalOf({18, 0.2, 0.9, {}, kSingle}).uses.has_value());
}

} // namespace
} // namespace plumule::stats
