// Part of core/storage/database.h: the settings of a connection.
#include "core/storage/database.h"
#include "core/storage/folder_kind.h"
#include "core/storage/journal_file.h"

#include <sqlite3.h>

namespace plumule {
namespace {

// Of every connection.
constexpr const char* kSettings[] = {
    "PRAGMA trusted_schema=OFF", // a file from elsewhere may not call functions by its schema
    "PRAGMA cell_size_check=ON", // a torn page is found when it is read, not when it is followed
    "PRAGMA foreign_keys=ON",    // SQLite's default is off: rows could point at nothing
    "PRAGMA cache_size=-16000",  // KiB: a season's columns are read without going to disk twice
    "PRAGMA temp_store=MEMORY",  // sorting leaves no file of the journal's rows in /tmp
};

void protect(sqlite3* handle)
{
    // No SQL of ours may write the schema by hand or shrink the log under a reader.
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    // No journal has a trigger or a view: one that was planted does nothing, even before it is
    // found.
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_VIEW, 0, nullptr);
    // A misspelt column in double quotes is an error, not a text; in statements and in the schema.
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DQS_DML, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DQS_DDL, 0, nullptr);
}

bool takesLog(Database& database)
{
    Statement statement = database.prepare("PRAGMA journal_mode=WAL");
    return statement.step() && statement.get<std::string>(0) == "wal";
}

// Where memory can't be shared between connections, or a file may be copied elsewhere without what
// stands beside it. Others are kept out by the journal's own lock; SQLite's is let go between
// transactions, so that our own connections read.
void keepRollbackJournal(Database& database)
{
    database.execute("PRAGMA journal_mode=DELETE");
    database.execute("PRAGMA locking_mode=NORMAL");
    (void)database.scalar("SELECT count(*) FROM sqlite_schema"); // only then it is let go
    // FULL would not put it on the disk that the rollback journal is gone: after a power cut it
    // would take the commit back.
    database.execute("PRAGMA synchronous=EXTRA");
    // ms: a writer waits until an answer is read, which here keeps it out.
    sqlite3_busy_timeout(database.handle(), 20'000);
}

} // namespace

void Database::applySettings(OpenAs as)
{
    // Tells a full disk from a torn page.
    sqlite3_extended_result_codes(m_handle, 1);
    // ms: a writer waits for another connection's checkpoint, which takes up to a second.
    sqlite3_busy_timeout(m_handle, 3000);
    protect(m_handle);
    for (const char* setting : kSettings) {
        execute(setting);
    }
    if (m_access != Access::ReadWrite) {
        execute("PRAGMA query_only=ON");
    }
    if (m_access != Access::ReadWrite || m_path.empty()) {
        return;
    }
    const bool isFar = folderKindOf(m_path) != FolderKind::Local;
    if (isFar) {
        // Alone, SQLite reads a log without an index that it would share by memory.
        execute("PRAGMA locking_mode=EXCLUSIVE");
    }
    // Another program's file is refused later; until then not one byte of it may change.
    m_isOurs = as == OpenAs::New || scalar("PRAGMA application_id") == kApplicationId;
    if (!m_isOurs) {
        return;
    }
    // Each commit is on the disk before it is acknowledged: a power cut takes back no tick.
    if (isFar || !takesLog(*this)) {
        keepRollbackJournal(*this);
        return;
    }
    execute("PRAGMA synchronous=FULL");
    // Bytes: after a large import the log beside the journal shrinks again.
    execute("PRAGMA journal_size_limit=8388608");
}

} // namespace plumule
