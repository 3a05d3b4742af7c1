#pragma once

#include "core/watering/watering.h"

namespace plumule {

// Missing where neither value is given; Invalid beyond pH 0–14 or EC 0–20 000 µS/cm.
[[nodiscard]] Done checkReading(const WaterReading& reading);

// Invalid: a negative dose, a band beyond what can be read or upside down.
[[nodiscard]] Done checkRecipe(const WaterRecipe& recipe);

// Missing: no tray. Conflict: one that is no longer growing. Invalid: as below, ahead of now, or
// before a tray's first stage began.
[[nodiscard]] Done checkBetween(const BetweenDraft& draft, const std::vector<TrayRecord>& trays,
                                Moment now);

// Invalid: a negative amount, no method, a minute beyond the day.
[[nodiscard]] Done checkGiven(const Watering& watering);

} // namespace plumule
