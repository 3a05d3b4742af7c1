#pragma once

#include "core/base/date.h"
#include "core/base/progress.h"
#include "core/base/result.h"

#include <filesystem>

namespace plumule {

class Database;

// Fills a fresh journal with the invented demo room of sample-data/ (its README tells the columns),
// as it stands at `now`: day 0 is today, nothing is later than now, every round before the present
// one is watered but for the misses listed, and of the present one the first shelf. Unreadable or
// Invalid, with file and line, for a fault in the tables; Conflict where trays stand in the journal
// already; Cancelled. Inside a transaction.
[[nodiscard]] Done storeSampleRoom(Database& database, const std::filesystem::path& folder,
                                   Moment now, const Progress& progress);

} // namespace plumule
