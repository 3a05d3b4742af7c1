#include "core/storage/recording.h"

#include "core/storage/changeset_bytes.h"
#include "core/storage/checksum.h"

#include <algorithm>
#include <cassert>
#include <exception>
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
    std::int64_t count = 0;
    std::vector<ChangedRows> rows;
};

// Takes the changeset from the session piece by piece. What a piece throws waits until SQLite,
// which knows no exceptions, has returned.
class Taking
{
public:
    explicit Taking(Database& database)
        : m_database(database)
        , m_rows(database)
    {}

    Made from(sqlite3_session* session)
    {
        const auto take = [](void* taking, const void* bytes, int size) {
            return static_cast<Taking*>(taking)->take(
                {static_cast<const char*>(bytes), static_cast<std::size_t>(size)});
        };
        const int code = sqlite3session_changeset_strm(session, take, this);
        if (m_thrown) {
            std::rethrow_exception(m_thrown);
        }
        if (code != SQLITE_OK) {
            m_database.throwFailure(code, "changeset");
        }
        return {m_packer.stored(), m_rows.count(), m_rows.rows()};
    }

private:
    int take(std::string_view piece)
    {
        try {
            m_packer.add(piece);
            m_rows.take(piece);
            return SQLITE_OK;
        } catch (...) {
            m_thrown = std::current_exception();
            return SQLITE_ABORT;
        }
    }

    Database& m_database;
    ChangesetPacker m_packer;
    WrittenRows m_rows;
    std::exception_ptr m_thrown;
};

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
    Made made = Taking(m_database).from(m_session);
    if (made.count == 0) {
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
        .bind(id, atUtcMs, intention, subject, made.count, m_database.scalar("PRAGMA user_version"),
              static_cast<std::int64_t>(made.changeset.size()), checksumOf(made.changeset),
              joined(details))
        .bindBytes(10, made.changeset)
        .run();
    return std::move(made.rows);
}

} // namespace plumule
