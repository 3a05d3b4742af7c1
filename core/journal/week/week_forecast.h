#pragma once

#include "core/week/week.h"

namespace plumule {

class Database;

// Foretells sums of trays from this room's own past as it is known at `now`, trays that are thrown
// away counted as nothing. Reads only once it is asked, of the same state; not to be asked later.
[[nodiscard]] Forecaster forecasterOf(Database& database, Moment now);

} // namespace plumule
