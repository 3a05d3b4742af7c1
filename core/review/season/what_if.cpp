#include "core/review/season/what_if.h"

#include "core/review/facts/season_facts.h"

#include <algorithm>
#include <limits>

namespace plumule {
namespace {

// Before every tray there is.
constexpr Date kEver{std::numeric_limits<std::int32_t>::min()};

void setPrice(std::vector<Price>& prices, PriceItem item, std::optional<MediumId> medium,
              Money amount)
{
    std::erase_if(prices,
                  [&](const Price& price) { return price.item == item && price.medium == medium; });
    prices.push_back({{}, item, medium, kEver, amount});
}

} // namespace

bool WhatIf::isEmpty() const
{
    return prices.empty() && mediumPrices.empty() && plannedUses.empty() && !seedFactor;
}

void apply(const WhatIf& whatIf, SeasonFacts& facts)
{
    for (const auto& [item, amount] : whatIf.prices) {
        setPrice(facts.cost.prices, item, std::nullopt, amount);
    }
    for (const auto& [medium, amount] : whatIf.mediumPrices) {
        setPrice(facts.cost.prices, PriceItem::Medium, medium, amount);
    }
    if (whatIf.seedFactor) {
        for (auto& [id, lot] : facts.cost.lots) {
            lot.price =
                lot.price ? std::optional(lot.price->scaledBy(*whatIf.seedFactor)) : lot.price;
        }
    }
    for (const auto& [id, uses] : whatIf.plannedUses) {
        const auto medium = facts.media.find(id);
        if (medium != facts.media.end() && medium->second.isReusable) {
            medium->second.plannedUses = uses;
        }
    }
}

} // namespace plumule
