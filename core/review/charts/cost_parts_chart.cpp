#include "core/review/charts/cost_parts_chart.h"

namespace plumule {
namespace {

// One part of all media; each stands where the parts before it end.
ChartSeries barsOf(CostPart part, const std::vector<MediumCosts>& media, std::vector<double>& ends)
{
    ChartSeries bars;
    bars.name = toText(part);
    bars.marker = static_cast<int>(part);
    bars.form = SeriesForm::Parts;
    for (std::size_t row = 0; row < media.size(); ++row) {
        const CostShare* share = media[row].today.share(part);
        if (share != nullptr && share->perGram > 0) {
            const double from = ends[row];
            ends[row] += share->perGram;
            bars.intervals.push_back({static_cast<double>(row), from, ends[row], ends[row]});
        }
    }
    return bars;
}

ChartSeries strokesOf(const std::vector<MediumCosts>& media)
{
    ChartSeries strokes;
    strokes.name = "what_if";
    strokes.marker = -1;
    strokes.form = SeriesForm::Strokes;
    for (std::size_t row = 0; row < media.size(); ++row) {
        const auto cost = media[row].whatIf ? media[row].whatIf->perGram() : std::nullopt;
        if (cost) {
            strokes.intervals.push_back({static_cast<double>(row), *cost, *cost, *cost});
        }
    }
    return strokes;
}

} // namespace

ChartSpec costPartsChart(const std::vector<MediumCosts>& media, const std::string& currency)
{
    ChartSpec spec;
    spec.key = "cost_parts";
    spec.form = ChartForm::DotRows;
    spec.x.key = "cost_per_gram";
    spec.x.unit = currency + "/g";
    spec.x.low = 0.0;
    for (const MediumCosts& costs : media) {
        spec.rows.push_back(costs.medium.name);
    }
    std::vector<double> ends(media.size(), 0.0);
    for (const CostPart part : kPartsOfCost) {
        ChartSeries bars = barsOf(part, media, ends);
        if (!bars.intervals.empty()) {
            spec.series.push_back(std::move(bars));
        }
    }
    ChartSeries strokes = strokesOf(media);
    if (!strokes.intervals.empty()) {
        spec.series.push_back(std::move(strokes));
    }
    return spec;
}

} // namespace plumule
