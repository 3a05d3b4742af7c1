#pragma once

#include "core/base/result.h"
#include "core/trial/trial_plan.h"

namespace plumule {

class Database;

// A plan to begin with: see TrialEntries::newDraft(). Missing VarietyMissing where no variety has
// a protocol.
[[nodiscard]] Result<TrialDraft> usualDraft(Database& database, Moment now,
                                            std::int64_t drawNumber);

} // namespace plumule
