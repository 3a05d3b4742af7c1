#pragma once

#include "core/storage/column_traits.h"

#include <functional>
#include <optional>
#include <string_view>
#include <vector>

namespace plumule {

enum class ChangeKind
{
    Insert,
    Update,
    Delete
};

// One row of a changeset. A cell that the changeset doesn't hold (a column that an update leaves
// alone) is none.
struct RowChange
{
    using Cells = std::vector<std::optional<Cell>>;

    ChangeKind kind = ChangeKind::Insert;
    std::string_view table;
    Cells before; // empty for an insert
    Cells after;  // empty for a delete

    // Of the first column, which is every table's id; 0 where it holds none.
    [[nodiscard]] std::int64_t id() const;
};

// Hands on one row after the other, valid until the call ends. False where the bytes are no
// changeset in the form that SQLite's session extension documents (sqlite.org, "The session
// extension", changeset format), with tables whose first column is the key; what was handed on
// before that is then worth nothing. Never reads beyond the bytes, never runs without end.
[[nodiscard]] bool walkChangeset(std::string_view bytes,
                                 const std::function<void(const RowChange&)>& onRow);

} // namespace plumule
