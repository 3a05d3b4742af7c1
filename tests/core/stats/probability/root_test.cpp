#include "core/stats/probability/root.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <random>

namespace plumule::stats {
namespace {

TEST(RisingRoot, IsFoundFromEitherSideAndFromFarAway)
{
    const auto cubed = [](double x) { return x * x * x - 2; };
    for (const double start : {-1e6, -3.0, 1.2, 1.26, 5.0, 1e6}) {
        for (const double step : {1e-6, 0.5, 100.0}) {
            EXPECT_NEAR(risingRoot(cubed, start, step).value(), std::cbrt(2.0), 1e-13)
                << start << ' ' << step;
        }
    }
}

TEST(RisingRoot, IsTheStartOrAStepWhereThatIsAlreadyIt)
{
    const auto line = [](double x) { return x - 3; };
    EXPECT_EQ(risingRoot(line, 3, 1).value(), 3);
    EXPECT_EQ(risingRoot(line, 2, 1).value(), 3);
    EXPECT_EQ(risingRoot(line, 4, 1).value(), 3);
}

// Seed 20260302: lines of any slope through any point have the root that algebra gives.
TEST(RisingRoot, AgreesWithAlgebraOnLines)
{
    std::mt19937 draw(20260302);
    std::uniform_real_distribution<double> exponent(-6, 6);
    std::uniform_real_distribution<double> place(-100, 100);
    for (int i = 0; i < 200; ++i) {
        const double slope = std::pow(10, exponent(draw));
        const double root = place(draw);
        const auto line = [&](double x) { return slope * (x - root); };
        EXPECT_NEAR(risingRoot(line, place(draw), 0.5).value(), root, 1e-12 * 100);
    }
}

TEST(RisingRoot, IsRefusedWhereNothingCrosses)
{
    const auto expectNone = [](const std::function<double(double)>& rising) {
        const auto found = risingRoot(rising, 0, 1);
        ASSERT_FALSE(found);
        EXPECT_EQ(found.error().kind, ErrorKind::NoConvergence);
        EXPECT_TRUE(found.error().is(ProbabilityReason::NoRoot));
    };
    expectNone([](double x) { return -std::exp(-std::abs(x)) - 1; });
    expectNone([](double) { return std::nan(""); });
    // Given up, as a search for a power does, before it comes to the root.
    expectNone([](double x) { return x > 10 ? std::nan("") : x - 20; });
}

TEST(RisingRoot, TakesAStepFunctionsEdge)
{
    const double found = risingRoot([](double x) { return x < 7.5 ? -1.0 : 1.0; }, 0, 1).value();
    EXPECT_NEAR(found, 7.5, 1e-9);
}

} // namespace
} // namespace plumule::stats
