#include "tests/core/review/comparison/comparison_samples.h"

#include "core/review/charts/block_chart.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

TEST(ByBlockChart, PutsEachTrayInItsBlocksRowWithItsMediumsMarker)
{
    ComparisonSamples samples;
    samples.addBlocks({7}, {300, 310}, {320, 335});
    const SeasonComparison comparison = samples.compare();
    const auto trayAt = [&](std::size_t i) { return samples.facts.trays[i].tray.id; };
    const ChartSpec chart = byBlockChart(
        comparison, {{"1 · A1", {trayAt(0), trayAt(1)}}, {"2 · A2", {trayAt(2), trayAt(3)}}});
    EXPECT_EQ(chart.key, "yield_by_block");
    EXPECT_EQ(chart.form, ChartForm::DotRows);
    EXPECT_EQ(chart.rows, (std::vector<std::string>{"1 · A1", "2 · A2"}));
    EXPECT_EQ(chart.x.unit, "g");
    ASSERT_EQ(chart.series.size(), 2U);
    EXPECT_EQ(chart.series[0].name, "Loose mix");
    EXPECT_EQ(chart.series[0].marker, 3);
    EXPECT_EQ(chart.series[0].points,
              (std::vector<ChartPoint>{{0, 300, "A1", trayAt(0).value, false},
                                       {1, 310, "A3", trayAt(2).value, false}}));
    EXPECT_EQ(chart.series[1].points,
              (std::vector<ChartPoint>{{0, 320, "A2", trayAt(1).value, false},
                                       {1, 335, "A4", trayAt(3).value, false}}));
}

TEST(ByBlockChart, LeavesOutTraysOfNoBlock)
{
    ComparisonSamples samples;
    samples.addBlocks({7}, {300}, {320});
    const SeasonComparison comparison = samples.compare();
    const ChartSpec chart =
        byBlockChart(comparison, {{"1", {samples.facts.trays[0].tray.id}}, {"2", {}}});
    ASSERT_EQ(chart.series.size(), 1U);
    EXPECT_EQ(chart.series[0].points.size(), 1U);
    EXPECT_EQ(chart.rows.size(), 2U);
}

} // namespace
} // namespace plumule
