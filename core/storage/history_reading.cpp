// Part of core/storage/history.h: what stands in the list of intentions.
#include "core/storage/history.h"
#include "core/storage/storage_reason.h"
#include "core/storage/whole_row.h"

#include <algorithm>
#include <map>

namespace plumule {
namespace {

constexpr const char* kEntryColumns =
    "SELECT id, at_utc_ms, intention, subject, row_count, state, details FROM history ";

std::vector<std::string> detailsIn(const std::string& text)
{
    std::vector<std::string> details;
    for (std::size_t from = 0, to = 0; (to = text.find('\n', from)) != std::string::npos;
         from = to + 1) {
        details.push_back(text.substr(from, to - from));
    }
    return details;
}

HistoryEntry readEntry(const Statement& statement)
{
    return {statement.get<HistoryId>(0),
            statement.get<std::int64_t>(1),
            statement.get<std::string>(2),
            statement.get<std::string>(3),
            statement.get<std::int64_t>(4),
            statement.get<HistoryState>(5),
            detailsIn(statement.get<std::string>(6))};
}

std::optional<HistoryEntry> oneEntry(Database& database, const std::string& tail)
{
    Statement statement = database.prepare(kEntryColumns + tail);
    if (!statement.step()) {
        return std::nullopt;
    }
    return readEntry(statement);
}

// Which columns of a table say to which row of another it belongs.
class Belonging
{
public:
    Belonging(Database& database, std::string table, std::int64_t row)
        : m_database(database)
        , m_table(std::move(table))
        , m_row(row)
    {}

    [[nodiscard]] bool isAbout(const RowChange& change)
    {
        if (change.table == m_table) {
            return change.id() == m_row;
        }
        const std::vector<std::size_t>& columns = columnsHere(std::string(change.table));
        return std::any_of(columns.begin(), columns.end(),
                           [&](std::size_t column) { return pointsHere(change, column); });
    }

private:
    const std::vector<std::size_t>& columnsHere(const std::string& table)
    {
        const auto [found, isNew] = m_columns.try_emplace(table);
        if (isNew) {
            for (const Pointer& each : pointersOf(m_database, table)) {
                if (each.table == m_table) {
                    found->second.push_back(each.column);
                }
            }
        }
        return found->second;
    }
    bool pointsHere(const RowChange& change, std::size_t column)
    {
        const auto holds = [&](const RowChange::Cells& cells) {
            return column < cells.size() && cells[column] && *cells[column] == Cell(m_row);
        };
        if (holds(change.before) || holds(change.after)) {
            return true;
        }
        if (change.kind != ChangeKind::Update) {
            return false;
        }
        // An update tells only what it changed.
        const RowState row = wholeRow(m_database, {std::string(change.table), change.id()});
        return row && column < row->size() && (*row)[column] == Cell(m_row);
    }

    Database& m_database;
    std::string m_table;
    std::int64_t m_row;
    std::map<std::string, std::vector<std::size_t>> m_columns; // of each table met
};

} // namespace

std::vector<HistoryEntry> History::latest(int count) const
{
    Statement statement =
        m_database.prepare(std::string(kEntryColumns) + "ORDER BY id DESC LIMIT ?1");
    statement.bind(count);
    std::vector<HistoryEntry> entries;
    while (statement.step()) {
        // One that can't be read keeps its place.
        HistoryEntry& entry = entries.emplace_back();
        entry.id = statement.get<HistoryId>(0);
        try {
            entry = readEntry(statement);
        } catch (const StorageFailure& failure) {
            if (failure.error().kind != ErrorKind::Damaged) {
                throw;
            }
        }
    }
    return entries;
}

std::optional<HistoryEntry> History::nextUndo() const
{
    return oneEntry(m_database, "WHERE state = 'done' ORDER BY id DESC LIMIT 1");
}

std::optional<HistoryEntry> History::nextRedo() const
{
    return oneEntry(m_database, "WHERE state = 'undone' ORDER BY undone_order DESC LIMIT 1");
}

Result<HistoryEntry> History::standing(HistoryId id) const
{
    const auto entry =
        id.isStored() ? oneEntry(m_database, "WHERE id = " + std::to_string(id.value)) : nextUndo();
    if (!entry || entry->state != HistoryState::Standing) {
        return fail(ErrorKind::NothingThere, StorageReason::NothingToTakeBack);
    }
    return *entry;
}

std::set<HistoryId> History::latestAbout(const std::string& table, std::int64_t row,
                                         int count) const
{
    std::set<HistoryId> about;
    Belonging belonging(m_database, table, row);
    Statement statement =
        m_database.prepare("SELECT id, changeset FROM history ORDER BY id DESC LIMIT ?1");
    statement.bind(count);
    while (statement.step()) {
        bool isAbout = false;
        // Of one that is damaged, what could be read of it counts.
        (void)walkChangeset(statement.get<std::string>(1), [&](const RowChange& change) {
            isAbout = isAbout || belonging.isAbout(change);
        });
        if (isAbout) {
            about.insert(statement.get<HistoryId>(0));
        }
    }
    return about;
}

} // namespace plumule
