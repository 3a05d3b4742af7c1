#pragma once

#include "core/base/progress.h"
#include "core/storage/database.h"
#include "core/storage/fault_reason.h"

namespace plumule {

// Every fault that SQLite's own checks, the bounds of cells and the history's checksums find: of
// the kind Damaged, with a FaultReason and the row; empty when sound. Goes on where a page can't be
// read, so that what lies behind it is found too. Throws only what is no damage of the file;
// Cancelled where it is stopped.
[[nodiscard]] std::vector<Error> findFaults(Database& database, const Progress& progress = {});

// One such fault.
template <ReasonEnum R, class... Values>
[[nodiscard]] Error foundAt(std::string table, std::int64_t row, R reason, Values&&... values)
{
    Error error = fail(ErrorKind::Damaged, reason, std::forward<Values>(values)...).value();
    error.row = RowAt{std::move(table), row};
    return error;
}

// What a cell holds, for one who looks for it in words: of a text its beginning.
[[nodiscard]] std::string shownCell(const Cell& cell);

// The tables that intentions write to, as the schema lists them: those that are pointed at come
// before those that point at them.
[[nodiscard]] std::vector<std::string> trackedTablesOf(Database& database);

// What a row's cells break of what its table declares: the number of the first column whose cell is
// missing where there has to be one, of another type, or beyond bounds.
struct DeclaredColumn
{
    ColumnInfo info;
    bool mayBeEmpty = false;
};
[[nodiscard]] std::vector<DeclaredColumn> declaredColumnsOf(Database& database,
                                                            const std::string& table);
[[nodiscard]] std::optional<std::size_t> firstBadCell(const std::vector<DeclaredColumn>& columns,
                                                      const std::vector<Cell>& cells);

} // namespace plumule
