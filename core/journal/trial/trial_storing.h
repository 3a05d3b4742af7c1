#pragma once

#include "core/base/result.h"
#include "core/trial/trial_plan.h"

namespace plumule {

class Database;

// The code that the next trial gets.
[[nodiscard]] std::string freeTrialCode(Database& database);

// Stores a trial, tidied, new where its id is not stored. Errors as TrialEntries::save(). Inside a
// transaction.
[[nodiscard]] Done storeTrial(Database& database, Trial& trial);

// Stores a trial with its plan, by block and position, as one that is not sown. Errors as
// TrialEntries::savePlan(). Inside a transaction.
[[nodiscard]] Done storeDraft(Database& database, TrialDraft& draft);

} // namespace plumule
