#include "core/order/order_chart.h"

namespace plumule {
namespace {

constexpr double kInPercent = 100;

} // namespace

ChartSpec chanceChart(const std::vector<ChanceOfTrays>& chances)
{
    ChartSpec spec;
    spec.key = "chance_by_trays";
    spec.form = ChartForm::Curves;
    spec.x = {"trays_sown", "", std::nullopt, std::nullopt, true};
    spec.y = {"chance_met", "%", 0, kInPercent, false};
    ChartSeries line;
    line.marker = -1;
    line.form = SeriesForm::Line;
    ChartSeries dots;
    dots.marker = -1;
    for (const ChanceOfTrays& each : chances) {
        const double percent = each.chance * kInPercent;
        line.points.push_back({double(each.trays), percent, "", std::nullopt, false});
        dots.points.push_back(
            {double(each.trays), percent, "", std::nullopt, each.chance < kChanceWanted});
    }
    if (!chances.empty()) {
        spec.x.low = chances.front().trays;
        spec.x.high = chances.back().trays;
    }
    spec.series = {line, dots};
    spec.marks.push_back({"chance_wanted", "", kChanceWanted * kInPercent, false});
    return spec;
}

} // namespace plumule
