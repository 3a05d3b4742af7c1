#pragma once

#include "core/exchange/table_keepers.h"

namespace plumule {

// Of scores.
[[nodiscard]] std::unique_ptr<StoringKeeper> scoreKeeper(Database& database, Date today);

} // namespace plumule
