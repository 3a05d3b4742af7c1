#pragma once

#include "core/base/result.h"
#include "core/journal/ledger/intention.h"
#include "core/tray/tray_move.h"

namespace plumule {

class Database;

// Moves trays about, all of them or none: a place that one of them leaves is free for another. What
// came of it goes into the deed. Nothing is done of a tray that stands there already. NotFound;
// Conflict for a tray that has ended, is moved twice, or lands on a place that is taken then;
// Invalid before it came to its place. Inside a transaction.
[[nodiscard]] Done moveTrays(Database& database, const std::vector<TrayMove>& moves, Moment at,
                             Deed& deed);

} // namespace plumule
