#include "core/review/charts/block_chart.h"

#include "core/review/charts/comparison_charts.h"

#include <map>

namespace plumule {

ChartSpec byBlockChart(const SeasonComparison& comparison, const std::vector<BlockOfTrays>& blocks)
{
    ChartSpec spec;
    spec.key = std::string(toText(comparison.ask.response)) + "_by_block";
    spec.form = ChartForm::DotRows;
    spec.x = adjustedMeansChart(comparison).x;
    std::map<TrayId, double> rowOf;
    for (const BlockOfTrays& block : blocks) {
        for (const TrayId tray : block.trays) {
            rowOf[tray] = static_cast<double>(spec.rows.size());
        }
        spec.rows.push_back(block.name);
    }
    std::map<std::size_t, ChartSeries> dots;
    for (const ComparedValue& each : comparison.trays) {
        const auto row = rowOf.find(each.tray);
        if (row == rowOf.end()) {
            continue;
        }
        ChartSeries& series = dots[each.medium];
        series.name = comparison.means[each.medium].medium.name;
        series.marker = comparison.means[each.medium].medium.marker;
        series.points.push_back({row->second, each.value, each.code, each.tray.value, false});
    }
    for (auto& [medium, series] : dots) {
        spec.series.push_back(std::move(series));
    }
    return spec;
}

} // namespace plumule
