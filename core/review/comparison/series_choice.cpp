#include "core/review/comparison/series_choice.h"

namespace plumule {
namespace {

void choosePlanned(SeriesChoice& choice, int planned, const std::vector<Sowing>& sowings)
{
    int trials = 0;
    for (std::size_t i = 0; i < sowings.size() && trials < planned; ++i) {
        if (!sowings[i].trial) {
            continue;
        }
        ++trials;
        if (sowings[i].isAllIn()) {
            choice.sowings.insert(i);
        }
    }
    choice.in = static_cast<int>(choice.sowings.size());
    choice.state = choice.in < planned ? stats::Series::PlanRunning : stats::Series::PlanDone;
}

} // namespace

SeriesChoice chooseSowings(const Series& series, const std::vector<Sowing>& sowings)
{
    SeriesChoice choice;
    if (series.plannedTrials) {
        choosePlanned(choice, *series.plannedTrials, sowings);
    } else {
        for (std::size_t i = 0; i < sowings.size(); ++i) {
            if (sowings[i].isAllIn()) {
                choice.sowings.insert(i);
            }
        }
    }
    if (choice.sowings.empty()) {
        choice.state = stats::Series::PlanRunning;
        for (std::size_t i = 0; i < sowings.size(); ++i) {
            choice.sowings.insert(i);
        }
    }
    return choice;
}

} // namespace plumule
