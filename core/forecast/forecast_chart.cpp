#include "core/forecast/forecast_chart.h"

namespace plumule {

ChartSpec coverageChart(const std::vector<ScoredForecast>& scored)
{
    std::vector<const ScoredForecast*> shown;
    for (const ScoredForecast& one : scored) {
        if (one.isYieldScored()) {
            shown.push_back(&one);
        }
    }
    ChartSpec spec;
    spec.key = "forecast_coverage";
    spec.form = ChartForm::Curves;
    spec.x.key = "harvests";
    spec.x.isWhole = true;
    spec.y = {"weighed", "%", {}, {}, false};
    if (shown.empty()) {
        return spec;
    }
    if (shown.size() > kHarvestsInChart) {
        shown.erase(shown.begin(), shown.end() - kHarvestsInChart);
    }
    ChartSeries bars;
    bars.marker = -1;
    bars.form = SeriesForm::Bars;
    ChartSeries dots;
    dots.marker = -1;
    double number = 0;
    for (const ScoredForecast* one : shown) {
        const YieldForecast& yield = one->forecast.yield;
        const auto percent = [&](Mass mass) { return 100 * (mass / yield.middle); };
        ++number;
        bars.intervals.push_back({number, percent(yield.low), 100, percent(yield.high)});
        const bool isOutside = !one->isYieldInside();
        dots.points.push_back({number, percent(one->weighed), one->forecast.code,
                               one->forecast.tray.value, isOutside, isOutside});
    }
    spec.series = {bars, dots};
    spec.x.low = 0;
    spec.x.high = number + 1;
    return spec;
}

} // namespace plumule
