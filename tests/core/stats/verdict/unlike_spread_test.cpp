#include "core/stats/verdict/unlike_spread.h"

#include "core/stats/probability/distributions.h"
#include "tests/core/stats/verdict/sown_trays.h"

#include <gtest/gtest.h>
#include <random>

namespace plumule::stats {
namespace {

CellFit fitOf(const std::vector<std::vector<double>>& values)
{
    std::vector<Cell> cells;
    for (std::size_t sowing = 0; sowing < values.size(); ++sowing) {
        for (std::size_t medium = 0; medium < values[sowing].size(); ++medium) {
            cells.push_back({sowing, sowing, medium, values[sowing][medium], 2});
        }
    }
    return CellFit(cells);
}

// Differences of media 0 and 1: −1, −1, −4: variance 3.
TEST(PairVariance, IsHalfThatOfTheSharedDifferences)
{
    const CellFit fit = fitOf({{1, 2, 6}, {3, 4, 5}, {2, 6, 7}});
    EXPECT_NEAR(*pairVariance(fit, 0, 1), 1.5, 1e-12);
    EXPECT_NEAR(*pairVariance(fit, 1, 0), 1.5, 1e-12);
    EXPECT_FALSE(pairVariance(fitOf({{1, 2}}), 0, 1)) << "one sowing has no spread";
}

TEST(UnlikeSpread, IsNotAskedOfTwoMedia)
{
    const UnlikeSpread spread = unlikeSpreadOf(fitOf({{1, 2}, {3, 40}, {5, 6}}), {});
    EXPECT_FALSE(spread.isUnlike);
    EXPECT_FALSE(spread.largestToSmallest);
    EXPECT_FALSE(spread.limit);
}

// Three pairs that grew together in n sowings: the limit is F(1 − 0.10/3; n − 1, n − 1).
TEST(UnlikeSpread, IsTheRatioBeyondItsLimit)
{
    const std::vector<std::vector<double>> alike{{1, 2, 6}, {3, 4, 5}, {2, 6, 7}, {4, 4, 9}};
    const UnlikeSpread calm = unlikeSpreadOf(fitOf(alike), {});
    EXPECT_NEAR(*calm.limit, fQuantile(1 - 0.10 / 3, 3, 3), 1e-12);
    EXPECT_LT(*calm.largestToSmallest, *calm.limit);
    EXPECT_FALSE(calm.isUnlike);

    // Media 0 and 1 move together to a hundredth, medium 2 jumps.
    const UnlikeSpread wild =
        unlikeSpreadOf(fitOf({{1, 1.01, 9}, {3, 3.02, -8}, {2, 2, 30}, {4, 4.01, 1}}), {});
    EXPECT_GT(*wild.largestToSmallest, *wild.limit);
    EXPECT_TRUE(wild.isUnlike);
}

TEST(UnlikeSpread, HasNoRatioOverNothing)
{
    // Media 0 and 1 differ by exactly 1 in every sowing: any spread elsewhere is more than that.
    const UnlikeSpread spread = unlikeSpreadOf(fitOf({{1, 2, 6}, {3, 4, 5}, {5, 6, 9}}), {});
    EXPECT_FALSE(spread.largestToSmallest);
    EXPECT_TRUE(spread.isUnlike);
}

TEST(UnlikeSpread, LooksAtPairsOfThreeSowingsOnly)
{
    const UnlikeSpread two = unlikeSpreadOf(fitOf({{1, 2, 60}, {3, 40, 5}}), {});
    EXPECT_FALSE(two.limit);
    EXPECT_FALSE(two.isUnlike);
}

// Seed 1974. One medium's trays are twenty times as uneven as the others'.
TEST(UnlikeSpread, HearsWhatTheTraysThemselvesTell)
{
    std::mt19937 draw(1974);
    std::normal_distribution<double> noise;
    TrayResiduals even;
    TrayResiduals uneven;
    for (std::size_t medium = 0; medium < 3; ++medium) {
        for (int i = 0; i < 12; ++i) {
            const double residual = noise(draw);
            even.trays.push_back({0, medium, residual});
            uneven.trays.push_back({0, medium, medium == 2 ? 20 * residual : residual});
        }
    }
    const CellFit fit = fitOf({{1, 2, 6}, {3, 4, 5}, {2, 6, 7}, {4, 4, 9}});
    EXPECT_GT(*unlikeSpreadOf(fit, even).brownForsytheP, 0.05);
    EXPECT_FALSE(unlikeSpreadOf(fit, even).isUnlike);
    EXPECT_LT(*unlikeSpreadOf(fit, uneven).brownForsytheP, 1e-3);
    EXPECT_TRUE(unlikeSpreadOf(fit, uneven).isUnlike);
}

} // namespace
} // namespace plumule::stats
