#include "core/review/charts/season_charts.h"

namespace plumule {
namespace {

std::optional<ChartInterval> intervalAt(const MeanInterval& mean, double x)
{
    if (!mean.lower || !mean.upper) {
        return std::nullopt;
    }
    return ChartInterval{x, *mean.lower, mean.mean, *mean.upper};
}

ChartSeries seriesOf(const Medium& medium, SeriesForm form)
{
    ChartSeries series;
    series.name = medium.name;
    series.marker = medium.marker;
    series.form = form;
    return series;
}

ChartAxis fromZero(std::string key, std::string unit)
{
    ChartAxis axis;
    axis.key = std::move(key);
    axis.unit = std::move(unit);
    axis.low = 0.0;
    return axis;
}

std::string perGram(const SeasonReview& review)
{
    return review.currency + "/g";
}

// The band where a day has two trays or more; a lone tray's day is a dot.
void addHeights(ChartSpec& spec, const MediumSeason& season)
{
    ChartSeries band = seriesOf(season.medium, SeriesForm::Band);
    ChartSeries dots = seriesOf(season.medium, SeriesForm::Dots);
    for (const HeightMean& day : season.heights) {
        if (const auto interval = intervalAt(day.height, day.day)) {
            band.intervals.push_back(*interval);
        } else {
            dots.points.push_back({double(day.day), day.height.mean, "", std::nullopt, false});
        }
    }
    if (!band.intervals.empty()) {
        spec.series.push_back(std::move(band));
    }
    if (!dots.points.empty()) {
        spec.series.push_back(std::move(dots));
    }
}

} // namespace

ChartSpec heightChart(const SeasonReview& review)
{
    ChartSpec spec;
    spec.key = "height_by_day";
    spec.form = ChartForm::Curves;
    spec.x.key = "day";
    spec.x.isWhole = true;
    spec.y = fromZero("height", "mm");
    for (const MediumSeason& season : review.media) {
        addHeights(spec, season);
    }
    return spec;
}

ChartSpec costByUsesChart(const SeasonReview& review)
{
    ChartSpec spec;
    spec.key = "cost_by_uses";
    spec.form = ChartForm::Curves;
    spec.x.key = "uses";
    spec.x.isWhole = true;
    spec.x.low = 1.0;
    spec.y = fromZero("cost_per_gram", perGram(review));
    for (const MediumSeason& season : review.media) {
        if (season.costCurve.empty()) {
            continue;
        }
        ChartSeries line = seriesOf(season.medium, SeriesForm::Line);
        for (const CostPoint& point : season.costCurve) {
            line.points.push_back({double(point.uses), point.costPerGram, "", std::nullopt, false});
        }
        spec.x.high = season.costCurve.back().uses;
        spec.series.push_back(std::move(line));
        if (season.paysBackAt && *season.paysBackAt <= season.costCurve.back().uses) {
            spec.marks.push_back(
                {"pays_back", season.medium.name, double(*season.paysBackAt), true});
        }
    }
    return spec;
}

ChartSpec paybackChart(const std::vector<Payback>& paybacks, const SeasonReview& review)
{
    ChartSpec spec = costByUsesChart(review);
    for (ChartSeries& series : spec.series) {
        const auto payback =
            std::find_if(paybacks.begin(), paybacks.end(), [&](const Payback& one) {
                return one.medium.name == series.name && !one.curve.empty();
            });
        if (payback == paybacks.end()) {
            continue;
        }
        series.form = SeriesForm::Band;
        series.points.clear();
        for (const CostBand& band : payback->curve) {
            series.intervals.push_back({double(band.uses), band.low, band.cost, band.high});
        }
    }
    return spec;
}

} // namespace plumule
