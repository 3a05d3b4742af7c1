#include "core/stats/verdict/tray_residuals.h"

#include "tests/core/stats/verdict/sown_trays.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

using verdicts::sown;
using verdicts::withoutBlocks;

TEST(ScaledTrays, LeaveOutWhatTheScaleCannotHold)
{
    auto trays = sown({{{100, 0, -5}, {50}}});
    trays.back().value.reset();
    EXPECT_EQ(scaledTrays(trays, CellScale::Log).at(0).size(), 1U);
    EXPECT_NEAR(scaledTrays(trays, CellScale::Log).at(0)[0].value, std::log(100), 1e-15);
    EXPECT_EQ(scaledTrays(trays, CellScale::Linear).at(0).size(), 3U);
    EXPECT_TRUE(scaledTrays({}, CellScale::Log).empty());
}

TEST(ScaledTrays, TellATrayWithoutABlockFromTheFirstBlock)
{
    auto trays = sown({{{100, 110}}});
    trays[1].block.reset();
    const auto rows = scaledTrays(trays, CellScale::Linear).at(0);
    EXPECT_NE(rows[0].block, rows[1].block);
}

// What a tray adds to log(Σ value/Σ per): they sum to 0 within a cell, and a failed tray counts
// with the whole of the mean.
TEST(ScaledTrays, OfRatiosStandForWhatTheyAddToTheLog)
{
    const auto rows = scaledTrays(sown({{{205, 0, 190}}}), CellScale::LogOfRatio).at(0);
    ASSERT_EQ(rows.size(), 3U);
    const double mean = 395.0 / 3;
    EXPECT_NEAR(rows[0].value, 205 / mean - 1, 1e-12);
    EXPECT_NEAR(rows[1].value, -1, 1e-12);
    EXPECT_NEAR(rows[0].value + rows[1].value + rows[2].value, 0, 1e-12);
    EXPECT_TRUE(scaledTrays(sown({{{0, 0}}}), CellScale::LogOfRatio).empty())
        << "a cell that gave nothing has no log";
}

// Two media of two trays without blocks: each tray is half its medium's difference apart.
TEST(TrayResiduals, AreWhatTraysAreApartFromTheirCell)
{
    const auto residuals =
        trayResidualsOf(withoutBlocks(sown({{{10, 14}, {20, 26}}})), CellScale::Linear);
    ASSERT_EQ(residuals.trays.size(), 4U);
    EXPECT_NEAR(residuals.trays[0].value, -2, 1e-12);
    EXPECT_NEAR(residuals.trays[3].value, 3, 1e-12);
    EXPECT_NEAR(residuals.ss, 4 + 4 + 9 + 9, 1e-12);
    EXPECT_EQ(residuals.df, 2);
    EXPECT_NEAR(*residuals.variance(), 13, 1e-12);
}

TEST(TrayResiduals, TakeBlocksOffWhereTheyAreGiven)
{
    const auto residuals = trayResidualsOf(sown({{{10, 14}, {20, 26}}}), CellScale::Linear);
    // Differences 10 and 12: what is left of each tray is half of half their difference.
    EXPECT_NEAR(residuals.ss, 4 * 0.25, 1e-12);
    EXPECT_EQ(residuals.df, 1);
}

TEST(TrayResiduals, LeaveTraysOutThatTheFitFollows)
{
    const auto residuals =
        trayResidualsOf(withoutBlocks(sown({{{10, 14}, {20}}, {{5}, {6}}})), CellScale::Linear);
    ASSERT_EQ(residuals.trays.size(), 2U);
    EXPECT_EQ(residuals.trays[0].medium, 0U);
    EXPECT_EQ(residuals.trays[0].sowing, 0U);
    EXPECT_EQ(residuals.df, 1);
    EXPECT_FALSE(trayResidualsOf(sown({{{5}, {6}}}), CellScale::Linear).variance());
}

TEST(TrayResiduals, OfLogsHangOnShareAlone)
{
    const auto small = trayResidualsOf(withoutBlocks(sown({{{10, 12}, {20, 26}}})), CellScale::Log);
    const auto large =
        trayResidualsOf(withoutBlocks(sown({{{1000, 1200}, {2000, 2600}}})), CellScale::Log);
    EXPECT_NEAR(small.ss, large.ss, 1e-12);
    EXPECT_NEAR(small.ss, (std::pow(std::log(1.2), 2) + std::pow(std::log(1.3), 2)) / 2, 1e-12);
}

} // namespace
} // namespace plumule::stats
