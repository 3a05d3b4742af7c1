#include "core/storage/changeset_check.h"

#include "core/storage/cell_bounds.h"
#include "core/storage/changeset.h"
#include "core/storage/faults.h"

#include <sqlite3.h>

namespace plumule {
namespace {

StorageFailure beyondBounds(BoundsReason reason, const RowChange& change, const ColumnInfo& column,
                            const Cell& cell)
{
    std::vector<std::string> values = {shownCell(cell), column.name};
    if (reason == BoundsReason::Amount) {
        const NumberBounds bounds = numberBounds(column);
        values.push_back(shownCell(bounds.least));
        values.push_back(shownCell(bounds.most));
    } else if (reason == BoundsReason::TextLength) {
        values.push_back(std::to_string(longestText(column.name)));
    }
    return StorageFailure(Error{ErrorKind::Invalid, reason, std::move(values),
                                RowAt{std::string(change.table), change.id()}});
}

// Throws for the first cell that no journal may hold.
void checkWritten(Database& database, const RowChange& change, const RowChange::Cells& written)
{
    const auto& columns = database.columnsOf(std::string(change.table));
    for (std::size_t i = 0; i < written.size() && i < columns.size(); ++i) {
        if (!written[i]) {
            continue;
        }
        if (const auto fault = boundsFault(columns[i].name, *written[i])) {
            throw beyondBounds(*fault, change, columns[i], *written[i]);
        }
    }
}

// Whether the cells may be applied to that table: of its columns' number and types.
bool fits(const RowChange::Cells& cells, const std::vector<ColumnInfo>& columns)
{
    if (cells.size() > columns.size()) { // an older schema may have had fewer
        return false;
    }
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (!cells[i] || std::holds_alternative<std::monostate>(*cells[i])) {
            continue;
        }
        const bool isText = std::holds_alternative<std::string>(*cells[i]);
        const bool isReal = std::holds_alternative<double>(*cells[i]);
        if (isText != (columns[i].type == "TEXT") || (isReal && columns[i].type != "REAL")) {
            return false;
        }
    }
    return true;
}

} // namespace

bool isTrackedTable(std::string_view table)
{
    return table != "history" && table != "copy" && table != "taken_copy" &&
           !table.starts_with("sqlite_");
}

std::vector<ChangedRow> checkedRows(Database& database, std::string_view bytes)
{
    std::vector<ChangedRow> rows;
    const bool isWhole = walkChangeset(bytes, [&](const RowChange& change) {
        checkWritten(database, change, change.after);
        rows.push_back({std::string(change.table), change.id()});
    });
    if (!isWhole) {
        database.throwFailure(SQLITE_CORRUPT, "changeset");
    }
    return rows;
}

std::optional<std::vector<ChangedRow>> rowsIfSound(Database& database, std::string_view bytes,
                                                   WayThrough way)
{
    std::vector<ChangedRow> rows;
    bool areSound = true;
    const bool isWhole = walkChangeset(bytes, [&](const RowChange& change) {
        const std::string table(change.table);
        const auto& columns = database.columnsOf(table);
        const auto& written = way == WayThrough::Back ? change.before : change.after;
        areSound = areSound && isTrackedTable(table) && !columns.empty() &&
                   fits(change.before, columns) && fits(change.after, columns);
        for (std::size_t i = 0; areSound && i < written.size(); ++i) {
            areSound = !written[i] || !boundsFault(columns[i].name, *written[i]);
        }
        rows.push_back({table, change.id()});
    });
    return isWhole && areSound ? std::optional(std::move(rows)) : std::nullopt;
}

} // namespace plumule
