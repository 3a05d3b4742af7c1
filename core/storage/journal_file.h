#pragma once

#include "core/base/progress.h"
#include "core/storage/database.h"
#include "core/storage/folder_kind.h"

#include <memory>

namespace plumule {

// "PLML", so that file(1) and we can tell a journal from another SQLite file.
inline constexpr std::int64_t kApplicationId = 0x504C4D4C;

// An open journal. Its database holds the lock while it may be written, and sees to it that no
// saver aims at it.
struct JournalFile
{
    std::unique_ptr<Database> database;
    // As it was asked for; the database's own is another where a copy is read, or the log stands
    // beside another name.
    std::filesystem::path path;
    // Why a journal that was asked for to write was opened only to read: AlreadyOpen or
    // NotWritable. ShownAsCopy also where it was asked for to read.
    std::optional<Error> readOnlyBecause;
    FolderKind folder = FolderKind::Local;
};

// Where a journal's photographs are kept: "<journal without ending> photos" beside the file, behind
// links.
[[nodiscard]] std::filesystem::path photoFolderOf(const std::filesystem::path& journal);

// Makes a new, empty journal at the newest schema. Duplicate when there is a file already,
// NotWritable when the folder takes none; whatever fails leaves no file behind. `copyNumber` (1 to
// 2^22) keeps the ids of two copies apart.
[[nodiscard]] Result<JournalFile> createJournalFile(const std::filesystem::path& path,
                                                    std::int64_t copyNumber = 1);

// Closes and removes a journal that was only just made and could not be filled.
void discardNewJournal(JournalFile file, const std::filesystem::path& path);

// Opens a journal, brings it to the newest schema (after a backup), and never makes one.
// NotFound, NotAJournal, NewerVersion, Damaged, Unreadable. Where writing is not possible the file
// is opened to read, and the reason given; ReadOnly access asks for no reason. Where nothing can be
// written and a log stands beside it, a copy of both is read, so that all that was acknowledged is
// shown. Under another name of its folder (a hard link) it is opened by the one that its log stands
// beside; where it is being written under one of another folder: AlreadyOpen. In a folder that is
// not Local it is kept with a rollback journal.
[[nodiscard]] Result<JournalFile> openJournalFile(const std::filesystem::path& path,
                                                  Access access = Access::ReadWrite);

// One more connection to the journal that `file` may write, for another thread: under the same
// lock, and whoever writes waits until the other has done. ReadOnly where `file` may only be read.
[[nodiscard]] Result<JournalFile> openBeside(const JournalFile& file);

inline constexpr double kCopyOfBackup = 0.2; // of a backup's progress; the rest is the copy's check

// Copies one state of the open journal to `target` page by page, checks the copy, and stores its
// checksum in `target`.crc. Whatever fails, also Cancelled, leaves an older backup as it was.
// FileReason::Kept where the target is a journal that is open, here or elsewhere.
[[nodiscard]] Done backUp(Database& source, const std::filesystem::path& target,
                          const Progress& progress);

// Damaged when a backup no longer has the checksum that stands beside it.
[[nodiscard]] Done verifyBackup(const std::filesystem::path& target);

} // namespace plumule
