#pragma once

#include "core/base/result.h"

#include <vector>

namespace plumule {

class Database;

// All that is amiss in a journal: what findFaults() finds in the file, words that are none, rules
// that are broken and times that can't be. Of the kind Damaged, with a FaultReason or a
// CheckReason; empty when sound. Throws only what is no damage of the file.
[[nodiscard]] std::vector<Error> checkJournal(Database& database);

} // namespace plumule
