#pragma once

#include "core/base/progress.h"
#include "core/merge/copies_repository.h"
#include "core/merge/merge_reason.h"
#include "core/storage/journal_file.h"

namespace plumule {

// A copy that comes back, open to read.
struct CopyFile
{
    JournalFile file;
    TakenCopy copy;
};

// Opens it and looks for faults on every page, in every cell and changeset. NoCopy, Faulty, and
// what openJournalFile() refuses.
[[nodiscard]] Result<CopyFile> openCopy(const std::filesystem::path& path);

// Writes the open journal as the copy of that number, with the photographs that it names. NotTaken
// where a file or its photo folder is there already; what fails leaves neither behind.
[[nodiscard]] Done writeCopy(Database& journal, const std::filesystem::path& photoFolder,
                             const TakenCopy& copy, const std::filesystem::path& target,
                             const Progress& progress);

} // namespace plumule
