#pragma once

#include "core/cost/cost.h"
#include "core/room/room.h"

#include <QString>

#include <vector>

namespace plumule::ui {

// What a price may be given for, and how much that is of the unit that prices are stored by (a
// litre, a kilogram, a piece, an hour …).
struct PriceUnit
{
    QString name; // "a cubic foot"
    double stored = 1;
};

// The units to choose from, the usual one first. US customary measures are exact by definition
// (NIST Handbook 44, appendix C).
[[nodiscard]] std::vector<PriceUnit> priceUnits(PriceItem item, bool isLooseMix, UnitSystem units);

} // namespace plumule::ui
