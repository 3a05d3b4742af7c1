#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"

#include <filesystem>
#include <vector>

namespace plumule {

class Database;

// What a folder of tables came to.
struct FolderOutcome
{
    int files = 0;
    std::int64_t rows = 0;
    int photos = 0;
    std::vector<std::string> photoNames;    // that the tables name
    std::vector<std::string> missingPhotos; // named in the journal, but not in its folder
};

// Writes all that the journal holds, but for its history, into a new or empty folder: a file a
// table, "<table>.csv", in SI with the unit in the column's name; dictionary.csv, which says what
// each column means; and the photographs in the folder photos. Where others refer to a row they
// name its code or name. Conflict FolderTaken; NotWritable, DiskFull, Cancelled; what was written
// by then is taken away again.
[[nodiscard]] Result<FolderOutcome> writeJournalFolder(Database& database,
                                                       const std::filesystem::path& photos,
                                                       const std::filesystem::path& folder,
                                                       const Progress& progress);

// Fills an empty journal with such a folder's tables, in one open transaction. The tables are then
// those that were written out, row by row and number by number; numbers given from now on are new
// ones. Every fault has its file and line, the first ends it: NotFound FolderForeign (no
// dictionary.csv), FileMissing, FileUnknown; as csvFrom(); ColumnMissing, ColumnUnknown; as
// sheetCell(); Cancelled.
[[nodiscard]] Result<FolderOutcome> readJournalFolder(Database& database,
                                                      const std::filesystem::path& folder,
                                                      const Progress& progress);

// Copies the photographs that the tables name into the journal's folder, which nobody may have
// open; what is copied is taken away again where one fails. Unreadable, NotWritable, DiskFull.
[[nodiscard]] Done bringPhotos(const std::filesystem::path& folder,
                               const std::filesystem::path& photos, FolderOutcome& outcome);

} // namespace plumule
