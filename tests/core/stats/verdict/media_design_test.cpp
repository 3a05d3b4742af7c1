#include "core/stats/verdict/media_design.h"

#include <gtest/gtest.h>
#include <random>

namespace plumule::stats {
namespace {

// Two media in three blocks, worked out by hand: differences 2, 4 and 6.
std::vector<DesignRow> threeBlocks()
{
    return {{0, 0, 1, 12}, {1, 0, 1, 10}, {0, 0, 2, 19},
            {1, 0, 2, 15}, {0, 0, 3, 11}, {1, 0, 3, 5}};
}

TEST(MediaDesign, TakesBlocksOff)
{
    const MediaDesign design(threeBlocks());
    EXPECT_EQ(design.df(), 2);
    // Half the blocks' own sum of squares about the mean difference of 4: (4 + 0 + 4)/2.
    EXPECT_NEAR(design.residualSs(), 4, 1e-12);
    const auto weights = design.weights(0, 1);
    ASSERT_TRUE(weights);
    double difference = 0;
    for (std::size_t row = 0; row < design.rows().size(); ++row) {
        difference += (*weights)(static_cast<Eigen::Index>(row)) * design.rows()[row].value;
    }
    EXPECT_NEAR(difference, 4, 1e-12);
    EXPECT_NEAR(weights->squaredNorm(), 2.0 / 3, 1e-12) << "two means of three";
    EXPECT_NEAR(design.adjustedMean(0) - design.adjustedMean(1), 4, 1e-12);
    EXPECT_NEAR(design.adjustedMean(0), 14, 1e-12);
}

TEST(MediaDesign, AdjustsForBlocksThatHoldNotEveryMedium)
{
    // Medium 1 stands in the good block only: its raw mean is 22, against 16 of medium 0.
    const MediaDesign design({{0, 0, 1, 10}, {0, 0, 2, 22}, {1, 0, 2, 22}});
    EXPECT_NEAR(design.adjustedMean(0) - design.adjustedMean(1), 0, 1e-12);
    EXPECT_EQ(design.df(), 0);
}

TEST(MediaDesign, OfNoRowsTellsNothing)
{
    const MediaDesign design({});
    EXPECT_EQ(design.df(), 0);
    EXPECT_EQ(design.residualSs(), 0);
    EXPECT_FALSE(design.holds(0));
    EXPECT_FALSE(design.weights(0, 1));
}

TEST(MediaDesign, TellsNothingOfMediaThatNothingConnects)
{
    const MediaDesign design({{0, 0, 1, 10}, {1, 0, 1, 12}, {2, 0, 2, 30}, {3, 0, 2, 31}});
    EXPECT_TRUE(design.weights(0, 1));
    EXPECT_TRUE(design.weights(3, 2));
    EXPECT_FALSE(design.weights(0, 2));
    EXPECT_FALSE(design.weights(0, 9)) << "it is not there at all";
    EXPECT_FALSE(design.holds(9));
}

// Variety and medium told apart by a third tray in the corner.
TEST(MediaDesign, TakesVarietiesOff)
{
    const MediaDesign design({{0, 0, 0, 100}, {1, 0, 0, 120}, {0, 7, 0, 300}, {1, 7, 0, 324}});
    EXPECT_NEAR(design.adjustedMean(1) - design.adjustedMean(0), 22, 1e-12);
    // Without its variety a tray differs from another one of its medium by the rest alone.
    EXPECT_NEAR(design.withoutVarietyAndColumn(0) - design.withoutVarietyAndColumn(2), 2, 1e-12);
    EXPECT_NEAR(design.withoutVarietyAndColumn(1) - design.withoutVarietyAndColumn(3), -2, 1e-12);
    EXPECT_NEAR(design.residualSs(), 4, 1e-12);
}

TEST(MediaDesign, FollowsATrayThatIsAloneInItsBlock)
{
    const MediaDesign design(
        {{0, 0, 1, 10}, {1, 0, 1, 12}, {0, 0, 2, 11}, {1, 0, 2, 14}, {1, 0, 3, 99}});
    EXPECT_NEAR(design.leverage(4), 1, 1e-12);
    EXPECT_LT(design.leverage(0), 0.9);
    EXPECT_NEAR(design.residuals()(4), 0, 1e-10);
}

// Seed 88: leverages add up to the rank, residuals stand upright on blocks and media, and adding a
// number to a whole block changes no difference.
TEST(MediaDesign, KeepsWhatLeastSquaresPromises)
{
    std::mt19937 draw(88);
    std::normal_distribution<double> noise(50, 9);
    for (int round = 0; round < 40; ++round) {
        std::vector<DesignRow> rows;
        for (std::size_t block = 1; block <= 4; ++block) {
            for (std::size_t medium = 0; medium < 3; ++medium) {
                if (draw() % 5 != 0) {
                    rows.push_back({medium, draw() % 2, block, noise(draw)});
                }
            }
        }
        std::vector<DesignRow> lifted = rows;
        for (DesignRow& row : lifted) {
            row.value += row.block == 2 ? 1000 : 0;
        }
        const MediaDesign design(rows);
        const MediaDesign again(lifted);
        double leverages = 0;
        for (std::size_t row = 0; row < rows.size(); ++row) {
            leverages += design.leverage(row);
        }
        EXPECT_NEAR(leverages, static_cast<double>(rows.size()) - design.df(), 1e-8);
        EXPECT_NEAR(again.residualSs(), design.residualSs(), 1e-6);
        for (std::size_t medium = 0; medium < 3; ++medium) {
            double sum = 0;
            for (std::size_t row = 0; row < rows.size(); ++row) {
                sum += rows[row].medium == medium
                           ? design.residuals()(static_cast<Eigen::Index>(row))
                           : 0;
            }
            EXPECT_NEAR(sum, 0, 1e-8);
        }
    }
}

} // namespace
} // namespace plumule::stats
