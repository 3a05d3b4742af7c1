#pragma once

#include "core/cost/tray_use.h"

namespace plumule {

// A price that a tray's cost lacks.
struct MissingPrice
{
    PriceItem item = PriceItem::Medium;
    std::optional<Date> from; // when the first one holds; none where there is none at all
    bool operator==(const MissingPrice&) const = default;
};

// The first day that a price of the thing holds; `medium` for what each medium has of its own.
[[nodiscard]] std::optional<Date> firstPriceDay(const std::vector<Price>& prices, PriceItem item,
                                                std::optional<MediumId> medium = std::nullopt);

// The prices that did not hold yet on the day of sowing, and without which a part of the tray's
// cost is not known. Seed has its price with its lot.
[[nodiscard]] std::vector<MissingPrice> missingPrices(const TrayUse& use, CostFacts facts);

// The items whose price a part of that cost lacks, for many trays: whether the tray used any of it
// is told by the part alone. `cost` is costOf() the use.
[[nodiscard]] std::vector<PriceItem> unpricedItems(const TrayUse& use, const TrayCost& cost,
                                                   const std::vector<Price>& prices);

// What the cost of a tray's seed lacks.
enum class SeedLack
{
    Lot,       // the tray names none, which would have a price
    LotPrice,  // what the whole purchase cost
    LotWeight, // what was bought
    Seed       // what was sown on the tray
};
[[nodiscard]] std::vector<SeedLack> seedLacks(const TrayUse& use, const CostFacts& facts);

} // namespace plumule
