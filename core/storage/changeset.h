#pragma once

#include "core/storage/row_effect.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace plumule {

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

using OnRowChange = std::function<void(const RowChange&)>;

// Hands on one row of a stored changeset after the other, valid until the call ends. False where
// the bytes, unpacked where they are packed, are no changeset in the form that SQLite's session
// extension documents (sqlite.org, "The session extension", changeset format), with tables whose
// first column is the key; what was handed on before that is then worth nothing. Never reads beyond
// the bytes, never runs without end.
[[nodiscard]] bool walkChangeset(std::string_view stored, const OnRowChange& onRow);

// The same for a changeset as SQLite writes it that comes piece by piece, cut anywhere.
class ChangesetWalk
{
public:
    explicit ChangesetWalk(OnRowChange onRow)
        : m_onRow(std::move(onRow))
    {}

    // False where no row can be as long as what is not understood yet.
    bool feed(std::string_view piece);
    // Whether all that came was a changeset to its end.
    [[nodiscard]] bool isWhole() const { return m_unread.empty(); }

private:
    // Reads on while it understands; how many bytes that were.
    std::size_t read(std::string_view bytes);

    OnRowChange m_onRow;
    RowChange m_change;
    std::string m_table;
    std::size_t m_columns = 0; // none before the first table
    std::string m_unread;
};

} // namespace plumule
