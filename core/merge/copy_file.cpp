#include "core/merge/copy_file.h"

#include "core/backup/photo_list.h"
#include "core/base/whole_file.h"
#include "core/base/work_reason.h"
#include "core/storage/faults.h"

namespace plumule {
namespace {

namespace fs = std::filesystem;

void makeItsOwn(const fs::path& target, const TakenCopy& copy)
{
    Database database(target, Access::ReadWrite);
    Transaction transaction(database);
    CopiesRepository(database).become(copy.id);
    transaction.commit();
}

Done copyPhotos(Database& journal, const fs::path& from, const fs::path& to,
                const Progress& progress)
{
    const auto names = CopiesRepository(journal).photoNames();
    std::error_code failed;
    double done = 0;
    for (const std::string& name : names) {
        progress.report(done++ / static_cast<double>(names.size()));
        if (progress.isStopped()) {
            return fail(ErrorKind::Cancelled, WorkReason::Stopped);
        }
        // One that is not where it should be is missing in the copy as it is here.
        if (!isPlainFileName(name) || !fs::is_regular_file(from / name, failed)) {
            continue;
        }
        fs::create_directories(to, failed);
        if (const Done copied = copyWhole(from / name, to / name); !copied) {
            return copied;
        }
    }
    return {};
}

} // namespace

Result<CopyFile> openCopy(const fs::path& path)
{
    auto file = openJournalFile(path, Access::ReadOnly);
    if (!file) {
        return passOn(file);
    }
    try {
        Database& database = *file->database;
        CopiesRepository copies(database);
        const auto copy = copies.find(CopyId{copies.ownNumber()});
        if (!copy || !holdsTip(database, {copy->baseEntry, copy->baseChecksum})) {
            return fail(ErrorKind::NotFound, MergeReason::NoCopy, path.string());
        }
        if (!findFaults(database).empty()) {
            return fail(ErrorKind::Damaged, MergeReason::Faulty, path.string());
        }
        return CopyFile{std::move(*file), *copy};
    } catch (const StorageFailure& failure) {
        return passOn(failure.error());
    }
}

Done writeCopy(Database& journal, const fs::path& photoFolder, const TakenCopy& copy,
               const fs::path& target, const Progress& progress)
{
    constexpr double kShareOfJournal = 0.5;
    const fs::path photos = photoFolderOf(target);
    std::error_code ignored;
    for (const fs::path& taken : {target, photos}) {
        if (fs::exists(taken, ignored)) {
            return fail(ErrorKind::Duplicate, MergeReason::NotTaken, taken.string());
        }
    }
    Done done = backUp(journal, target, progress.part(0, kShareOfJournal));
    // Its checksum ends with the first act in it.
    fs::remove(target.string() + ".crc", ignored);
    try {
        if (done) {
            makeItsOwn(target, copy);
            done = copyPhotos(journal, photoFolder, photos, progress.part(kShareOfJournal, 1));
        }
    } catch (const StorageFailure& failure) {
        done = passOn(failure.error());
    }
    if (!done) {
        for (const char* ending : {"", "-wal", "-shm", "-journal"}) {
            fs::remove(target.string() + ending, ignored);
        }
        fs::remove_all(photos, ignored);
    }
    return done;
}

} // namespace plumule
