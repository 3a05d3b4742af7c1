#pragma once

#include "core/exchange/row_cells.h"

namespace plumule {

class Database;

// Rows of a table that are found by a name; a name that two of them have finds none.
class KnownByName
{
public:
    void learn(const std::string& name, std::int64_t id);
    // None, and noted, where the cell names none, or more than one.
    [[nodiscard]] std::optional<std::int64_t> in(RowCells& cells, std::string_view column) const;

private:
    std::unordered_map<std::string, std::int64_t> m_ids;
};

// The rows of a table with a column "name".
[[nodiscard]] KnownByName knownNames(Database& database, std::string_view table);

} // namespace plumule
