#pragma once

#include "core/storage/database.h"

#include <map>
#include <set>

namespace plumule {

using RowsById = std::map<std::int64_t, std::vector<Cell>>;

// What could be read of a table whose pages may be damaged.
struct ReadRows
{
    RowsById rows;               // in the order of the columns asked for
    std::set<std::int64_t> lost; // known of by an index, and not to be read
    bool isWhole = true;         // from end to end
    bool isLostKnown = false;    // an index named every row there is
    std::int64_t before = 0;     // rows may be lost that come after this one
    std::int64_t behind = 0;     // and before this one; where it is not whole
};

// How the columns that the table has in the new journal are read from the old one: each by its
// name, or what it is where an older schema doesn't have it. Empty where the old journal has no
// such table.
[[nodiscard]] std::vector<std::string> readableColumns(Database& old, Database& fresh,
                                                       const std::string& table);

// Reads a table from both ends, and what lies between row by row. `columns` are expressions of the
// table's columns, the id first. Throws only what is no damage.
[[nodiscard]] ReadRows readRows(Database& database, const std::string& table,
                                const std::vector<std::string>& columns);

} // namespace plumule
