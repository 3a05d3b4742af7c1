#pragma once

#include "core/storage/changeset.h"
#include "core/storage/database.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumule {

// Rows of one table that changed, or that are gone by it.
struct ChangedRows
{
    std::string table;
    std::vector<std::int64_t> ids;
    bool areGone = false;
};
[[nodiscard]] std::int64_t countOf(const std::vector<ChangedRows>& rows);

// Which side of a changeset is written: what was before, or what came after.
enum class WayThrough
{
    Back,
    Forth
};

// History itself, the id counter and the numbers of copies are not part of what is recorded and
// undone.
[[nodiscard]] bool isTrackedTable(std::string_view table);

// The rows that an intention changed, from its changeset as SQLite hands it over piece by piece.
class WrittenRows
{
public:
    explicit WrittenRows(Database& database);
    WrittenRows(const WrittenRows&) = delete;
    WrittenRows& operator=(const WrittenRows&) = delete;

    // Throws Invalid with a BoundsReason and the row for a cell beyond what a journal may hold: it
    // stands at the one door that every intention and every import goes through.
    void take(std::string_view piece) { m_walk.feed(piece); }
    // When all was handed over, once. Throws Damaged where that is no changeset.
    [[nodiscard]] std::vector<ChangedRows> rows();

private:
    Database& m_database;
    std::vector<ChangedRows> m_rows;
    ChangesetWalk m_walk;
};

// The rows that applying the stored bytes changes. None where they make no sense for this journal:
// no changeset, a table or a number of columns that it doesn't have, a cell of another type or
// beyond bounds. A matching checksum is no proof of sense: the file may come from anywhere.
[[nodiscard]] std::optional<std::vector<ChangedRows>>
rowsIfSound(Database& database, std::string_view bytes, WayThrough way);
// Whether there are such, back and forth.
[[nodiscard]] bool isSoundBothWays(Database& database, std::string_view bytes);

} // namespace plumule
