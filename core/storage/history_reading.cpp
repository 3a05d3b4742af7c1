// Part of core/storage/history.h: what stands in the list of intentions.
#include "core/storage/history.h"
#include "core/storage/storage_reason.h"

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
        for (const Pointer& each : pointersOf(std::string(change.table))) {
            if (pointsHere(change, each)) {
                return true;
            }
        }
        return false;
    }

private:
    struct Pointer
    {
        std::size_t place = 0;
        std::string column;
    };

    const std::vector<Pointer>& pointersOf(const std::string& table)
    {
        const auto [found, isNew] = m_pointers.try_emplace(table);
        if (!isNew) {
            return found->second;
        }
        const std::vector<ColumnInfo>& columns = m_database.columnsOf(table);
        Statement keys = m_database.prepare(
            "SELECT \"from\" FROM pragma_foreign_key_list(?1) WHERE \"table\" = ?2");
        keys.bind(table, m_table);
        while (keys.step()) {
            const auto name = keys.get<std::string>(0);
            for (std::size_t i = 0; i < columns.size(); ++i) {
                if (columns[i].name == name) {
                    found->second.push_back({i, name});
                }
            }
        }
        return found->second;
    }
    bool pointsHere(const RowChange& change, const Pointer& pointer)
    {
        const auto holds = [&](const RowChange::Cells& cells) {
            return pointer.place < cells.size() && cells[pointer.place] &&
                   *cells[pointer.place] == Cell(m_row);
        };
        if (holds(change.before) || holds(change.after)) {
            return true;
        }
        // An update tells only what it changed.
        return change.kind == ChangeKind::Update &&
               m_database
                   .prepare("SELECT 1 FROM \"" + std::string(change.table) +
                            "\" WHERE id = ?1 AND \"" + pointer.column + "\" = ?2")
                   .bind(change.id(), m_row)
                   .step();
    }

    Database& m_database;
    std::string m_table;
    std::int64_t m_row;
    std::map<std::string, std::vector<Pointer>> m_pointers;
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
