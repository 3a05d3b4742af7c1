#include "core/storage/history_since.h"

#include "core/storage/checksum.h"
#include "core/storage/migrations.h"

#include <algorithm>
#include <set>

namespace plumule {
namespace {

// An entry with its changeset, as stored.
struct StoredAct
{
    ActSince act;
    std::int64_t droppedBy = 0;
    std::string bytes;
    bool isWhole = false;
};

StoredAct readAct(const Statement& statement)
{
    StoredAct stored;
    stored.act = {statement.get<HistoryId>(0), statement.get<std::int64_t>(1),
                  statement.get<std::string>(2), statement.get<HistoryState>(3)};
    stored.droppedBy = statement.get<std::optional<std::int64_t>>(4).value_or(0);
    stored.bytes = statement.get<std::string>(5);
    stored.isWhole =
        static_cast<std::int64_t>(stored.bytes.size()) == statement.get<std::int64_t>(6) &&
        checksumOf(stored.bytes) == statement.get<std::int64_t>(7) &&
        statement.get<std::int64_t>(8) >= kOldestAlikeSchema;
    return stored;
}

// What is known so far of a row at the mark, put together from what changes held of it.
struct Gathered
{
    std::vector<std::optional<Cell>> cells;
    bool isAbsent = false;
    bool isWhole = false; // no later change can add to it
    int olderTouches = 0;
    int newerTouches = 0;
    std::int64_t lastAtUtcMs = 0;
};

void gather(Gathered& row, const RowChange::Cells& before, ChangeKind kind, std::size_t columns)
{
    if (row.isWhole) {
        return;
    }
    row.cells.resize(columns);
    if (kind == ChangeKind::Insert) {
        row.isAbsent = std::none_of(row.cells.begin(), row.cells.end(),
                                    [](const auto& cell) { return cell.has_value(); });
        row.isWhole = true;
        return;
    }
    for (std::size_t i = 0; i < before.size() && i < columns; ++i) {
        if (before[i] && !row.cells[i]) {
            row.cells[i] = before[i];
        }
    }
    row.isWhole = kind == ChangeKind::Delete;
}

class Walk
{
public:
    Walk(Database& database, const HistoryMark& mark)
        : m_database(database)
        , m_mark(mark)
        , m_undone(mark.undone.begin(), mark.undone.end())
    {}

    // Older entries whose state is another one than at the mark.
    Done older();
    Done newer(std::vector<ActSince>& acts);
    [[nodiscard]] std::map<RowKey, RowSince> rows();

private:
    Done take(const StoredAct& stored, WayThrough before);
    [[nodiscard]] bool stoodThen(const StoredAct& stored) const;

    Database& m_database;
    const HistoryMark& m_mark;
    std::set<HistoryId> m_undone;
    std::map<RowKey, Gathered> m_gathered;
};

constexpr const char* kActs =
    "SELECT id, at_utc_ms, intention, state, dropped_by, changeset, changeset_bytes, "
    "changeset_crc, schema_version FROM history ";

bool Walk::stoodThen(const StoredAct& stored) const
{
    const bool wasDroppedThen =
        stored.act.state == HistoryState::Dropped && stored.droppedBy < m_mark.from;
    return !wasDroppedThen && !m_undone.contains(stored.act.id);
}

Done Walk::older()
{
    Statement statement = m_database.prepare(
        std::string(kActs) + "WHERE id < ?1 AND (state = 'undone' OR dropped_by >= ?1 OR "
                             "id IN (SELECT value FROM json_each(?2))) ORDER BY id");
    std::string list;
    for (const HistoryId id : m_undone) {
        list += (list.empty() ? "" : ",") + std::to_string(id.value);
    }
    statement.bind(m_mark.from, "[" + list + "]");
    while (statement.step()) {
        const StoredAct stored = readAct(statement);
        const bool stands = stored.act.state == HistoryState::Standing;
        if (stands == stoodThen(stored)) {
            continue;
        }
        // Taken back since: what its changeset holds as after was before.
        if (auto taken = take(stored, stands ? WayThrough::Forth : WayThrough::Back); !taken) {
            return taken;
        }
    }
    return {};
}

Done Walk::newer(std::vector<ActSince>& acts)
{
    Statement statement = m_database.prepare(std::string(kActs) + "WHERE id >= ?1 ORDER BY id");
    statement.bind(m_mark.from);
    while (statement.step()) {
        const StoredAct stored = readAct(statement);
        if (auto taken = take(stored, WayThrough::Forth); !taken) {
            return taken;
        }
        acts.push_back(stored.act);
    }
    return {};
}

Done Walk::take(const StoredAct& stored, WayThrough way)
{
    if (!stored.isWhole || !rowsIfSound(m_database, stored.bytes, way)) {
        return fail(ErrorKind::Damaged, StorageReason::EntryDamaged, stored.act.id.value);
    }
    const bool isOlder = stored.act.id.value < m_mark.from;
    // Sound, as was found a line above.
    (void)walkChangeset(stored.bytes, [&](const RowChange& change) {
        Gathered& row = m_gathered[{std::string(change.table), change.id()}];
        ++(isOlder ? row.olderTouches : row.newerTouches);
        row.lastAtUtcMs = std::max(row.lastAtUtcMs, stored.act.atUtcMs);
        const auto& columns = m_database.columnsOf(std::string(change.table));
        const bool isBack = way == WayThrough::Back;
        const ChangeKind kind = !isBack || change.kind == ChangeKind::Update ? change.kind
                                : change.kind == ChangeKind::Insert          ? ChangeKind::Delete
                                                                             : ChangeKind::Insert;
        gather(row, isBack ? change.after : change.before, kind, columns.size());
    });
    return {};
}

std::map<RowKey, RowSince> Walk::rows()
{
    std::map<RowKey, RowSince> rows;
    for (const auto& [key, gathered] : m_gathered) {
        RowSince& row = rows[key];
        row.lastAtUtcMs = gathered.lastAtUtcMs;
        row.isBeforeKnown =
            gathered.olderTouches == 0 || gathered.olderTouches + gathered.newerTouches == 1;
        if (gathered.isAbsent) {
            continue;
        }
        // A column that nothing touched is as it was.
        const RowState now = wholeRow(m_database, key);
        WholeRow before;
        for (std::size_t i = 0; i < gathered.cells.size(); ++i) {
            before.push_back(
                gathered.cells[i].value_or(now && i < now->size() ? (*now)[i] : Cell()));
        }
        row.before = std::move(before);
    }
    return rows;
}

} // namespace

HistoryMark markOf(Database& database)
{
    HistoryMark mark;
    mark.from = database.scalar("SELECT (copy_number << 40) | next_counter FROM copy WHERE id = 1");
    Statement statement =
        database.prepare("SELECT id FROM history WHERE state = 'undone' ORDER BY id");
    while (statement.step()) {
        mark.undone.push_back(statement.get<HistoryId>(0));
    }
    return mark;
}

Result<HistorySince> changesSince(Database& database, const HistoryMark& mark)
{
    HistorySince since;
    Walk walk(database, mark);
    if (auto older = walk.older(); !older) {
        return passOn(older);
    }
    if (auto newer = walk.newer(since.acts); !newer) {
        return passOn(newer);
    }
    since.rows = walk.rows();
    return since;
}

HistoryTip tipOf(Database& database)
{
    Statement statement =
        database.prepare("SELECT id, changeset_crc FROM history ORDER BY id DESC LIMIT 1");
    return statement.step()
               ? HistoryTip{statement.get<std::int64_t>(0), statement.get<std::int64_t>(1)}
               : HistoryTip{};
}

bool holdsTip(Database& database, const HistoryTip& tip)
{
    Statement statement = database.prepare("SELECT changeset_crc FROM history WHERE id = ?1");
    statement.bind(tip.id);
    return tip.id == 0 || (statement.step() && statement.get<std::int64_t>(0) == tip.checksum);
}

} // namespace plumule
