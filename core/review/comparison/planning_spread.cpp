#include "core/review/comparison/planning_spread.h"

#include "core/review/facts/pooled_spread.h"

namespace plumule {

double spreadToPlanBy(const SeasonFacts& facts, SeasonFilter filter, const ComparisonAsk& ask)
{
    filter.from = {};
    filter.varieties.clear();
    filter.trials.clear();
    filter.shelves.clear();
    filter.sownFrom.reset();
    SpreadCells spread;
    for (const ComparedTray& tray : comparedTrays(facts, filter, ask).trays) {
        const Tray& sown = tray.record->tray;
        spread.add({sown.medium, sown.variety, sown.trial, sown.sownOn, {}}, tray.value);
    }
    // As a share a yield is the same by tray and by area.
    if (ask.response == Response::YieldPerTray || ask.response == Response::YieldPerTraySown ||
        ask.response == Response::YieldPerArea) {
        for (const PastYield& past : facts.past) {
            spread.add(past, inGrams(past.yield));
        }
    }
    const auto pooled = spread.ofShares();
    return pooled ? pooled->sd : kDefaultSpread;
}

} // namespace plumule
