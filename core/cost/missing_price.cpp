#include "core/cost/missing_price.h"

#include <algorithm>
#include <array>

namespace plumule {
namespace {

constexpr std::array kItems{PriceItem::Medium,      PriceItem::Concentrate, PriceItem::Water,
                            PriceItem::Electricity, PriceItem::Labour,      PriceItem::Packaging,
                            PriceItem::Washing,     PriceItem::Waste};

std::optional<MediumId> mediumOf(PriceItem item, const TrayUse& use)
{
    return item == PriceItem::Medium ? std::optional(use.medium->id) : std::nullopt;
}

} // namespace

std::optional<Date> firstPriceDay(const std::vector<Price>& prices, PriceItem item,
                                  std::optional<MediumId> medium)
{
    std::optional<Date> first;
    for (const Price& price : prices) {
        if (price.item == item && price.medium == medium && (!first || price.from < *first)) {
            first = price.from;
        }
    }
    return first;
}

std::vector<MissingPrice> missingPrices(const TrayUse& use, CostFacts facts)
{
    std::vector<MissingPrice> missing;
    for (const PriceItem item : kItems) {
        const auto medium = mediumOf(item, use);
        if (!priceOn(facts.prices, item, use.sownOn, medium)) {
            missing.push_back({item, firstPriceDay(facts.prices, item, medium)});
        }
    }
    for (const MissingPrice& each : missing) {
        facts.prices.push_back({{}, each.item, mediumOf(each.item, use), use.sownOn, money(1)});
    }
    // A price that changes nothing is of something that this tray did not use.
    const double total = costOf(use, facts).total();
    std::erase_if(missing, [&](const MissingPrice& each) {
        CostFacts dearer = facts;
        for (Price& price : dearer.prices) {
            if (price.item == each.item && price.medium == mediumOf(each.item, use)) {
                price.amount = price.amount + money(1);
            }
        }
        return costOf(use, dearer).total() == total;
    });
    return missing;
}

std::vector<PriceItem> unpricedItems(const TrayUse& use, const TrayCost& cost,
                                     const std::vector<Price>& prices)
{
    const std::pair<PriceItem, bool> lacking[] = {
        {PriceItem::Medium, !cost.medium},
        {PriceItem::Concentrate, !cost.nutrient},
        {PriceItem::Water, !cost.water},
        {PriceItem::Electricity, !cost.light},
        {PriceItem::Labour, !cost.labour || !cost.washing},
        {PriceItem::Packaging, !cost.packaging},
        {PriceItem::Washing, !cost.washing},
        {PriceItem::Waste, !cost.waste},
    };
    std::vector<PriceItem> items;
    for (const auto& [item, isLacking] : lacking) {
        if (isLacking && !priceOn(prices, item, use.sownOn, mediumOf(item, use))) {
            items.push_back(item);
        }
    }
    return items;
}

std::vector<SeedLack> seedLacks(const TrayUse& use, const CostFacts& facts)
{
    std::vector<SeedLack> lacks;
    const auto lot = use.seedLot ? facts.lots.find(*use.seedLot) : facts.lots.end();
    if (lot == facts.lots.end()) {
        lacks.push_back(SeedLack::Lot);
    } else {
        const SeedLot& bought = lot->second;
        if (!bought.price) {
            lacks.push_back(SeedLack::LotPrice);
        }
        if (!bought.bought || *bought.bought <= Mass{}) {
            lacks.push_back(SeedLack::LotWeight);
        }
    }
    if (!use.seed) {
        lacks.push_back(SeedLack::Seed);
    }
    return lacks;
}

} // namespace plumule
