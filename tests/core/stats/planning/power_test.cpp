#include "core/stats/planning/power.h"

#include "core/stats/probability/distributions.h"
#include "tests/core/stats/reference/reference_cases.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule::stats;
using plumule::ErrorKind;

// Trays per medium for a wanted difference, two media, two-sided 5 %: computed table.
TEST(Power, AgreesWithTheTableOfReplicates)
{
    const reference::Table table("handbook/replicates_needed_computed.csv");
    const auto cv = table.numbers("cv_pct");
    const auto difference = table.numbers("true_difference_pct");
    const auto at80 = table.numbers("trays_per_medium_power80");
    const auto at90 = table.numbers("trays_per_medium_power90");
    ASSERT_GT(table.rows(), 25U);
    for (std::size_t row = 0; row < table.rows(); ++row) {
        TPlan plan;
        plan.sd = cv[row];
        EXPECT_EQ(tWholeCountFor(plan, difference[row], 0.8).value(), at80[row]) << row;
        EXPECT_EQ(tWholeCountFor(plan, difference[row], 0.9).value(), at90[row]) << row;
    }
}

// t(.975, 2(n-1)) * CV * sqrt(2/n), in percent of the mean: computed table.
TEST(Power, AgreesWithTheTableOfLeastDifferences)
{
    const reference::Table table("handbook/lsd_pct_by_reps_computed.csv");
    const auto n = table.numbers("trays_per_medium");
    const auto cv = table.numbers("cv_pct");
    const auto least = table.numbers("LSD5_as_pct_of_mean_2_media");
    ASSERT_GT(table.rows(), 25U);
    for (std::size_t row = 0; row < table.rows(); ++row) {
        EXPECT_NEAR(tQuantile(0.975, 2 * (n[row] - 1)) * cv[row] * std::sqrt(2 / n[row]),
                    least[row], 0.051)
            << row;
    }
}

TEST(Power, FallsToTheLevelWithoutADifference)
{
    EXPECT_NEAR(tPower(TPlan{}, 6, 0).value(), 0.05, 1e-12);
    EXPECT_NEAR(fPowerForVariance(FPlan{4, 1, 0.05, FDesign::CompletelyRandom}, 5, 0).value(), 0.05,
                1e-12);
}

TEST(Power, IsTheSameForTwoGroupsByTAndByF)
{
    TPlan t;
    t.sd = 3;
    const FPlan f{2, 3, 0.05, FDesign::CompletelyRandom};
    EXPECT_NEAR(tPower(t, 7, 4).value(), fPowerForVariance(f, 7, varianceOfExtremes(2, 4)).value(),
                1e-11);
    EXPECT_NEAR(tSmallestDifference(t, 7, 0.8).value(), fSmallestDifference(f, 7, 0.8).value(),
                1e-9);
}

TEST(Power, OfPairsAndOfBlocksOfTwoAgree)
{
    // Blocks of two trays are pairs; the sd of a difference is sqrt(2) times a tray's.
    const double shift = 3 / (2 * std::sqrt(2.0) / std::sqrt(6.0));
    const FPlan blocks{2, 2, 0.05, FDesign::RandomizedBlocks};
    EXPECT_NEAR(tPowerOfShift(shift, 5, 0.05).value(),
                fPowerForVariance(blocks, 6, varianceOfExtremes(2, 3)).value(), 1e-11);
}

TEST(Power, ReachesWhatWasAskedAtTheCountItGives)
{
    const TPlan plan;
    for (const double difference : {0.5, 1.3, 4.0}) {
        const double exact = tCountFor(plan, difference, 0.8).value();
        EXPECT_NEAR(tPower(plan, exact, difference).value(), 0.8, 1e-9);
        const int whole = tWholeCountFor(plan, difference, 0.8).value();
        EXPECT_GE(tPower(plan, whole, difference).value(), 0.8);
        EXPECT_TRUE(whole == 2 || tPower(plan, whole - 1, difference).value() < 0.8);
        const double least = tSmallestDifference(plan, whole, 0.8).value();
        EXPECT_LE(least, difference * (1 + 1e-9));
    }
}

TEST(Power, FindsBlocksForAWantedPower)
{
    const FPlan plan{4, 12, 0.05, FDesign::RandomizedBlocks};
    const double variance = varianceOfExtremes(4, 20);
    const int blocks = fWholeCountForVariance(plan, variance, 0.8).value();
    EXPECT_GE(fPowerForVariance(plan, blocks, variance).value(), 0.8);
    EXPECT_LT(fPowerForVariance(plan, blocks - 1, variance).value(), 0.8);
    EXPECT_NEAR(
        fSmallestDifference(plan, fCountForVariance(plan, variance, 0.8).value(), 0.8).value(), 20,
        1e-7);
}

TEST(Power, HoldsForManyTraysAndTinyDifferences)
{
    TPlan plan;
    const double n = tCountFor(plan, 0.01, 0.9).value();
    // The normal approximation 2 (z + z)^2 / d^2 is close for so many.
    const double z = normalQuantile(0.975) + normalQuantile(0.9);
    EXPECT_NEAR(n, 2 * z * z / 1e-4, 2);
}

TEST(Power, TakesTwoTraysForADifferenceThatCannotBeMissed)
{
    EXPECT_EQ(tWholeCountFor(TPlan{}, 1e9, 0.8).value(), 2);
    EXPECT_EQ(
        fWholeCountForVariance(FPlan{3, 1, 0.05, FDesign::RandomizedBlocks}, 1e18, 0.8).value(), 2);
}

TEST(Power, RefusesQuestionsWithoutAnAnswer)
{
    TPlan plan;
    EXPECT_TRUE(tCountFor(plan, 0, 0.8).error().is(PowerReason::Difference));
    EXPECT_TRUE(tCountFor(plan, 1, 1).error().is(PowerReason::Power));
    EXPECT_TRUE(tCountFor(plan, 1, 0.05).error().is(PowerReason::Power));
    EXPECT_EQ(tCountFor(plan, 1e-9, 0.8).error().kind, ErrorKind::NoConvergence);
    EXPECT_EQ(tPower(plan, 1, 1).error().kind, ErrorKind::TooFew);
    plan.sd = 0;
    EXPECT_TRUE(tPower(plan, 5, 1).error().is(PowerReason::Spread));
    plan.sd = 1;
    plan.alpha = 1;
    EXPECT_TRUE(tPower(plan, 5, 1).error().is(PowerReason::Risk));
    EXPECT_TRUE(fPowerForVariance(FPlan{1, 1, 0.05, FDesign::CompletelyRandom}, 5, 1)
                    .error()
                    .is(PowerReason::OneGroup));
    EXPECT_TRUE(fPowerForVariance(FPlan{}, 5, -1).error().is(PowerReason::Difference));
    EXPECT_TRUE(fCountForVariance(FPlan{}, 0, 0.8).error().is(PowerReason::Difference));
    EXPECT_EQ(fSmallestDifference(FPlan{}, 1, 0.8).error().kind, ErrorKind::TooFew);
}

TEST(Power, OfAShiftIsThatOfTheTTestWithItsDegreesOfFreedom)
{
    TPlan plan;
    plan.sd = 16;
    for (const int n : {2, 4, 6, 20}) {
        const double shift = 30 / (16 * std::sqrt(2.0 / n));
        const double power = tPowerOfShift(shift, 2 * (n - 1), 0.05).value();
        EXPECT_NEAR(power, tPower(plan, n, 30).value(), 1e-12);
        EXPECT_NEAR(tShiftFor(power, 2 * (n - 1), 0.05).value(), shift, 1e-6);
    }
    EXPECT_EQ(tPowerOfShift(2, 0.5, 0.05).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(tShiftFor(0.8, 0, 0.05).error().kind, ErrorKind::TooFew);
    EXPECT_TRUE(tShiftFor(1, 6, 0.05).error().is(PowerReason::Power));
    EXPECT_TRUE(tPowerOfShift(2, 6, 1).error().is(PowerReason::Risk));
}
