#pragma once

#include "core/cost/missing_price.h"

#include <QString>

namespace plumule::ui {

// "There is no price of washing a piece."; a medium goes by its name.
[[nodiscard]] QString sentence(const MissingPrice& missing, const QString& medium);

// "Its seed lot lacks a price."
[[nodiscard]] QString sentence(SeedLack lack);

} // namespace plumule::ui
