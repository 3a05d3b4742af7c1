#include "core/storage/journal_file.h"

#include "core/base/kept_files.h"
#include "core/storage/journal_lock.h"
#include "core/storage/migrations.h"
#include "core/storage/schema_check.h"

#include <cerrno>
#include <fcntl.h>
#include <fstream>
#include <random>
#include <unistd.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;

bool isFolderWritable(const fs::path& path)
{
    const fs::path folder = behindLinks(path).parent_path();
    return ::access(folder.c_str(), W_OK) == 0;
}

// What stands, or may stand, beside an open journal.
constexpr const char* kEndings[] = {"", "-wal", "-shm", "-journal"};

struct Holding
{
    std::shared_ptr<JournalLock> lock; // none: opened to read
    std::unique_ptr<KeptFiles> kept;
};

// The lock, and nothing may be saved over the journal.
void hold(Database& database, std::shared_ptr<JournalLock> lock)
{
    const fs::path journal = behindLinks(database.path());
    std::vector<fs::path> files;
    for (const char* ending : kEndings) {
        files.emplace_back(journal.string() + ending);
    }
    auto holding = std::make_shared<Holding>();
    holding->lock = std::move(lock);
    holding->kept = std::make_unique<KeptFiles>(files, photoFolderOf(journal));
    database.holdUntilClosed(std::move(holding));
}

// SQLite puts the log beside the name that it is given: by another one it would be missed.
bool isWrittenUnderAnotherName(const fs::path& path)
{
    std::error_code ignored;
    return fs::hard_link_count(path, ignored) > 1 && isLocked(path) &&
           !fs::exists(behindLinks(path).string() + "-wal", ignored);
}

bool looksLikeSqlite(const fs::path& path)
{
    if (isOpenHere(path)) {
        return true; // it is, and closing it here would drop SQLite's locks
    }
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
        throw StorageFailure(done.error());
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
        return fail(ErrorKind::NotAJournal, StorageReason::NotAJournal, database.path().string());
    }
    const std::int64_t schema = database.scalar("PRAGMA user_version");
    if (schema > newestSchema()) {
        return fail(ErrorKind::NewerVersion, StorageReason::MadeByNewer, database.path().string());
    }
    return checkSchema(database);
}

Done checkFile(const fs::path& path)
{
    std::error_code ignored;
    if (!fs::exists(path, ignored)) {
        return fail(ErrorKind::NotFound, StorageReason::FileMissing, path.string());
    }
    if (!fs::is_regular_file(path, ignored) || ::access(path.c_str(), R_OK) != 0) {
        return fail(ErrorKind::Unreadable, StorageReason::FileUnreadable, path.string());
    }
    if (!looksLikeSqlite(path)) {
        return fail(ErrorKind::NotAJournal, StorageReason::NotAJournal, path.string());
    }
    return {};
}

// Ours alone: of two that make a journal of one name at a time one is refused.
Done makeEmptyFile(const fs::path& path)
{
    const int handle = ::open(path.c_str(), O_CREAT | O_EXCL | O_RDWR | O_CLOEXEC, 0644);
    if (handle >= 0) {
        ::close(handle);
        return {};
    }
    if (errno == EEXIST) {
        return fail(ErrorKind::Duplicate, StorageReason::FileExists, path.string());
    }
    return fail(errno == ENOSPC ? ErrorKind::DiskFull : ErrorKind::NotWritable,
                StorageReason::NotMade, path.string());
}

Result<JournalFile> openToRead(const fs::path& path, std::optional<Error> because)
{
    if (isWrittenUnderAnotherName(path)) {
        return fail(ErrorKind::AlreadyOpen, StorageReason::OpenElsewhere, path.string());
    }
    // A log without its index can only be read where the folder is writable.
    const bool immutable = !isFolderWritable(path);
    JournalFile file;
    file.database =
        std::make_unique<Database>(path, immutable ? Access::ReadImmutable : Access::ReadOnly);
    file.readOnlyBecause = std::move(because);
    hold(*file.database, nullptr);
    if (auto identity = checkIdentity(*file.database); !identity) {
        return passOn(identity);
    }
    if (file.database->scalar("PRAGMA user_version") != newestSchema()) {
        return fail(ErrorKind::NotWritable, StorageReason::OlderAndReadOnly, path.string());
    }
    return file;
}

Result<JournalFile> openToWrite(const fs::path& path)
{
    if (!isFolderWritable(path) || ::access(path.c_str(), W_OK) != 0) {
        return openToRead(
            path, fail(ErrorKind::NotWritable, StorageReason::NotWritable, path.string()).value());
    }
    auto lock = std::make_shared<JournalLock>(path);
    if (!lock->isHeld()) {
        return openToRead(
            path,
            fail(ErrorKind::AlreadyOpen, StorageReason::OpenElsewhere, path.string()).value());
    }
    JournalFile file;
    file.database = std::make_unique<Database>(path, Access::ReadWrite);
    if (file.database->file() != lock->file()) {
        return fail(ErrorKind::FileGone, StorageReason::FileGone, path.string());
    }
    hold(*file.database, std::move(lock));
    if (auto identity = checkIdentity(*file.database); !identity) {
        return passOn(identity);
    }
    bringUpToDate(*file.database);
    return file;
}

} // namespace

fs::path photoFolderOf(const fs::path& journal)
{
    const fs::path file = behindLinks(journal);
    return file.parent_path() / (file.stem().string() + " photos");
}

Result<JournalFile> createJournalFile(const fs::path& path, std::int64_t copyNumber)
{
    if (auto made = makeEmptyFile(path); !made) {
        return passOn(made);
    }
    JournalFile file;
    try {
        auto lock = std::make_shared<JournalLock>(path);
        if (!lock->isHeld()) {
            return fail(ErrorKind::AlreadyOpen, StorageReason::OpenElsewhere, path.string());
        }
        file.database = std::make_unique<Database>(path, Access::ReadWrite, OpenAs::New);
        hold(*file.database, std::move(lock));
        fillNewJournal(*file.database, copyNumber);
        return file;
    } catch (const StorageFailure& failure) {
        discardNewJournal(std::move(file), path);
        return passOn(failure.error());
    }
}

void discardNewJournal(JournalFile file, const fs::path& path)
{
    std::error_code ignored;
    file.database.reset();
    for (const char* ending : kEndings) {
        fs::remove(path.string() + ending, ignored);
    }
}

Result<JournalFile> openJournalFile(const fs::path& path, Access access)
{
    if (auto checked = checkFile(path); !checked) {
        return passOn(checked);
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
            // Not the statement that came upon it.
            return fail(ErrorKind::Damaged, StorageReason::FileDamaged, path.string());
        }
        return passOn(error);
    }
}

} // namespace plumule
