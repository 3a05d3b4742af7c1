#pragma once

#include "core/trial/draw.h"

namespace plumule {

class Database;

// Places free when the draft is to be sown, in walking order: see TrialEntries::draw().
[[nodiscard]] std::vector<Spot> freeSpotsFor(Database& database, const TrialDraft& draft);

// The layout that the draft's number draws among them.
[[nodiscard]] Result<std::vector<PlannedTray>> drawFor(Database& database, const TrialDraft& draft);

} // namespace plumule
