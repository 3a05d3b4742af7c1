#include "core/storage/history.h"

#include "core/base/enum_text.h"
#include "core/storage/changeset_bytes.h"
#include "core/storage/changeset_check.h"
#include "core/storage/checksum.h"
#include "core/storage/migrations.h"

#include <cassert>
#include <sqlite3.h>

namespace plumule {

const char* toText(HistoryState state)
{
    switch (state) {
    case HistoryState::Standing:
        return "done";
    case HistoryState::Undone:
        return "undone";
    case HistoryState::Dropped:
        return "dropped";
    }
    return "";
}

bool fromText(std::string_view text, HistoryState& state)
{
    constexpr std::array kStates = {HistoryState::Standing, HistoryState::Undone,
                                    HistoryState::Dropped};
    return matchText(text, kStates, state);
}

namespace {

struct Clash
{
    bool happened = false;
    std::optional<RowAt> row; // none: rows made since stand on one that would go
};

int onConflict(void* context, int conflict, sqlite3_changeset_iter* iterator)
{
    auto* clash = static_cast<Clash*>(context);
    clash->happened = true;
    if (conflict == SQLITE_CHANGESET_FOREIGN_KEY) {
        return SQLITE_CHANGESET_ABORT;
    }
    const char* table = nullptr;
    int columns = 0;
    int operation = 0;
    sqlite3changeset_op(iterator, &table, &columns, &operation, nullptr);
    sqlite3_value* key = nullptr;
    if (operation == SQLITE_INSERT) {
        sqlite3changeset_new(iterator, 0, &key);
    } else {
        sqlite3changeset_old(iterator, 0, &key);
    }
    clash->row = RowAt{table, key == nullptr ? 0 : std::int64_t{sqlite3_value_int64(key)}};
    return SQLITE_CHANGESET_ABORT;
}

// SQLite's way to be given a changeset piece by piece.
int readOn(void* reader, void* into, int* size)
{
    auto* from = static_cast<ChangesetReader*>(reader);
    *size = static_cast<int>(from->read(static_cast<char*>(into), static_cast<std::size_t>(*size)));
    return from->isFaulty() ? SQLITE_CORRUPT : SQLITE_OK;
}

// Our own transaction takes a refused changeset back whole. The savepoint that SQLite would open
// besides keeps its journal in memory and makes undo of many rows superlinear.
Done applyChangeset(Database& database, std::string_view stored)
{
    assert(database.isInTransaction());
    Clash clash;
    ChangesetReader reader(stored);
    const int code =
        sqlite3changeset_apply_v2_strm(database.handle(), readOn, &reader, nullptr, onConflict,
                                       &clash, nullptr, nullptr, SQLITE_CHANGESETAPPLY_NOSAVEPOINT);
    if (clash.happened) {
        Error error = fail(ErrorKind::ChangedSince,
                           clash.row ? StorageReason::ChangedSince : StorageReason::StoodOnSince)
                          .value();
        error.row = clash.row;
        return passOn(error);
    }
    if (code != SQLITE_OK) {
        database.throwFailure(code, "changeset");
    }
    return {};
}

// What takes it back, as SQLite writes it.
std::string inverseOf(Database& database, std::string_view stored)
{
    ChangesetReader reader(stored);
    std::string inverse;
    PieceTaker taker([&](std::string_view piece) { inverse += piece; });
    const int code = sqlite3changeset_invert_strm(readOn, &reader, PieceTaker::take, &taker);
    taker.rethrow();
    if (code != SQLITE_OK) {
        database.throwFailure(code, "changeset");
    }
    return inverse;
}

// The entry undone last has the highest order.
void storeState(Database& database, const HistoryEntry& entry)
{
    database
        .prepare("UPDATE history SET state = ?2, undone_order = CASE ?2 WHEN 'undone' THEN "
                 "(SELECT 1 + coalesce(max(undone_order), 0) FROM history WHERE state = 'undone') "
                 "END WHERE id = ?1")
        .bind(entry.id, entry.state)
        .run();
}

// A damaged changeset can keep SQLite busy for ever, so it is never handed over unverified.
Result<std::string> verifiedChangeset(Database& database, HistoryId id)
{
    Statement statement =
        database.prepare("SELECT changeset, changeset_bytes, changeset_crc, schema_version "
                         "FROM history WHERE id = ?1");
    statement.bind(id);
    if (!statement.step()) {
        return fail(ErrorKind::NotFound, StorageReason::EntryUnknown);
    }
    auto bytes = statement.get<std::string>(0);
    const bool isWhole =
        static_cast<std::int64_t>(bytes.size()) == statement.get<std::int64_t>(1) &&
        checksumOf(bytes) == statement.get<std::int64_t>(2);
    if (!isWhole) {
        return fail(ErrorKind::Damaged, StorageReason::EntryDamaged, id.value);
    }
    const auto schema = statement.get<std::int64_t>(3);
    if (schema < kOldestAlikeSchema || schema > database.scalar("PRAGMA user_version")) {
        return fail(ErrorKind::NewerVersion, StorageReason::EntryOfOtherSchema);
    }
    return bytes;
}

ChangeKind undone(ChangeKind kind)
{
    switch (kind) {
    case ChangeKind::Insert:
        return ChangeKind::Delete;
    case ChangeKind::Delete:
        return ChangeKind::Insert;
    case ChangeKind::Update:
        return ChangeKind::Update;
    }
    return kind;
}

RowEffect undoneEffect(const RowChange& change, const std::vector<ColumnInfo>& columns)
{
    RowEffect effect{undone(change.kind), std::string(change.table), change.id(), {}};
    if (change.kind != ChangeKind::Update) {
        return effect;
    }
    for (std::size_t i = 0; i < change.after.size() && i < columns.size(); ++i) {
        if (change.after[i] && change.before[i]) {
            effect.cells.push_back({columns[i].name, *change.after[i], *change.before[i]});
        }
    }
    return effect;
}

} // namespace

Result<History::Applied> History::undo(HistoryId id, UndoGuard* guard)
{
    const auto entry = standing(id);
    return entry ? apply(*entry, WayThrough::Back, guard, Run::ForGood) : passOn(entry);
}

Result<std::vector<RowEffect>> History::foresee(HistoryId id, UndoGuard* guard)
{
    const auto entry = standing(id);
    const auto tried =
        entry ? apply(*entry, WayThrough::Back, guard, Run::Trial) : Result<Applied>(passOn(entry));
    if (!tried) {
        return passOn(tried);
    }
    std::vector<RowEffect> effects;
    // The bytes were found sound a moment ago, or the trial had been refused.
    const bool isWhole =
        walkChangeset(*verifiedChangeset(m_database, entry->id), [&](const RowChange& change) {
            effects.push_back(
                undoneEffect(change, m_database.columnsOf(std::string(change.table))));
        });
    assert(isWhole);
    static_cast<void>(isWhole);
    return effects;
}

Result<History::Applied> History::redo()
{
    const auto entry = nextRedo();
    if (!entry) {
        return fail(ErrorKind::NothingThere, StorageReason::NothingToDoAgain);
    }
    return apply(*entry, WayThrough::Forth, nullptr, Run::ForGood);
}

Result<History::Applied> History::apply(const HistoryEntry& entry, WayThrough way, UndoGuard* guard,
                                        Run run)
{
    auto stored = verifiedChangeset(m_database, entry.id);
    if (!stored) {
        return passOn(stored);
    }
    auto rows = rowsIfSound(m_database, *stored, way);
    if (!rows) {
        return fail(ErrorKind::Damaged, StorageReason::EntryDamaged, entry.id.value);
    }
    if (way == WayThrough::Back) {
        stored = inverseOf(m_database, *stored);
    }

    Transaction transaction(m_database);
    Applied applied{entry, std::move(*rows)};
    if (guard != nullptr) {
        guard->look(entry, applied.rows);
    }
    Done done = applyChangeset(m_database, *stored);
    if (done && guard != nullptr) {
        done = guard->check(applied.rows);
    }
    if (!done) {
        return passOn(done);
    }
    applied.entry.state = way == WayThrough::Back ? HistoryState::Undone : HistoryState::Standing;
    if (run == Run::ForGood) {
        storeState(m_database, applied.entry);
        transaction.commit();
    }
    return applied;
}

} // namespace plumule
