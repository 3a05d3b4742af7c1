#include "core/order/order_chart.h"

namespace plumule {
namespace {

constexpr double kInPercent = 100;
constexpr double kRoomAtTheEnds = 0.5; // of a tray

} // namespace

ChartSpec chanceChart(const std::vector<ChanceOfTrays>& chances, int marker)
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
    dots.marker = marker;
    for (const ChanceOfTrays& each : chances) {
        const double percent = each.chance * kInPercent;
        line.points.push_back({double(each.trays), percent, "", std::nullopt, false});
        dots.points.push_back(
            {double(each.trays), percent, "", std::nullopt, each.chance < kChanceWanted});
    }
    if (!chances.empty()) {
        spec.x.low = chances.front().trays - kRoomAtTheEnds;
        spec.x.high = chances.back().trays + kRoomAtTheEnds;
    }
    spec.series = {line, dots};
    spec.marks.push_back({"chance_wanted", "", kChanceWanted * kInPercent, false});
    return spec;
}

} // namespace plumule
