#pragma once

#include "core/week/week.h"

namespace plumule {

class Database;

// The week of that moment, without trays of which a row can't be read; they are named.
[[nodiscard]] Week wholeWeek(Database& database, Moment now);

} // namespace plumule
