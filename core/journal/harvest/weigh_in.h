#pragma once

#include "core/harvest/harvest.h"

namespace plumule {

class Database;

// As HarvestEntries promises them.
[[nodiscard]] WeighIn weighInOn(Database& database, Date date);
[[nodiscard]] std::vector<DueRow> residuesDueOn(Database& database, Date date);
[[nodiscard]] Result<std::optional<TrialSoFar>> trialSoFarOf(Database& database, TrayId tray);

} // namespace plumule
