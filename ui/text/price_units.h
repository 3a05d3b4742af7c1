#pragma once

#include "core/cost/cost.h"
#include "core/room/room.h"

#include <QString>

#include <optional>
#include <vector>

namespace plumule::ui {

// What a price may be given for.
struct PriceUnit
{
    QString name; // "a cubic foot"
    PriceMeasure measure = PriceMeasure::Unit;
};

// The measures to choose from, the usual one first. The one that a price was given for is among
// them, whatever is usual.
[[nodiscard]] std::vector<PriceUnit> priceUnits(PriceItem item, bool isLooseMix, UnitSystem units,
                                                std::optional<PriceMeasure> given = std::nullopt);

} // namespace plumule::ui
