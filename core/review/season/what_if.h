#pragma once

#include "core/cost/cost.h"

namespace plumule {

struct SeasonFacts;

// Prices and uses as they might be. Every tray then costs as if they had held when it was sown;
// nothing is stored. A medium's own price is in `mediumPrices`, of a litre of mix or of a piece.
struct WhatIf
{
    std::map<PriceItem, Money> prices;
    std::map<MediumId, Money> mediumPrices;
    std::map<MediumId, int> plannedUses; // of a piece, 1 or more
    std::optional<double> seedFactor;    // what every seed lot cost, times this
    bool operator==(const WhatIf&) const = default;

    [[nodiscard]] bool isEmpty() const;
};

void apply(const WhatIf& whatIf, SeasonFacts& facts);

} // namespace plumule
