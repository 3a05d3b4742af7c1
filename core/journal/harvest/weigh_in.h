#pragma once

#include "core/harvest/weighing.h"

namespace plumule {

class Database;

// As HarvestEntries promises them.
[[nodiscard]] WeighIn weighInOn(Database& database, Date date);
[[nodiscard]] std::vector<DueRow> residuesDueOn(Database& database, Date date);

// The trial that the tray is in, as far as it is weighed; none for a tray of no trial.
[[nodiscard]] std::optional<TrialSoFar> trialSoFarOf(Database& database, const Tray& tray);

} // namespace plumule
