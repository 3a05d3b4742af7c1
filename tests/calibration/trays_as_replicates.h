#pragma once

#include "room.h"

namespace plumule::calibration {

// A model of the grams with medium, variety and the sowings' blocks, every tray a replicate, and
// Tukey's intervals at 5 %: whether it says more or less of media that are equal (or the wrong way
// round). What a season's answer must not be.
[[nodiscard]] bool saysFalseByTrays(const std::vector<SownTray>& trays, const Rules& rules);

} // namespace plumule::calibration
