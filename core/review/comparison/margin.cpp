#include "core/review/comparison/margin.h"

#include <cmath>

namespace plumule {
namespace {

bool isOfYield(Response response)
{
    switch (response) {
    case Response::YieldPerTray:
    case Response::YieldPerTraySown:
    case Response::YieldPerArea:
    case Response::YieldPerSeed:
    case Response::YieldPerDay:
        return true;
    case Response::CostPerGram:
    case Response::HeightOnDay:
    case Response::DaysToHarvest:
    case Response::Residue:
    case Response::Evenness:
    case Response::Work:
        break;
    }
    return false;
}

std::optional<Mass> smallestTrialMargin(const SeasonFacts& facts, const ComparedTrays& trays)
{
    std::optional<Mass> smallest;
    for (const ComparedTray& tray : trays.trays) {
        const auto& trial = tray.record->tray.trial;
        const auto margin = trial ? facts.margins.find(*trial) : facts.margins.end();
        if (margin != facts.margins.end() && (!smallest || margin->second < *smallest)) {
            smallest = margin->second;
        }
    }
    return smallest;
}

double meanGrams(const ComparedTrays& trays)
{
    double sum = 0;
    for (const ComparedTray& tray : trays.trays) {
        sum += inGrams(tray.record->yield);
    }
    return trays.trays.empty() ? 0 : sum / static_cast<double>(trays.trays.size());
}

} // namespace

Margin marginFor(const SeasonFacts& facts, const ComparedTrays& trays, const ComparisonAsk& ask)
{
    if (ask.marginPercent && *ask.marginPercent > 0) {
        return {*ask.marginPercent, MarginFrom::Asked};
    }
    const auto ofTrial = isOfYield(ask.response) ? smallestTrialMargin(facts, trays) : std::nullopt;
    const double grams = meanGrams(trays);
    if (ofTrial && ofTrial->count() > 0 && grams > 0) {
        return {100 * inGrams(*ofTrial) / grams, MarginFrom::Trials};
    }
    return {};
}

double marginOnScale(const Margin& margin, stats::CellScale scale, const ComparedTrays& trays)
{
    return stats::isLog(scale) ? stats::logMargin(margin.percent)
                               : margin.percent / 100 * std::abs(trays.mean());
}

} // namespace plumule
