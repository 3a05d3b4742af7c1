#pragma once

#include "core/watering/watering.h"

namespace plumule {

// Missing where neither value is given; Invalid beyond pH 0–14 or EC 0–20 000 µS/cm.
[[nodiscard]] Done checkReading(const WaterReading& reading);

// Invalid: a negative dose, a band beyond what can be read or upside down.
[[nodiscard]] Done checkRecipe(const WaterRecipe& recipe);

// Invalid: a negative amount, no method, a minute beyond the day.
[[nodiscard]] Done checkGiven(const Watering& watering);

} // namespace plumule
