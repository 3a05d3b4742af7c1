// Part of core/storage/journal_file.h: verified copies.
#include "core/storage/journal_file.h"

#include "core/base/file_reason.h"
#include "core/base/whole_file.h"
#include "core/storage/checksum.h"
#include "core/storage/faults.h"

#include <fstream>
#include <sqlite3.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;

fs::path checksumPathOf(const fs::path& target)
{
    return target.string() + ".crc";
}

// True when the whole journal was copied, false when it was cancelled.
bool copyPages(Database& source, Database& target, const Progress& progress)
{
    constexpr int kPagesAStep = 256;
    sqlite3_backup* backup = sqlite3_backup_init(target.handle(), "main", source.handle(), "main");
    if (backup == nullptr) {
        target.throwFailure(sqlite3_errcode(target.handle()), "backup");
    }
    int code = SQLITE_OK;
    while ((code == SQLITE_OK || code == SQLITE_BUSY || code == SQLITE_LOCKED) &&
           !progress.isStopped()) {
        code = sqlite3_backup_step(backup, kPagesAStep);
        const int all = sqlite3_backup_pagecount(backup);
        progress.report(all == 0 ? 0.0 : 1.0 - double(sqlite3_backup_remaining(backup)) / all);
        if (code == SQLITE_BUSY || code == SQLITE_LOCKED) {
            sqlite3_sleep(20);
        }
    }
    const int finished = sqlite3_backup_finish(backup);
    if (code != SQLITE_DONE && finished != SQLITE_OK) {
        target.throwFailure(finished, "backup");
    }
    return code == SQLITE_DONE;
}

// What SQLite may leave beside an unfinished copy that it could not finish.
class LeftBeside
{
public:
    explicit LeftBeside(const fs::path& file)
        : m_file(file)
    {}
    ~LeftBeside()
    {
        std::error_code ignored;
        for (const char* ending : {"-wal", "-shm", "-journal"}) {
            fs::remove(m_file.string() + ending, ignored);
        }
    }
    LeftBeside(const LeftBeside&) = delete;
    LeftBeside& operator=(const LeftBeside&) = delete;

private:
    fs::path m_file;
};

// With a write-ahead log ticks go on while one state is copied; with a rollback journal they would
// have to wait, so that there SQLite begins anew when another connection wrote.
bool hasLog(Database& database)
{
    Statement statement = database.prepare("PRAGMA journal_mode");
    return statement.step() && statement.get<std::string>(0) == "wal";
}

Done copyChecked(Database& source, const fs::path& unfinished, const Progress& progress)
{
    std::optional<ReadTransaction> oneState;
    if (hasLog(source)) {
        oneState.emplace(source);
        (void)source.scalar("SELECT count(*) FROM sqlite_schema"); // BEGIN alone takes no state
    }
    const LeftBeside cleared(unfinished);
    Database copy(unfinished, Access::ReadWrite, OpenAs::New);
    // It becomes a backup only when all of it is on the disk: until then there is nothing to keep.
    copy.execute("PRAGMA journal_mode=DELETE");
    copy.execute("PRAGMA synchronous=OFF");
    if (!copyPages(source, copy, progress.part(0, kCopyOfBackup)) || progress.isStopped()) {
        return fail(ErrorKind::Cancelled, StorageReason::BackupStopped);
    }
    if (const auto faults = findFaults(copy, progress.part(kCopyOfBackup, 1)); !faults.empty()) {
        auto refused = fail(ErrorKind::Damaged, StorageReason::BackupFaulty);
        refused.value().row = faults.front().row;
        return refused;
    }
    progress.report(1);
    copy.execute("PRAGMA journal_mode=DELETE");
    return {};
}

// Both are on the disk by now. Between the two renames the backup stands without a checksum, never
// beside a wrong one.
Done commitTogether(WholeFile& file, WholeFile& checksum, const fs::path& checksumPath)
{
    std::error_code failed;
    fs::remove(checksumPath, failed);
    if (failed) {
        return fail(ErrorKind::NotWritable, FileReason::NotWritten, checksumPath.string());
    }
    return file.commit().and_then([&] { return checksum.commit(); });
}

} // namespace

Done backUp(Database& source, const fs::path& target, const Progress& progress)
{
    if (isLocked(target)) {
        return fail(ErrorKind::Conflict, FileReason::Kept, target.string());
    }
    auto file = WholeFile::begin(target);
    if (!file) {
        return passOn(file);
    }
    auto checksum = WholeFile::begin(checksumPathOf(target));
    if (!checksum) {
        return passOn(checksum);
    }
    try {
        return copyChecked(source, file->unfinished(), progress)
            .and_then([&] {
                return checksum->write(std::to_string(checksumOfFile(file->unfinished())) + '\n');
            })
            .and_then([&] { return checksum->sync(); })
            .and_then([&] { return file->sync(); })
            .and_then([&] { return commitTogether(*file, *checksum, checksumPathOf(target)); });
    } catch (const StorageFailure& failure) {
        if (failure.error().kind == ErrorKind::Cancelled) {
            return fail(ErrorKind::Cancelled, StorageReason::BackupStopped);
        }
        return passOn(failure.error());
    }
}

Done verifyBackup(const fs::path& target)
{
    std::ifstream stored(checksumPathOf(target));
    std::int64_t expected = 0;
    if (!(stored >> expected)) {
        return fail(ErrorKind::Unreadable, StorageReason::ChecksumMissing, target.string());
    }
    try {
        if (checksumOfFile(target) != expected) {
            return fail(ErrorKind::Damaged, StorageReason::ChecksumDiffers, target.string());
        }
    } catch (const StorageFailure& failure) {
        return passOn(failure.error());
    }
    return {};
}

} // namespace plumule
