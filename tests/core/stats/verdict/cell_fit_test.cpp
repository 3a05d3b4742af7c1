#include "core/journal/medium/medium_entries.h"
#include "core/stats/verdict/cell_fit.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace plumule::stats {
namespace {

// Values by sowing and medium; a sowing is a part of its own.
std::vector<Cell> grid(const std::vector<std::vector<std::optional<double>>>& values)
{
    std::vector<Cell> cells;
    for (std::size_t sowing = 0; sowing < values.size(); ++sowing) {
        for (std::size_t medium = 0; medium < values[sowing].size(); ++medium) {
            if (values[sowing][medium]) {
                cells.push_back({sowing, sowing, medium, *values[sowing][medium], 2});
            }
        }
    }
    return cells;
}

// A two-way table by hand: rows 1 2 6 / 3 4 5 / 2 6 7.
TEST(CellFit, OfABalancedTableIsItsMargins)
{
    const CellFit fit(grid({{1, 2, 6}, {3, 4, 5}, {2, 6, 7}}));
    EXPECT_EQ(fit.sowings(), 3);
    EXPECT_EQ(fit.media(), (std::vector<std::size_t>{0, 1, 2}));
    EXPECT_EQ(fit.df(), 4);
    EXPECT_NEAR(*fit.difference(1, 0), 2, 1e-12);
    EXPECT_NEAR(*fit.difference(2, 0), 4, 1e-12);
    EXPECT_NEAR(*fit.difference(0, 2), -4, 1e-12);
    EXPECT_NEAR(*fit.mean(0), 2, 1e-12);
    EXPECT_NEAR(*fit.mean(2), 6, 1e-12);
    EXPECT_NEAR(fit.relativeVariance(0, 1), 2.0 / 3, 1e-12);
    // Whole 36, sowings 6, media 24: 6 is left over four degrees of freedom.
    EXPECT_NEAR(fit.residualSs(), 6, 1e-12);
    EXPECT_NEAR(*fit.variance(), 1.5, 1e-12);
    EXPECT_EQ(fit.sharedDifferences(2, 1), (std::vector<double>{4, 1, 1}));
}

TEST(CellFit, LeavesASowingOfOneMediumOut)
{
    const CellFit with(grid({{1, 2}, {3, 5}, {std::nullopt, 999}}));
    const CellFit without(grid({{1, 2}, {3, 5}}));
    EXPECT_EQ(with.sowings(), 2);
    EXPECT_EQ(with.difference(1, 0), without.difference(1, 0));
    EXPECT_EQ(with.residualSs(), without.residualSs());
    const CellFit none(grid({{4}, {5}}));
    EXPECT_EQ(none.sowings(), 0);
    EXPECT_FALSE(none.variance());
    EXPECT_FALSE(none.holds(0));
    EXPECT_FALSE(none.mean(0));
    EXPECT_TRUE(none.sharedDifferences(0, 1).empty());
}

// Media 0 and 2 never grew together: medium 1 links them, and both links count.
TEST(CellFit, ComparesAlongAChain)
{
    const CellFit fit(grid({{10, 13, std::nullopt}, {std::nullopt, 20, 25}}));
    EXPECT_NEAR(*fit.difference(2, 0), 3 + 5, 1e-12);
    EXPECT_NEAR(fit.relativeVariance(2, 0), 4, 1e-12);
    EXPECT_TRUE(fit.sharedDifferences(2, 0).empty());
    EXPECT_EQ(fit.df(), 0);
    EXPECT_FALSE(fit.variance());
}

TEST(CellFit, TellsNothingAcrossPartsThatNothingLinks)
{
    const CellFit fit(grid({{10, 13},
                            {20, 21},
                            {std::nullopt, std::nullopt, 5, 9},
                            {std::nullopt, std::nullopt, 6, 8}}));
    EXPECT_FALSE(fit.difference(0, 2));
    EXPECT_FALSE(fit.difference(0, 8));
    EXPECT_NEAR(*fit.difference(3, 2), 3, 1e-12);
    EXPECT_EQ(fit.df(), 2) << "a degree of freedom within each part";
    EXPECT_NEAR(*fit.mean(0), 15, 1e-12);
    EXPECT_NEAR(*fit.mean(2), 5.5, 1e-12);
}

// Seed 64: differences are transitive, and neither the sowings' levels nor the numbers that media
// are named by change anything.
TEST(CellFit, HangsOnTheDifferencesAlone)
{
    std::mt19937 draw(64);
    std::normal_distribution<double> noise(0, 2);
    for (int round = 0; round < 60; ++round) {
        std::vector<std::vector<std::optional<double>>> values(5);
        for (auto& sowing : values) {
            for (int medium = 0; medium < 4; ++medium) {
                sowing.push_back(draw() % 4 == 0 ? std::nullopt : std::optional(noise(draw)));
            }
        }
        std::vector<Cell> cells = grid(values);
        std::vector<Cell> moved = cells;
        for (Cell& cell : moved) {
            cell.value += 100.0 * static_cast<double>(cell.sowing);
            cell.medium = 30 - 3 * cell.medium;
        }
        const CellFit fit(cells);
        const CellFit again(moved);
        EXPECT_EQ(fit.df(), again.df());
        EXPECT_NEAR(fit.residualSs(), again.residualSs(), 1e-8);
        for (std::size_t a = 0; a < 4; ++a) {
            for (std::size_t b = 0; b < 4; ++b) {
                const auto difference = fit.difference(a, b);
                const auto other = again.difference(30 - 3 * a, 30 - 3 * b);
                ASSERT_EQ(difference.has_value(), other.has_value());
                if (!difference) {
                    continue;
                }
                EXPECT_NEAR(*difference, *other, 1e-9);
                EXPECT_NEAR(fit.relativeVariance(a, b),
                            again.relativeVariance(30 - 3 * a, 30 - 3 * b), 1e-9);
                const auto through = fit.difference(b, 3);
                EXPECT_TRUE(!through ||
                            std::abs(*fit.difference(a, 3) - *difference - *through) < 1e-9);
            }
        }
    }
}

} // namespace
} // namespace plumule::stats
