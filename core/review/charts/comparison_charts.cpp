#include "core/review/charts/comparison_charts.h"

#include <map>

namespace plumule {
namespace {

ChartSeries seriesFor(const Medium& medium, SeriesForm form)
{
    ChartSeries series;
    series.name = medium.name;
    series.marker = medium.marker;
    series.form = form;
    return series;
}

std::string unitOf(const SeasonComparison& comparison)
{
    switch (comparison.ask.response) {
    case Response::YieldPerTray:
    case Response::Residue:
        return "g";
    case Response::YieldPerArea:
        return "g/m²";
    case Response::YieldPerSeed:
        return "g/g";
    case Response::YieldPerDay:
        return "g/d";
    case Response::CostPerGram:
        return comparison.currency + "/g";
    case Response::HeightOnDay:
        return "mm";
    case Response::DaysToHarvest:
        return "";
    case Response::Evenness:
        return "%";
    case Response::Work:
        return "min";
    }
    return "";
}

ChartAxis responseAxis(const SeasonComparison& comparison)
{
    ChartAxis axis;
    axis.key = toText(comparison.ask.response);
    axis.unit = unitOf(comparison);
    return axis;
}

ChartSeries lineOfFit(const HeightFit& fit)
{
    ChartSeries band = seriesFor(fit.medium, SeriesForm::Band);
    for (const HeightAt& at : fit.band) {
        band.intervals.push_back({at.day, at.lower, at.fit, at.upper});
    }
    return band;
}

ChartSeries dotsOfFit(const HeightFit& fit)
{
    ChartSeries dots = seriesFor(fit.medium, SeriesForm::Dots);
    for (const HeightReading& reading : fit.readings) {
        dots.points.push_back(
            {double(reading.day), reading.height, reading.code, reading.tray.value, false});
    }
    return dots;
}

} // namespace

ChartSpec adjustedMeansChart(const SeasonComparison& comparison)
{
    ChartSpec spec;
    spec.key = std::string(toText(comparison.ask.response)) + "_adjusted";
    spec.form = ChartForm::DotRows;
    spec.x = responseAxis(comparison);
    std::vector<ChartSeries> dots;
    for (const AdjustedMean& mean : comparison.means) {
        spec.rows.push_back(mean.medium.name);
        dots.push_back(seriesFor(mean.medium, SeriesForm::Dots));
    }
    for (const ComparedValue& tray : comparison.trays) {
        dots[tray.medium].points.push_back(
            {double(tray.medium), tray.value, tray.code, tray.tray.value, false});
    }
    for (std::size_t row = 0; row < dots.size(); ++row) {
        spec.series.push_back(std::move(dots[row]));
        const AdjustedMean& mean = comparison.means[row];
        if (mean.mean && mean.lower && mean.upper) {
            ChartSeries interval = seriesFor(mean.medium, SeriesForm::Intervals);
            interval.intervals.push_back({double(row), *mean.lower, *mean.mean, *mean.upper});
            spec.series.push_back(std::move(interval));
        }
    }
    return spec;
}

ChartSpec differencesChart(const SeasonComparison& comparison)
{
    ChartSpec spec;
    spec.key = std::string(toText(comparison.ask.response)) + "_differences";
    spec.form = ChartForm::DotRows;
    spec.x = responseAxis(comparison);
    for (const MediaPair& pair : comparison.pairs) {
        if (!pair.difference || !pair.lower || !pair.upper) {
            continue;
        }
        const double row = static_cast<double>(spec.rows.size());
        const Medium& a = comparison.means[pair.a].medium;
        spec.rows.push_back(a.name + " − " + comparison.means[pair.b].medium.name);
        ChartSeries interval = seriesFor(a, SeriesForm::Intervals);
        interval.intervals.push_back({row, *pair.lower, *pair.difference, *pair.upper});
        spec.series.push_back(std::move(interval));
    }
    spec.marks.push_back({"no_difference", "", 0, true});
    if (comparison.margin.value > 0) {
        spec.marks.push_back({"margin", "", -comparison.margin.value, true});
        spec.marks.push_back({"margin", "", comparison.margin.value, true});
    }
    return spec;
}

ChartSpec heightFitChart(const std::vector<HeightFit>& fits, VarietyId variety)
{
    ChartSpec spec;
    spec.key = "height_curves";
    spec.form = ChartForm::Curves;
    spec.x.key = "day";
    spec.x.isWhole = true;
    spec.y.key = "height";
    spec.y.unit = "mm";
    spec.y.low = 0.0;
    for (const HeightFit& fit : fits) {
        if (fit.varietyId != variety) {
            continue;
        }
        if (!fit.band.empty()) {
            spec.series.push_back(lineOfFit(fit));
        }
        spec.series.push_back(dotsOfFit(fit));
    }
    return spec;
}

std::optional<VarietyId> mostReadVariety(const std::vector<HeightFit>& fits)
{
    std::map<VarietyId, std::size_t> readings;
    for (const HeightFit& fit : fits) {
        readings[fit.varietyId] += fit.readings.size();
    }
    std::optional<VarietyId> most;
    for (const auto& [variety, count] : readings) {
        if (!most || count > readings[*most]) {
            most = variety;
        }
    }
    return most;
}

} // namespace plumule
