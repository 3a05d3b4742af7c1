#pragma once

#include "core/journal/trial/trial_entries.h"

namespace plumule {

class Database;

// See TrialEntries::preparation(). Waterings of a stage are its days times those of a day. NotFound
// where its variety or a medium is not stored.
[[nodiscard]] Result<Preparation> preparationOf(Database& database, const TrialDraft& draft);

} // namespace plumule
