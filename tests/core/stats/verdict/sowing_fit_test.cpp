#include "core/stats/verdict/sowing_fit.h"

#include "tests/core/stats/verdict/sown_trays.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

using verdicts::sown;
using verdicts::withoutBlocks;

TEST(SowingFit, ComparesTraysOfOneSowing)
{
    const SowingFit fit(withoutBlocks(sown({{{10, 14}, {20, 26}}})), CellScale::Linear);
    EXPECT_EQ(fit.countOf(0), 2);
    EXPECT_EQ(fit.countOf(7), 0);
    EXPECT_EQ(fit.df(), 2);
    EXPECT_NEAR(fit.residualSs(), 26, 1e-12);
    const auto difference = fit.difference(1, 0).value();
    EXPECT_NEAR(difference.value, 11, 1e-12);
    EXPECT_NEAR(difference.relativeVariance, 1, 1e-12) << "1/2 + 1/2";
    EXPECT_NEAR(fit.difference(0, 1)->value, -11, 1e-12);
    EXPECT_FALSE(fit.difference(0, 7));
    // Welch's variance of trays: 8 and 18 of two trays each.
    EXPECT_NEAR(fit.ownVariance(0, 1)->variance, 13, 1e-12);
}

TEST(SowingFit, UsesItsBlocks)
{
    const SowingFit fit(sown({{{10, 14}, {20, 26}}}), CellScale::Linear);
    EXPECT_EQ(fit.df(), 1);
    EXPECT_NEAR(fit.residualSs(), 1, 1e-12);
    EXPECT_NEAR(fit.difference(1, 0)->value, 11, 1e-12);
    EXPECT_NEAR(fit.ownVariance(0, 1)->variance, 1, 1e-12) << "half of (12 − 10)²/2";
}

TEST(SowingFit, GivesItsMediaAsCellsOfAPart)
{
    auto trays = sown({{{10, 14}, {20, 26}}});
    for (SownTray& tray : trays) {
        tray.sowing = 41;
    }
    const auto cells = SowingFit(trays, CellScale::Linear).cells(3);
    ASSERT_EQ(cells.size(), 2U);
    EXPECT_EQ(cells[0].sowing, 41U);
    EXPECT_EQ(cells[0].part, 3U);
    EXPECT_EQ(cells[1].medium, 1U);
    EXPECT_EQ(cells[1].trays, 2);
    EXPECT_NEAR(cells[0].value, 12, 1e-12);
    EXPECT_NEAR(cells[1].value, 23, 1e-12);
}

// Yield per tray sown: 3 trays of which one failed against 2. The logs of the ratios are compared,
// each tray's part in its ratio is what varies.
TEST(SowingFit, OfRatiosComparesTheRatios)
{
    const SowingFit fit(sown({{{205, 0, 190}, {150, 130}}}), CellScale::LogOfRatio);
    const auto difference = fit.difference(0, 1).value();
    EXPECT_NEAR(difference.value, std::log(395.0 / 3 / 140), 1e-12);
    EXPECT_NEAR(difference.relativeVariance, 1.0 / 3 + 1.0 / 2, 1e-12);
    EXPECT_EQ(fit.df(), 2 + 1);
    const double mean = 395.0 / 3;
    const double ss =
        std::pow(205 / mean - 1, 2) + 1 + std::pow(190 / mean - 1, 2) + 2 * std::pow(10.0 / 140, 2);
    EXPECT_NEAR(fit.residualSs(), ss, 1e-12);
    EXPECT_FALSE(fit.ownVariance(0, 1));
}

TEST(SowingFit, OfNothingTellsNothing)
{
    const SowingFit fit({}, CellScale::Log);
    EXPECT_EQ(fit.countOf(0), 0);
    EXPECT_FALSE(fit.difference(0, 1));
    EXPECT_TRUE(fit.cells(0).empty());
}

} // namespace
} // namespace plumule::stats
