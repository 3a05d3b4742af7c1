#pragma once

#include "core/merge/merge_row.h"

#include <functional>

namespace plumule {

// Finds a row of either side in this journal's ids.
using RowFinder = std::function<RowState(const RowKey&)>;

// The family of a row; `find` is asked for the rows that it hangs on.
[[nodiscard]] Family familyOf(Database& schema, const RowKey& key, const WholeRow& row,
                              const RowFinder& find);

// The keys of all rows of a family that stand in that journal, in its ids.
[[nodiscard]] std::vector<RowKey> rowsOfFamily(Database& database, const Family& family);

// The table whose id a family's owner is.
[[nodiscard]] std::string ownerTableOf(const Family& family);
// The tray that it is about; 0 where it is about none. Of a row for itself only its row tells.
[[nodiscard]] std::int64_t trayOf(Database& schema, const MergeRow& row);

// Sets of families that are joined by links, each sorted, in the order of their first.
[[nodiscard]] std::vector<std::vector<Family>>
joinedFamilies(const std::vector<std::vector<Family>>& links);

} // namespace plumule
