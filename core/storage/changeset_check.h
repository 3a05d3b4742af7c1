#pragma once

#include "core/storage/database.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumule {

// A row that changed.
struct ChangedRow
{
    std::string table;
    std::int64_t id = 0;
};

// Which side of a changeset is written: what was before, or what came after.
enum class WayThrough
{
    Back,
    Forth
};

// History itself, the id counter and the numbers of copies are not part of what is recorded and
// undone.
[[nodiscard]] bool isTrackedTable(std::string_view table);

// The rows that an intention changed. Throws Invalid with a BoundsReason and the row for a cell
// beyond what a journal may hold: it stands at the one door that every intention and every import
// goes through.
[[nodiscard]] std::vector<ChangedRow> checkedRows(Database& database, std::string_view bytes);

// The rows that applying the stored bytes changes. None where they make no sense for this journal:
// no changeset, a table or a number of columns that it doesn't have, a cell of another type or
// beyond bounds. A matching checksum is no proof of sense: the file may come from anywhere.
[[nodiscard]] std::optional<std::vector<ChangedRow>>
rowsIfSound(Database& database, std::string_view bytes, WayThrough way);
// Whether there are such, back and forth.
[[nodiscard]] bool isSoundBothWays(Database& database, std::string_view bytes);

} // namespace plumule
