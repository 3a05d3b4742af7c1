#include "core/review/charts/comparison_charts.h"

#include <algorithm>
#include <functional>
#include <map>
#include <string>

namespace plumule {
namespace {

constexpr double kShareOfRow = 0.8;

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
    case Response::YieldPerTraySown:
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

// In percent of b, with 0 and the margin marked.
ChartSpec percentSpec(const SeasonComparison& comparison, const char* kind)
{
    ChartSpec spec;
    spec.key = toText(comparison.ask.response) + std::string(kind);
    spec.form = ChartForm::DotRows;
    spec.x.key = "difference";
    spec.x.unit = "%";
    spec.marks.push_back({"no_difference", "", 0, true});
    const double margin = comparison.margin.percent;
    const bool isLog = stats::isLog(comparison.scale);
    spec.marks.push_back(
        {"margin", "", isLog ? 100 * (1 / (1 + margin / 100) - 1) : -margin, true});
    spec.marks.push_back({"margin", "", margin, true});
    return spec;
}

std::string nameOfSowing(const Sowing& sowing)
{
    std::string name = sowing.trial ? sowing.code : toIso(sowing.sownOn);
    if (sowing.varieties.size() == 1) {
        name += " " + sowing.varieties.front();
    }
    return name;
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
    for (const ComparedMedium& mean : comparison.means) {
        spec.rows.push_back(mean.medium.name);
        dots.push_back(seriesFor(mean.medium, SeriesForm::Dots));
    }
    for (const ComparedValue& tray : comparison.trays) {
        dots[tray.medium].points.push_back(
            {double(tray.medium), tray.value, tray.code, tray.tray.value, !tray.isIn});
    }
    for (std::size_t row = 0; row < dots.size(); ++row) {
        spec.series.push_back(std::move(dots[row]));
        const ComparedMedium& mean = comparison.means[row];
        if (mean.mean) {
            ChartSeries mark = seriesFor(mean.medium, SeriesForm::Intervals);
            mark.intervals.push_back({double(row), *mean.mean, *mean.mean, *mean.mean});
            spec.series.push_back(std::move(mark));
        }
    }
    return spec;
}

ChartSpec differencesChart(const SeasonComparison& comparison)
{
    ChartSpec spec = percentSpec(comparison, "_differences");
    for (const MediaPair& pair : comparison.pairs) {
        if (!pair.percent || !pair.lowerPercent || !pair.upperPercent) {
            continue;
        }
        const double row = static_cast<double>(spec.rows.size());
        const Medium& a = comparison.means[pair.a].medium;
        spec.rows.push_back(a.name + " − " + comparison.means[pair.b].medium.name);
        ChartSeries interval = seriesFor(a, SeriesForm::Intervals);
        interval.intervals.push_back({row, *pair.lowerPercent, *pair.percent, *pair.upperPercent});
        spec.series.push_back(std::move(interval));
    }
    return spec;
}

ShownSowings shownSowings(const SeasonComparison& comparison, std::size_t pair)
{
    const MediaPair& wanted = comparison.pairs[pair];
    ShownSowings shown;
    for (const TrialPart& part : comparison.byTrial) {
        for (const MediaPair& one : part.pairs) {
            if (one.a == wanted.a && one.b == wanted.b && one.percent) {
                shown.rows.push_back({&part, &one});
                shown.trays.first += part.trays[one.a];
                shown.trays.second += part.trays[one.b];
            }
        }
    }
    shown.all = shown.rows.size();
    if (shown.all <= kMostSowings) {
        return shown;
    }
    const auto isTrial = [&](const SowingPair& row) {
        return comparison.sowings[row.part->sowing].trial.has_value();
    };
    std::vector<SowingPair> kept;
    for (const bool areTrials : {true, false}) {
        for (auto row = shown.rows.rbegin(); row != shown.rows.rend(); ++row) {
            if (isTrial(*row) == areTrials && kept.size() < kMostSowings) {
                kept.push_back(*row);
            }
        }
    }
    // Parts of one vector: by their places, as they were.
    std::sort(kept.begin(), kept.end(), [](const SowingPair& one, const SowingPair& other) {
        return std::less<>{}(one.part, other.part);
    });
    shown.rows = std::move(kept);
    return shown;
}

ChartSpec trialsChart(const SeasonComparison& comparison, std::size_t pair)
{
    ChartSpec spec = percentSpec(comparison, "_by_trial");
    const MediaPair& together = comparison.pairs[pair];
    const auto addRow = [&](const std::string& name, const MediaPair& one, SeriesForm form) {
        const double row = static_cast<double>(spec.rows.size());
        spec.rows.push_back(name);
        ChartSeries interval = seriesFor(comparison.means[together.a].medium, form);
        interval.intervals.push_back({row, one.lowerPercent.value_or(*one.percent), *one.percent,
                                      one.upperPercent.value_or(*one.percent)});
        spec.series.push_back(std::move(interval));
    };
    for (const SowingPair& shown : shownSowings(comparison, pair).rows) {
        addRow(nameOfSowing(comparison.sowings[shown.part->sowing]), *shown.pair,
               SeriesForm::Intervals);
    }
    if (together.percent) {
        addRow("", together, SeriesForm::Pooled);
    }
    return spec;
}

ChartSpec varietiesChart(const SeasonComparison& comparison)
{
    ChartSpec spec;
    spec.key = std::string(toText(comparison.ask.response)) + "_by_variety";
    spec.form = ChartForm::DotRows;
    spec.x.key = "percent_of_trial";
    spec.x.unit = "%";
    std::map<VarietyId, double> rows;
    for (const auto& [variety, name] : comparison.varieties) {
        rows[variety] = static_cast<double>(spec.rows.size());
        spec.rows.push_back(name);
    }
    spec.seriesARow = static_cast<int>(comparison.means.size());
    const double media = static_cast<double>(comparison.means.size());
    for (std::size_t medium = 0; medium < comparison.means.size(); ++medium) {
        // Media of one variety below one another, within its row.
        const double off = ((static_cast<double>(medium) + 0.5) / media - 0.5) * kShareOfRow;
        ChartSeries dots = seriesFor(comparison.means[medium].medium, SeriesForm::Dots);
        ChartSeries marks = seriesFor(comparison.means[medium].medium, SeriesForm::Intervals);
        std::map<VarietyId, std::pair<double, int>> sums;
        for (const ComparedValue& tray : comparison.trays) {
            if (tray.medium == medium && tray.percentOfTrial && tray.isIn &&
                rows.count(tray.variety) > 0) {
                dots.points.push_back({rows[tray.variety] + off, *tray.percentOfTrial, tray.code,
                                       tray.tray.value, false});
                auto& [sum, count] = sums[tray.variety];
                sum += *tray.percentOfTrial;
                ++count;
            }
        }
        for (const auto& [variety, sum] : sums) {
            const double mean = sum.first / sum.second;
            marks.intervals.push_back({rows[variety] + off, mean, mean, mean});
        }
        spec.series.push_back(std::move(dots));
        spec.series.push_back(std::move(marks));
    }
    spec.marks.push_back({"mean_of_trial", "", 100, true});
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
