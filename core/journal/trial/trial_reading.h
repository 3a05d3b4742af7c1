#pragma once

#include "core/base/result.h"
#include "core/trial/trial_progress.h"

namespace plumule {

class Database;

// How a trial goes; NotFound.
[[nodiscard]] Result<TrialProgress> progressOf(Database& database, TrialId trial, Date today);

// What was written and photographed of its trays: days with any, oldest first.
[[nodiscard]] std::vector<TrialDay> diaryOf(Database& database, const TrialProgress& progress);

} // namespace plumule
