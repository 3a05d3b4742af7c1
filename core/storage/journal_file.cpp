#include "core/storage/journal_file.h"

#include "core/base/kept_files.h"
#include "core/base/whole_file.h"
#include "core/storage/journal_lock.h"
#include "core/storage/journal_log.h"
#include "core/storage/migrations.h"
#include "core/storage/schema_check.h"

#include <cerrno>
#include <fcntl.h>
#include <unistd.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;

// What stands, or may stand, beside an open journal.
constexpr const char* kEndings[] = {"", "-wal", "-shm", "-journal"};

struct Holding
{
    std::shared_ptr<JournalLock> lock; // none: opened to read
    std::unique_ptr<PrivateCopy> copy; // where one is read
    std::unique_ptr<KeptFiles> kept;
};

// Until the database is closed; and nothing may be saved over the journal of that name meanwhile.
void hold(Database& database, const fs::path& name, std::shared_ptr<Holding> holding)
{
    const fs::path journal = behindLinks(name);
    std::vector<fs::path> files;
    for (const char* ending : kEndings) {
        files.emplace_back(journal.string() + ending);
    }
    holding->kept = std::make_unique<KeptFiles>(files, photoFolderOf(journal));
    database.holdUntilClosed(std::move(holding));
}

// In another folder, where its log is not found.
bool isWrittenUnderAnotherName(const fs::path& path)
{
    std::error_code ignored;
    return fs::hard_link_count(path, ignored) > 1 && isLocked(path) &&
           !fs::exists(behindLinks(path).string() + "-wal", ignored);
}

// Where it is open here it is, and closing it would drop SQLite's locks.
bool looksLikeSqlite(const fs::path& path)
{
    return isOpenHere(path) || formatOf(path) != FileFormat::NotSqlite;
}

enum class Reading
{
    InPlace,
    InPlaceUnchanging, // nothing may be written beside it, and nothing stands there
    OfACopy
};

// Of a copy where what stands in the log could not be read in place: nothing may be written beside
// it, or memory can't be shared there. A journal that someone writes is no copy's source.
Reading readingOf(const fs::path& path, FolderKind folder)
{
    const bool isWritable = isWritableInPlace(path);
    if (isLocked(path)) {
        return Reading::InPlace;
    }
    const auto isFarLog = [&] {
        return folder != FolderKind::Local && formatOf(path) == FileFormat::WriteAheadLog;
    };
    if (!isOpenHere(path) && ((!isWritable && hasLogBeside(path)) || isFarLog())) {
        return Reading::OfACopy;
    }
    return isWritable ? Reading::InPlace : Reading::InPlaceUnchanging;
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
    return fail(isDiskFull(errno) ? ErrorKind::DiskFull : ErrorKind::NotWritable,
                StorageReason::NotMade, path.string());
}

Result<JournalFile> openToRead(const fs::path& path, std::optional<Error> because)
{
    const fs::path name = nameWithLog(path);
    if (isWrittenUnderAnotherName(name)) {
        return fail(ErrorKind::AlreadyOpen, StorageReason::OpenElsewhere, path.string());
    }
    JournalFile file{nullptr, path, std::move(because), folderKindOf(name)};
    auto holding = std::make_shared<Holding>();
    const Reading reading = readingOf(name, file.folder);
    if (reading == Reading::OfACopy) {
        holding->copy = std::make_unique<PrivateCopy>(name);
        file.database = std::make_unique<Database>(holding->copy->file(), Access::ReadOnly);
    } else {
        file.database = std::make_unique<Database>(
            name, reading == Reading::InPlace ? Access::ReadOnly : Access::ReadImmutable);
    }
    if (reading == Reading::OfACopy && hasLogBeside(name)) {
        file.readOnlyBecause =
            fail(ErrorKind::NotWritable, StorageReason::ShownAsCopy, path.string()).value();
    }
    hold(*file.database, name, std::move(holding));
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
    if (!isWritableInPlace(path)) {
        return openToRead(
            path, fail(ErrorKind::NotWritable, StorageReason::NotWritable, path.string()).value());
    }
    auto lock = std::make_shared<JournalLock>(path);
    if (!lock->isHeld()) {
        return openToRead(
            path,
            fail(ErrorKind::AlreadyOpen, StorageReason::OpenElsewhere, path.string()).value());
    }
    const fs::path name = nameWithLog(path);
    JournalFile file{nullptr, path, std::nullopt, folderKindOf(name)};
    file.database = std::make_unique<Database>(name, Access::ReadWrite);
    if (file.database->file() != lock->file()) {
        return fail(ErrorKind::FileGone, StorageReason::FileGone, path.string());
    }
    hold(*file.database, name, std::make_shared<Holding>(Holding{std::move(lock), {}, {}}));
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
    JournalFile file{nullptr, path, std::nullopt, folderKindOf(path)};
    try {
        auto lock = std::make_shared<JournalLock>(path);
        if (!lock->isHeld()) {
            discardNewJournal(std::move(file), path);
            return fail(ErrorKind::AlreadyOpen, StorageReason::OpenElsewhere, path.string());
        }
        file.database = std::make_unique<Database>(path, Access::ReadWrite, OpenAs::New);
        hold(*file.database, path, std::make_shared<Holding>(Holding{std::move(lock), {}, {}}));
        fillNewJournal(*file.database, copyNumber);
        if (const Done named = syncFolderOf(behindLinks(path)); !named) {
            discardNewJournal(std::move(file), path);
            return passOn(named);
        }
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

Result<JournalFile> openBeside(const JournalFile& file)
{
    if (file.database->access() != Access::ReadWrite) {
        return fail(ErrorKind::ReadOnly, StorageReason::NotWritable, file.path.string());
    }
    try {
        JournalFile beside{nullptr, file.path, std::nullopt, file.folder};
        beside.database = std::make_unique<Database>(file.database->path(), Access::ReadWrite);
        beside.database->holdUntilClosed(file.database->held());
        if (beside.folder != FolderKind::Local) {
            // What doesn't fit the cache would lock readers out long before the commit.
            beside.database->execute("PRAGMA cache_spill=OFF");
        }
        if (beside.database->file() != file.database->file()) {
            return fail(ErrorKind::FileGone, StorageReason::FileGone, file.path.string());
        }
        return beside;
    } catch (const StorageFailure& failure) {
        return passOn(failure.error());
    }
}

} // namespace plumule
