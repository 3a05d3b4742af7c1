#include "core/stats/verdict/cells.h"
#include "core/stats/verdict/sown_trays.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

SownTray tray(std::size_t variety, std::size_t medium, double value)
{
    SownTray result;
    result.variety = variety;
    result.medium = medium;
    result.value = value;
    return result;
}

const Cell& cellOf(const std::vector<Cell>& cells, std::size_t medium)
{
    for (const Cell& cell : cells) {
        if (cell.medium == medium) {
            return cell;
        }
    }
    throw std::logic_error("no cell");
}

std::vector<Cell> cellsOf(const std::vector<SownTray>& trays)
{
    return mediumCells(varietyCellsOf(trays, CellScale::Linear).cells);
}

TEST(Cells, AreMeansOfLogs)
{
    const auto cells = varietyCellsOf(verdicts::sown({{{100, 400}, {50}}}), CellScale::Log);
    ASSERT_EQ(cells.cells.size(), 2U);
    EXPECT_NEAR(cells.cells[0].value, std::log(200), 1e-12);
    EXPECT_EQ(cells.cells[0].trays, 2);
    EXPECT_TRUE(cells.empty.empty());
}

TEST(Cells, OfRatiosCountFailedTraysIn)
{
    std::vector<SownTray> trays = verdicts::sown({{{205, 0, 190}}});
    const auto perTray = varietyCellsOf(trays, CellScale::LogOfRatio);
    EXPECT_NEAR(perTray.cells.at(0).value, std::log(395.0 / 3), 1e-12);
    for (SownTray& one : trays) {
        one.per = *one.value;
        one.value = 1.1;
    }
    const auto cost = varietyCellsOf(trays, CellScale::LogOfRatio);
    EXPECT_NEAR(cost.cells.at(0).value, std::log(3.3 / 395), 1e-12);
}

TEST(Cells, NamesWhereEveryTrayFailed)
{
    std::vector<SownTray> trays = verdicts::sown({{{0, 0}, {120, 0}}, {{90}, {100}}});
    const std::vector<EmptyCell> none{{0, 0}};
    EXPECT_EQ(varietyCellsOf(trays, CellScale::Log).empty, none);
    EXPECT_EQ(varietyCellsOf(trays, CellScale::LogOfRatio).empty, none);
    trays[0].value.reset();
    trays[1].value.reset();
    EXPECT_EQ(varietyCellsOf(trays, CellScale::Linear).empty, none);
}

// Medium 1 is 2 more than medium 0 and medium 2 is 5 more than medium 1, variety 1 gives 100 more.
TEST(Cells, AreAdjustedForVariety)
{
    const auto cells = cellsOf({tray(0, 0, 10), tray(0, 1, 12), tray(1, 1, 112), tray(1, 2, 117)});
    ASSERT_EQ(cells.size(), 3U);
    EXPECT_NEAR(cellOf(cells, 1).value - cellOf(cells, 0).value, 2, 1e-9);
    EXPECT_NEAR(cellOf(cells, 2).value - cellOf(cells, 1).value, 5, 1e-9);
    EXPECT_NEAR(cellOf(cells, 0).value, 60, 1e-9); // over both varieties
    EXPECT_EQ(cellOf(cells, 1).trays, 2);
    EXPECT_EQ(cellOf(cells, 0).part, cellOf(cells, 2).part);
}

TEST(Cells, OfMediaThatNoVarietyConnectsStandApart)
{
    const auto cells = cellsOf({tray(0, 0, 10), tray(0, 1, 12), tray(1, 2, 112), tray(1, 3, 117)});
    ASSERT_EQ(cells.size(), 4U);
    EXPECT_EQ(cellOf(cells, 0).part, cellOf(cells, 1).part);
    EXPECT_EQ(cellOf(cells, 2).part, cellOf(cells, 3).part);
    EXPECT_NE(cellOf(cells, 0).part, cellOf(cells, 2).part);
    EXPECT_NEAR(cellOf(cells, 2).value, 112, 1e-9);
}

TEST(Cells, OfOneVarietyAreItsMeansToTheBit)
{
    const auto cells = cellsOf({tray(3, 0, 10.1), tray(3, 1, 12.7)});
    EXPECT_EQ(cellOf(cells, 0).value, 10.1);
    EXPECT_EQ(cellOf(cells, 1).value, 12.7);
}

} // namespace
} // namespace plumule::stats
