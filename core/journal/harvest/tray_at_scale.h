#pragma once

#include "core/harvest/weighing.h"

namespace plumule {

class Database;

// Conflict for a tray that was discarded.
[[nodiscard]] Done checkNotDiscarded(const Tray& tray);

// What a weighing of the tray is held against. A cut that is being corrected is left out.
[[nodiscard]] WeighingFacts factsAtScale(Database& database, const Tray& tray, Weighing what,
                                         const Harvest* corrected = nullptr);

// What was weighed of a cut; of one that came without its bowls, the net as one bowl.
[[nodiscard]] std::vector<Bowl> bowlsAtScale(Database& database, const Harvest& cut);

// As HarvestEntries promises them.
[[nodiscard]] Result<TrayAtScale> trayAtScale(Database& database, const std::string& code,
                                              Weighing what, Date today);
[[nodiscard]] Result<CutAtScale> cutAtScale(Database& database, HarvestId cut, Date today);

} // namespace plumule
