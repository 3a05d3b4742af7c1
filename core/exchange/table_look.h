#pragma once

#include "core/base/progress.h"
#include "core/exchange/csv.h"
#include "core/exchange/table_keeper.h"
#include "core/exchange/tray_import.h"

namespace plumule {

// Reads the file row by row as the form says and tells what would come in; nothing is written. As
// CsvReader, and Cancelled; everything else that is wrong is among the preview's faults. A missing
// needed column is a fault of line 1.
[[nodiscard]] Result<ImportPreview> lookThrough(std::string_view text, const TableForm& form,
                                                TableKeeper& keeper, const Progress& progress);

// Reads it again and stores every row that is no duplicate; how many. The first fault ends it: the
// journal has changed since the preview. Inside a transaction.
[[nodiscard]] Result<std::int64_t> storeThrough(std::string_view text, const TableForm& form,
                                                StoringKeeper& keeper, const Progress& progress);

} // namespace plumule
