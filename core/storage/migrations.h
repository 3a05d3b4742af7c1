#pragma once

#include <vector>

namespace plumule {

// One numbered step of the journal's schema. Never edited once released.
struct Migration
{
    int version = 0;      // the schema it leads to
    const char* sql = ""; // statements, run in one transaction
    // What makes each table and index of the schema that it leads to, as SQLite keeps it.
    const char* schema = "";
};

// The oldest schema whose tables had the columns that they have today, so that what was recorded
// under it can still be taken back. A migration that changes a table raises it to its own version.
inline constexpr int kOldestAlikeSchema = 1;

// All steps, ascending by version from 1.
[[nodiscard]] const std::vector<Migration>& migrations();

} // namespace plumule
