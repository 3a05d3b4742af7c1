#pragma once

#include "core/exchange/sheet_keeper.h"
#include "core/exchange/table_keepers.h"

namespace plumule {

// Of stages, waterings, heights, cuts and residues; null of others.
[[nodiscard]] std::unique_ptr<StoringKeeper> trayRowKeeper(TableKind kind, Database& database,
                                                           Date today);

} // namespace plumule
