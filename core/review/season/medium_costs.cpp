#include "core/review/season/medium_costs.h"

#include "core/cost/missing_price.h"

#include <algorithm>
#include <limits>
#include <tuple>

namespace plumule {
namespace {

constexpr std::size_t kTraysBetweenLooks = 512;

// One medium's trays.
struct Gathered
{
    CostSums sums;
    double residueGrams = 0;
    int residues = 0;
};

double orderOf(const MediumCosts& costs)
{
    return costs.today.perGram().value_or(std::numeric_limits<double>::max());
}

bool isOfCosts(const SeasonRecord& record, const SeasonFilter& filter)
{
    return isCounted(record, filter) || hasFailed(record, filter);
}

void gather(Gathered& gathered, const SeasonRecord& record, const SeasonFacts& facts, bool isFailed)
{
    const auto unpriced = unpricedItems(record.use, record.cost, facts.cost.prices);
    if (isFailed) {
        gathered.sums.addFailed(record.cost, unpriced);
        return;
    }
    gathered.sums.addHarvested(record.cost, inGrams(record.yield), unpriced);
    if (record.use.residue) {
        gathered.residueGrams += inGrams(*record.use.residue);
        ++gathered.residues;
    }
}

} // namespace

std::vector<MediumCosts> mediumCosts(const SeasonFacts& facts, const SeasonFilter& filter,
                                     const Progress& progress)
{
    std::map<MediumId, Gathered> byMedium;
    for (std::size_t i = 0; i < facts.trays.size(); ++i) {
        if (i % kTraysBetweenLooks == 0 && progress.isStopped()) {
            break;
        }
        const SeasonRecord& record = facts.trays[i];
        const bool isFailed = hasFailed(record, filter);
        if (isFailed || isCounted(record, filter)) {
            gather(byMedium[record.tray.medium], record, facts, isFailed);
        }
    }
    std::vector<MediumCosts> media;
    for (const auto& [id, gathered] : byMedium) {
        MediumCosts costs;
        costs.medium = facts.media.at(id);
        costs.today = gathered.sums.breakdown();
        if (gathered.residues > 0) {
            costs.residueGrams = gathered.residueGrams / gathered.residues;
        }
        media.push_back(std::move(costs));
    }
    std::stable_sort(media.begin(), media.end(), [](const MediumCosts& a, const MediumCosts& b) {
        return orderOf(a) < orderOf(b);
    });
    return media;
}

CostLacks costLacks(const SeasonFacts& facts, const SeasonFilter& filter)
{
    CostLacks lacks;
    std::map<std::pair<PriceItem, std::optional<MediumId>>, int> trays;
    for (const SeasonRecord& record : facts.trays) {
        if (!isOfCosts(record, filter)) {
            continue;
        }
        for (const PriceItem item : unpricedItems(record.use, record.cost, facts.cost.prices)) {
            ++trays[{item,
                     item == PriceItem::Medium ? std::optional(record.tray.medium) : std::nullopt}];
        }
        lacks.seed += record.cost.seed ? 0 : 1;
    }
    for (const auto& [what, count] : trays) {
        const auto& [item, medium] = what;
        lacks.prices.push_back(
            {item, medium, firstPriceDay(facts.cost.prices, item, medium), count});
    }
    return lacks;
}

std::optional<double> seedPricePaid(const SeasonFacts& facts, const SeasonFilter& filter)
{
    double paid = 0;
    double kilograms = 0;
    for (const SeasonRecord& record : facts.trays) {
        if (isOfCosts(record, filter) && record.cost.seed && record.use.seed) {
            paid += *record.cost.seed;
            kilograms += inGrams(*record.use.seed) / 1e3;
        }
    }
    return kilograms > 0 ? std::optional(paid / kilograms) : std::nullopt;
}

} // namespace plumule
