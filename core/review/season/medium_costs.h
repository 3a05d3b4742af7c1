#pragma once

#include "core/base/progress.h"
#include "core/cost/cost_parts.h"
#include "core/review/facts/season_facts.h"

namespace plumule {

// What a medium's trays cost, and what they would have cost as a what-if has it.
struct MediumCosts
{
    Medium medium;
    CostBreakdown today;
    std::optional<CostBreakdown> whatIf; // where one was asked
    std::optional<double> residueGrams;  // mean of the harvested trays whose residue was weighed
};

// Of the trays that count or have failed, each with its cost worked out: the lowest cost of a gram
// first, those without one last. Cut short where it is stopped.
[[nodiscard]] std::vector<MediumCosts>
mediumCosts(const SeasonFacts& facts, const SeasonFilter& filter, const Progress& progress = {});

// A price that some of the trays lack.
struct PriceLack
{
    PriceItem item = PriceItem::Medium;
    std::optional<MediumId> medium;
    std::optional<Date> from; // when its first one holds; none where there is none
    int trays = 0;
    bool operator==(const PriceLack&) const = default;
};

struct CostLacks
{
    std::vector<PriceLack> prices; // by item, then medium
    int seed = 0;                  // trays whose seed has no cost: lot, price or weight is lacking
};
[[nodiscard]] CostLacks costLacks(const SeasonFacts& facts, const SeasonFilter& filter);

// Currency units a kilogram, over all seed of these trays that has a price.
[[nodiscard]] std::optional<double> seedPricePaid(const SeasonFacts& facts,
                                                  const SeasonFilter& filter);

} // namespace plumule
