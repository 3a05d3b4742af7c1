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

// The prices that did not hold yet on the day of sowing, and without which a part of the tray's
// cost is not known. Seed has its price with its lot.
[[nodiscard]] std::vector<MissingPrice> missingPrices(const TrayUse& use, CostFacts facts);

} // namespace plumule
