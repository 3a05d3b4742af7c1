#include "core/storage/journal_file.h"

#include "core/storage/migrations.h"

#include <fcntl.h>
#include <fstream>
#include <random>
#include <sys/file.h>
#include <unistd.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;

// A lock beside the journal, not on it: closing a second handle on the journal itself would drop
// SQLite's own locks. The system releases it when the program ends, however that ends.
class LockFile
{
public:
    explicit LockFile(fs::path path)
        : m_path(std::move(path))
    {
        m_handle = ::open(m_path.c_str(), O_CREAT | O_RDWR | O_CLOEXEC, 0644);
        m_isHeld = m_handle >= 0 && ::flock(m_handle, LOCK_EX | LOCK_NB) == 0;
    }
    ~LockFile()
    {
        if (m_isHeld) {
            ::unlink(m_path.c_str());
        }
        if (m_handle >= 0) {
            ::close(m_handle);
        }
    }
    LockFile(const LockFile&) = delete;
    LockFile& operator=(const LockFile&) = delete;

    [[nodiscard]] bool isThere() const { return m_handle >= 0; }
    [[nodiscard]] bool isHeld() const { return m_isHeld; }

private:
    fs::path m_path;
    int m_handle = -1;
    bool m_isHeld = false;
};

fs::path lockPathOf(const fs::path& path)
{
    return path.string() + ".lock";
}

bool isFolderWritable(const fs::path& path)
{
    const fs::path folder = fs::absolute(path).parent_path();
    return ::access(folder.c_str(), W_OK) == 0;
}

bool looksLikeSqlite(const fs::path& path)
{
    std::ifstream file(path, std::ios::binary);
    std::string head(16, '\0');
    file.read(head.data(), 16);
    return file.gcount() == 16 && head == std::string("SQLite format 3\0", 16);
}

std::int64_t newestSchema()
{
    return migrations().back().version;
}

// Inside a transaction.
void applyMigration(Database& database, const Migration& migration)
{
    database.execute(migration.sql);
    database.execute("PRAGMA user_version=" + std::to_string(migration.version));
}

void bringUpToDate(Database& database)
{
    const std::int64_t schema = database.scalar("PRAGMA user_version");
    if (schema == newestSchema()) {
        return;
    }
    const fs::path kept = database.path().string() + ".schema" + std::to_string(schema) + ".backup";
    if (const auto done = backUp(database, kept, {}); !done) {
        throw StorageFailure(done.error().kind, done.error().subject, done.error().detail);
    }
    for (const Migration& migration : migrations()) {
        if (migration.version > schema) {
            Transaction transaction(database);
            applyMigration(database, migration);
            transaction.commit();
        }
    }
}

// One transaction, so that a journal is there whole or is none.
void fillNewJournal(Database& database, std::int64_t copyNumber)
{
    Transaction transaction(database);
    database.execute("PRAGMA application_id=" + std::to_string(kApplicationId));
    for (const Migration& migration : migrations()) {
        applyMigration(database, migration);
    }
    database.prepare("INSERT INTO copy (id, copy_number, next_counter) VALUES (1, ?1, 1)")
        .bind(copyNumber)
        .run();
    transaction.commit();
}

Done checkIdentity(Database& database)
{
    if (database.scalar("PRAGMA application_id") != kApplicationId) {
        return fail(ErrorKind::NotAJournal, "journal", database.path().string());
    }
    const std::int64_t schema = database.scalar("PRAGMA user_version");
    if (schema > newestSchema()) {
        return fail(ErrorKind::NewerVersion, "journal", std::to_string(schema));
    }
    // A journal that lost its tables is damaged, not new.
    if (database.scalar(
            "SELECT count(*) FROM sqlite_schema WHERE name IN ('copy', 'history', 'tray')") != 3) {
        return fail(ErrorKind::Damaged, "journal", database.path().string());
    }
    return {};
}

Done checkFile(const fs::path& path)
{
    std::error_code ignored;
    if (!fs::exists(path, ignored)) {
        return fail(ErrorKind::NotFound, "journal", path.string());
    }
    if (!fs::is_regular_file(path, ignored) || ::access(path.c_str(), R_OK) != 0) {
        return fail(ErrorKind::Unreadable, "journal", path.string());
    }
    if (!looksLikeSqlite(path)) {
        return fail(ErrorKind::NotAJournal, "journal", path.string());
    }
    return {};
}

Result<JournalFile> openToRead(const fs::path& path, std::optional<Error> because)
{
    // A log without its index can only be read where the folder is writable.
    const bool immutable = !isFolderWritable(path);
    JournalFile file;
    file.database =
        std::make_unique<Database>(path, immutable ? Access::ReadImmutable : Access::ReadOnly);
    file.readOnlyBecause = std::move(because);
    if (auto identity = checkIdentity(*file.database); !identity) {
        return tl::unexpected<Error>(identity.error());
    }
    if (file.database->scalar("PRAGMA user_version") != newestSchema()) {
        return fail(ErrorKind::NotWritable, "journal", "older schema");
    }
    return file;
}

Result<JournalFile> openToWrite(const fs::path& path)
{
    const auto lock = std::make_shared<LockFile>(lockPathOf(path));
    if (!lock->isThere() || ::access(path.c_str(), W_OK) != 0) {
        return openToRead(path, Error{ErrorKind::NotWritable, "journal", path.string()});
    }
    if (!lock->isHeld()) {
        return openToRead(path, Error{ErrorKind::AlreadyOpen, "journal", path.string()});
    }
    JournalFile file;
    file.lock = lock;
    file.database = std::make_unique<Database>(path, Access::ReadWrite);
    if (auto identity = checkIdentity(*file.database); !identity) {
        return tl::unexpected<Error>(identity.error());
    }
    bringUpToDate(*file.database);
    return file;
}

} // namespace

Result<JournalFile> createJournalFile(const fs::path& path, std::int64_t copyNumber)
{
    std::error_code ignored;
    if (fs::exists(path, ignored)) {
        return fail(ErrorKind::Duplicate, "journal", path.string());
    }
    if (!isFolderWritable(path)) {
        return fail(ErrorKind::NotWritable, "journal", path.string());
    }
    JournalFile file;
    try {
        file.lock = std::make_shared<LockFile>(lockPathOf(path));
        file.database = std::make_unique<Database>(path, Access::ReadWrite, true);
        fillNewJournal(*file.database, copyNumber);
        return file;
    } catch (const StorageFailure& failure) {
        discardNewJournal(std::move(file), path);
        return tl::unexpected<Error>(failure.error());
    }
}

void discardNewJournal(JournalFile file, const fs::path& path)
{
    std::error_code ignored;
    file.database.reset();
    for (const char* ending : {"", "-wal", "-shm", "-journal"}) {
        fs::remove(path.string() + ending, ignored);
    }
}

Result<JournalFile> openJournalFile(const fs::path& path, Access access)
{
    if (auto checked = checkFile(path); !checked) {
        return tl::unexpected<Error>(checked.error());
    }
    try {
        return access == Access::ReadWrite ? openToWrite(path) : openToRead(path, std::nullopt);
    } catch (const StorageFailure& failure) {
        // A wrong first page says NOTADB though it was a journal yesterday: the header looked
        // right.
        Error error = failure.error();
        if (error.kind == ErrorKind::NotAJournal || error.kind == ErrorKind::Conflict) {
            error.kind = ErrorKind::Damaged;
        }
        if (error.kind == ErrorKind::Damaged) {
            error.subject = "journal"; // not the statement that came upon it
        }
        return tl::unexpected<Error>(error);
    }
}

std::int64_t drawCopyNumber()
{
    std::random_device lot;
    return std::uniform_int_distribution<std::int64_t>(2, (std::int64_t{1} << 22) - 1)(lot);
}

} // namespace plumule
