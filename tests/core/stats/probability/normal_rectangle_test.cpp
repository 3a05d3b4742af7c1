#include "core/stats/probability/normal_rectangle.h"

#include "core/stats/probability/distributions.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <numbers>
#include <random>

namespace plumule::stats {
namespace {

constexpr double kNoSide = std::numeric_limits<double>::infinity();

Correlation ofThree(double r12, double r13, double r23)
{
    return {3, {1, r12, r13, r12, 1, r23, r13, r23, 1}};
}

double outsideOf(const Correlation& correlation, const Box& box)
{
    const std::vector<double> loadings = nearestLoadings(correlation);
    return outsideOfProduct(loadings, box) - beyondProduct(correlation, loadings, box);
}

Box orthant(std::size_t size)
{
    return {std::vector<double>(size, 0), std::vector<double>(size, kNoSide)};
}

Box cube(std::size_t size, double half)
{
    return {std::vector<double>(size, -half), std::vector<double>(size, half)};
}

TEST(NormalRectangle, IsAProductWhereNothingIsCorrelated)
{
    const std::vector<double> none(4, 0.0);
    for (const double half : {0.5, 1.96, 4.0}) {
        const double inside = normalCdf(half) - normalCdf(-half);
        EXPECT_NEAR(outsideOfProduct(none, cube(4, half)), 1 - std::pow(inside, 4), 1e-12);
    }
}

TEST(NormalRectangle, KeepsItsDigitsFarOut)
{
    // Bonferroni's bound is met to first order far out in the tails.
    const std::vector<double> loadings(3, std::sqrt(0.5));
    const double bound = 3 * 2 * normalUpper(8);
    const double outside = outsideOfProduct(loadings, cube(3, 8));
    EXPECT_LT(outside, bound);
    EXPECT_GT(outside, 0.99 * bound);
}

// Equally correlated at 1/2: n + 1 alike variables, of which the first is the least (David 1953,
// Biometrika 40:458).
TEST(NormalRectangle, GivesTheOrthantOfEqualCorrelation)
{
    for (std::size_t size = 2; size <= 7; ++size) {
        const std::vector<double> loadings(size, std::sqrt(0.5));
        EXPECT_NEAR(outsideOfProduct(loadings, orthant(size)),
                    1 - 1 / (static_cast<double>(size) + 1), 1e-11)
            << size;
    }
}

// Sheppard 1899: 1/4 + asin ρ / 2π of a quadrant, 1/8 + Σ asin ρ / 4π of an octant. Seed 1899.
TEST(NormalRectangle, GivesTheOctantOfAnyCorrelation)
{
    std::mt19937 draw(1899);
    std::uniform_real_distribution<double> any(-1, 1);
    int tried = 0;
    while (tried < 40) {
        const double a = any(draw);
        const double b = any(draw);
        const double c = any(draw);
        if (1 + 2 * a * b * c - a * a - b * b - c * c < 0.02) {
            continue;
        }
        ++tried;
        const double octant =
            0.125 + (std::asin(a) + std::asin(b) + std::asin(c)) / (4 * std::numbers::pi);
        EXPECT_NEAR(outsideOf(ofThree(a, b, c), orthant(3)), 1 - octant, 2e-8)
            << a << ' ' << b << ' ' << c;
    }
}

TEST(NormalRectangle, DoesNotHangOnTheOrderOfTheVariables)
{
    const Box box{{-1, -2, -0.5}, {0.7, 1, 2}};
    const Box turned{{-0.5, -1, -2}, {2, 0.7, 1}};
    EXPECT_NEAR(outsideOf(ofThree(0.3, -0.4, 0.6), box), outsideOf(ofThree(-0.4, 0.6, 0.3), turned),
                1e-8);
}

TEST(NormalRectangle, LoadingsMakeTheirOwnCorrelationsAgain)
{
    const std::vector<double> known{0.9, 0.3, -0.5, 0.7};
    Correlation made{4, std::vector<double>(16, 1)};
    for (std::size_t i = 0; i < 4; ++i) {
        for (std::size_t j = 0; j < 4; ++j) {
            made.values[i * 4 + j] = i == j ? 1 : known[i] * known[j];
        }
    }
    const std::vector<double> found = nearestLoadings(made);
    EXPECT_TRUE(isProduct(made, found));
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(std::abs(found[i]), std::abs(known[i]), 1e-7);
    }
    EXPECT_NEAR(beyondProduct(made, found, cube(4, 2)), 0, 1e-9);
    EXPECT_FALSE(isProduct(ofThree(0.3, -0.4, 0.6), nearestLoadings(ofThree(0.3, -0.4, 0.6))));
}

} // namespace
} // namespace plumule::stats
