// Part of core/review/charts/season_charts.h: the running trial.
#include "core/review/charts/season_charts.h"

#include <map>

namespace plumule {
namespace {

struct TrialRow
{
    const Medium* medium = nullptr;
    ChartSeries dots;
    std::vector<double> yields;
};

// One row a medium, by medium id as in the season.
std::map<MediumId, TrialRow> rowsOfTrial(const TrialSoFar& trial)
{
    std::map<MediumId, TrialRow> rows;
    for (const TrialSoFar::Dot& dot : trial.dots) {
        rows[dot.medium.id].medium = &dot.medium;
    }
    for (const TrialSoFar::Dot& dot : trial.dots) {
        const auto row = rows.find(dot.medium.id);
        if (!dot.yield) {
            continue;
        }
        const double index = static_cast<double>(std::distance(rows.begin(), row));
        row->second.dots.points.push_back(
            {index, inGrams(*dot.yield), dot.code, dot.tray.value, false});
        row->second.yields.push_back(inGrams(*dot.yield));
    }
    return rows;
}

} // namespace

ChartSpec trialSoFarChart(const TrialSoFar& trial)
{
    ChartSpec spec;
    spec.key = "trial_so_far";
    spec.form = ChartForm::DotRows;
    spec.x.key = "yield";
    spec.x.unit = "g";
    for (auto& [id, row] : rowsOfTrial(trial)) {
        const double index = static_cast<double>(spec.rows.size());
        spec.rows.push_back(row.medium->name);
        ChartSeries dots = row.dots;
        dots.name = row.medium->name;
        dots.marker = row.medium->marker;
        spec.series.push_back(dots);
        const MeanInterval mean = meanInterval(row.yields);
        if (mean.lower && mean.upper) {
            dots.points.clear();
            dots.form = SeriesForm::Intervals;
            dots.intervals.push_back({index, *mean.lower, mean.mean, *mean.upper});
            spec.series.push_back(dots);
        }
    }
    return spec;
}

} // namespace plumule
