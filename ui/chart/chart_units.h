#pragma once

#include "core/chart/chart_spec.h"
#include "core/room/room.h"

namespace plumule::ui {

// The same chart as the room shows its amounts: lengths and weights in US customary units where it
// does, a cost of a gram in the unit that gives it two to four figures. What is saved as numbers
// stays SI.
[[nodiscard]] ChartSpec shownIn(ChartSpec spec, UnitSystem units);

} // namespace plumule::ui
