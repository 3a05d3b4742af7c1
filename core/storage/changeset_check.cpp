#include "core/storage/changeset_check.h"

#include "core/storage/cell_bounds.h"
#include "core/storage/faults.h"

#include <numeric>
#include <sqlite3.h>

namespace plumule {
namespace {

StorageFailure beyondBounds(BoundsReason reason, const RowChange& change, const ColumnInfo& column,
                            const Cell& cell)
{
    std::vector<std::string> values = {shownCell(cell), column.name};
    if (reason == BoundsReason::Amount) {
        const bool isReal = column.type == "REAL";
        const NumberBounds bounds = isReal ? column.bounds.ofReals() : column.bounds.ofWholes();
        values.push_back(shownCell(bounds.least));
        values.push_back(shownCell(bounds.most));
    } else if (reason == BoundsReason::TextLength) {
        values.push_back(std::to_string(column.bounds.longestText()));
    }
    return StorageFailure(Error{ErrorKind::Invalid, reason, std::move(values),
                                RowAt{std::string(change.table), change.id()}});
}

// The columns of a changeset's tables, which follow one another row by row.
class ColumnsInTurn
{
public:
    explicit ColumnsInTurn(Database& database)
        : m_database(database)
    {}

    const std::vector<ColumnInfo>& of(std::string_view table)
    {
        if (m_columns == nullptr || table != m_table) {
            m_table = table;
            m_columns = &m_database.columnsOf(m_table);
        }
        return *m_columns;
    }

private:
    Database& m_database;
    std::string m_table;
    const std::vector<ColumnInfo>* m_columns = nullptr;
};

// Throws for the first cell that no journal may hold.
void checkWritten(const std::vector<ColumnInfo>& columns, const RowChange& change,
                  const RowChange::Cells& written)
{
    for (std::size_t i = 0; i < written.size() && i < columns.size(); ++i) {
        if (!written[i]) {
            continue;
        }
        if (const auto fault = columns[i].bounds.fault(*written[i])) {
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

bool areWithinBounds(const RowChange::Cells& written, const std::vector<ColumnInfo>& columns)
{
    for (std::size_t i = 0; i < written.size(); ++i) {
        if (written[i] && columns[i].bounds.fault(*written[i])) {
            return false;
        }
    }
    return true;
}

// A changeset tells of one table after the other.
void add(std::vector<ChangedRows>& rows, const RowChange& change, WayThrough way)
{
    const bool isGone =
        change.kind == (way == WayThrough::Back ? ChangeKind::Insert : ChangeKind::Delete);
    for (auto each = rows.rbegin(); each != rows.rend() && each->table == change.table; ++each) {
        if (each->areGone == isGone) {
            each->ids.push_back(change.id());
            return;
        }
    }
    rows.push_back({std::string(change.table), {change.id()}, isGone});
}

// Whether the row makes sense for this journal, whatever is written of it.
bool fits(const RowChange& change, const std::vector<ColumnInfo>& columns)
{
    return isTrackedTable(change.table) && !columns.empty() && fits(change.before, columns) &&
           fits(change.after, columns);
}

} // namespace

bool isTrackedTable(std::string_view table)
{
    return table != "history" && table != "copy" && table != "taken_copy" &&
           !table.starts_with("sqlite_");
}

std::int64_t countOf(const std::vector<ChangedRows>& rows)
{
    return std::accumulate(rows.begin(), rows.end(), std::int64_t{0},
                           [](std::int64_t sum, const ChangedRows& each) {
                               return sum + static_cast<std::int64_t>(each.ids.size());
                           });
}

WrittenRows::WrittenRows(Database& database)
    : m_database(database)
    , m_walk([this, columns = ColumnsInTurn(database)](const RowChange& change) mutable {
        checkWritten(columns.of(change.table), change, change.after);
        add(m_rows, change, WayThrough::Forth);
    })
{}

std::vector<ChangedRows> WrittenRows::rows()
{
    if (!m_walk.isWhole()) {
        m_database.throwFailure(SQLITE_CORRUPT, "changeset");
    }
    return std::move(m_rows);
}

std::optional<std::vector<ChangedRows>> rowsIfSound(Database& database, std::string_view bytes,
                                                    WayThrough way)
{
    std::vector<ChangedRows> rows;
    ColumnsInTurn columns(database);
    bool areSound = true;
    const bool isWhole = walkChangeset(bytes, [&](const RowChange& change) {
        const auto& of = columns.of(change.table);
        areSound = areSound && fits(change, of) &&
                   areWithinBounds(way == WayThrough::Back ? change.before : change.after, of);
        add(rows, change, way);
    });
    return isWhole && areSound ? std::optional(std::move(rows)) : std::nullopt;
}

bool isSoundBothWays(Database& database, std::string_view bytes)
{
    ColumnsInTurn columns(database);
    bool areSound = true;
    const bool isWhole = walkChangeset(bytes, [&](const RowChange& change) {
        const auto& of = columns.of(change.table);
        areSound = areSound && fits(change, of) && areWithinBounds(change.before, of) &&
                   areWithinBounds(change.after, of);
    });
    return isWhole && areSound;
}

} // namespace plumule
