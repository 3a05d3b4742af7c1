#pragma once

#include "core/storage/database.h"

#include <compare>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace plumule {

// Which row of which table.
struct RowKey
{
    std::string table;
    std::int64_t id = 0;
    auto operator<=>(const RowKey&) const = default;
};

// All cells of a row in the table's order, the id first; none where there is no such row. For what
// treats all tables alike: concepts read their rows by TableOf.
using WholeRow = std::vector<Cell>;
using RowState = std::optional<WholeRow>;

[[nodiscard]] RowState wholeRow(Database& database, const RowKey& key);
// Inserts it, writes all its cells, or removes it. Inside a transaction.
void putRow(Database& database, const RowKey& key, const RowState& row);
// All of them, those that go first. What points at what is asked when the transaction commits.
void putRows(Database& database, const std::map<RowKey, RowState>& rows);

// The ids of the rows whose column holds that cell; ascending.
[[nodiscard]] std::vector<std::int64_t> rowsWhere(Database& database, const std::string& table,
                                                  const std::string& column, const Cell& cell);

// A column that points at another table's id.
struct Pointer
{
    std::size_t column = 0; // its place in the table
    std::string table;      // that it points at
};
[[nodiscard]] std::vector<Pointer> pointersOf(Database& database, const std::string& table);

// All rows with a column that points at that row.
[[nodiscard]] std::vector<RowKey> rowsPointingAt(Database& database, const RowKey& key);

// The place of the column in its table; none where it has no such column.
[[nodiscard]] std::optional<std::size_t> placeOfColumn(Database& database, const std::string& table,
                                                       std::string_view column);

// The whole number in that cell; 0 for anything else.
[[nodiscard]] std::int64_t wholeIn(const Cell& cell);
// The text in that cell; empty for anything else.
[[nodiscard]] std::string textIn(const Cell& cell);

} // namespace plumule
