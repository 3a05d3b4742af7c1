// Part of core/storage/journal_file.h: verified copies.
#include "core/storage/journal_file.h"

#include "core/storage/checksum.h"
#include "core/storage/history.h"

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

std::vector<std::string> textRows(Database& database, const char* pragma, const char* sound)
{
    std::vector<std::string> rows;
    Statement statement = database.prepare(pragma);
    while (statement.step()) {
        const Cell cell = statement.cellAt(0);
        const auto* text = std::get_if<std::string>(&cell);
        if (text != nullptr && *text != sound) {
            rows.push_back(*text);
        }
    }
    return rows;
}

} // namespace

Done backUp(Database& source, const fs::path& target, const Progress& progress)
{
    // Written under another name and renamed when it is whole: a half copy never looks like a
    // backup.
    const fs::path unfinished = target.string() + ".part";
    try {
        fs::remove(unfinished);
        bool isWhole = false;
        std::vector<std::string> faults;
        {
            Database copy(unfinished, Access::ReadWrite, true);
            isWhole = copyPages(source, copy, progress);
            faults = isWhole ? findFaults(copy) : faults;
            copy.execute("PRAGMA journal_mode=DELETE");
        }
        if (!isWhole || !faults.empty()) {
            fs::remove(unfinished);
            return isWhole ? fail(ErrorKind::Damaged, "backup", faults.front())
                           : fail(ErrorKind::Cancelled, "backup");
        }
        fs::rename(unfinished, target);
        std::ofstream(checksumPathOf(target)) << checksumOfFile(target) << '\n';
        return {};
    } catch (const StorageFailure& failure) {
        std::error_code ignored;
        fs::remove(unfinished, ignored);
        return tl::unexpected<Error>(failure.error());
    } catch (const fs::filesystem_error& failure) {
        return fail(ErrorKind::NotWritable, "backup", failure.what());
    }
}

Done verifyBackup(const fs::path& target)
{
    std::ifstream stored(checksumPathOf(target));
    std::int64_t expected = 0;
    if (!(stored >> expected)) {
        return fail(ErrorKind::Unreadable, "backup", checksumPathOf(target).string());
    }
    try {
        if (checksumOfFile(target) != expected) {
            return fail(ErrorKind::Damaged, "backup", target.string());
        }
    } catch (const StorageFailure& failure) {
        return tl::unexpected<Error>(failure.error());
    }
    return {};
}

std::vector<std::string> findFaults(Database& database)
{
    auto faults = textRows(database, "PRAGMA integrity_check(20)", "ok");
    for (std::string& table : textRows(database, "PRAGMA foreign_key_check", "")) {
        faults.push_back("foreign key in " + table);
    }
    for (const HistoryId id : History(database).damagedEntries()) {
        faults.push_back("changeset of history entry " + std::to_string(id.value));
    }
    return faults;
}

} // namespace plumule
