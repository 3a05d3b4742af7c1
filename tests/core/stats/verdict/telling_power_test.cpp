#include "core/stats/verdict/telling_power.h"

#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

// Four media in four blocks, tray CV 7 %, one medium 15 % better: by simulation of
// answerOfSowings() a pair is told apart in 34.8 of 100 trials (tests/calibration, 2,000 sets,
// ± 1.1).
TEST(TellingPower, IsWhatSimulatedTrialsGive)
{
    const double shift = 0.13976194 / (0.07 * 0.70710678);
    EXPECT_NEAR(tellingPower({4, 9, 3}, shift), 0.34, 0.03);
}

TEST(TellingPower, IsTheRiskSharedWhereThereIsNoDifference)
{
    EXPECT_LT(tellingPower({4, 9, 3}, 0), 0.02);
    EXPECT_EQ(tellingPower({4, 1, 0}, 5), 0) << "under two degrees of freedom no verdict";
    EXPECT_LT(tellingPower({4, 9, 3}, 2.8), tellingPower({4, 9, 0}, 2.8))
        << "a pair's own spread widens";
}

TEST(TellingPower, HasItsShift)
{
    const TellingPlan plan{3, 6, 3};
    EXPECT_NEAR(tellingPower(plan, tellingShift(plan, 0.8)), 0.8, 1e-9);
}

} // namespace
} // namespace plumule::stats
