#include "core/storage/recording.h"

#include "core/storage/changeset_bytes.h"
#include "core/storage/checksum.h"

#include <algorithm>
#include <cassert>
#include <sqlite3.h>
#include <utility>

namespace plumule {
namespace {

// Kept a line each.
std::string joined(const std::vector<std::string>& details)
{
    std::string text;
    for (const std::string& each : details) {
        text += each;
        std::replace(text.end() - static_cast<std::ptrdiff_t>(each.size()), text.end(), '\n', ' ');
        text += '\n';
    }
    return text;
}

int isTracked(void*, const char* table)
{
    return isTrackedTable(table) ? 1 : 0;
}

// An intention's changeset as it is stored, and the rows in it.
struct Made
{
    std::string changeset;
    std::vector<ChangedRows> rows;
};

Made changesetOf(Database& database, sqlite3_session* session)
{
    ChangesetPacker packer;
    WrittenRows rows(database);
    PieceTaker taker([&](std::string_view piece) {
        packer.add(piece);
        rows.take(piece);
    });
    const int code = sqlite3session_changeset_strm(session, PieceTaker::take, &taker);
    taker.rethrow();
    if (code != SQLITE_OK) {
        database.throwFailure(code, "changeset");
    }
    return {packer.stored(), rows.rows()};
}

} // namespace

Recording::Recording(Database& database)
    : m_database(database)
{
    assert(database.isInTransaction());
    int code = sqlite3session_create(database.handle(), "main", &m_session);
    if (code == SQLITE_OK) {
        sqlite3session_table_filter(m_session, isTracked, nullptr);
        code = sqlite3session_attach(m_session, nullptr);
    }
    if (code != SQLITE_OK) {
        database.throwFailure(code, "session");
    }
}

Recording::~Recording()
{
    end();
}

void Recording::end()
{
    if (m_session != nullptr) {
        sqlite3session_delete(std::exchange(m_session, nullptr));
    }
}

std::vector<ChangedRows> Recording::finish(std::int64_t atUtcMs, const std::string& intention,
                                           const std::string& subject,
                                           const std::vector<std::string>& details)
{
    Made made = changesetOf(m_database, m_session);
    if (made.rows.empty()) {
        return {};
    }
    end(); // it holds all rows once more
    const std::int64_t id = m_database.nextId();
    m_database
        .prepare("UPDATE history SET state = 'dropped', undone_order = NULL, dropped_by = ?1 "
                 "WHERE state = 'undone'")
        .bind(id)
        .run();
    Statement statement = m_database.prepare(
        "INSERT INTO history (id, at_utc_ms, intention, subject, row_count, schema_version, state, "
        "changeset, changeset_bytes, changeset_crc, details) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, 'done', ?10, ?7, ?8, ?9)");
    statement
        .bind(id, atUtcMs, intention, subject, countOf(made.rows),
              m_database.scalar("PRAGMA user_version"),
              static_cast<std::int64_t>(made.changeset.size()), checksumOf(made.changeset),
              joined(details))
        .bindBytes(10, made.changeset)
        .run();
    return std::move(made.rows);
}

} // namespace plumule
