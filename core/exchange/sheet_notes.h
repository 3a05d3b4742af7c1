#pragma once

#include <string_view>
#include <vector>

namespace plumule {

// What the data dictionary says, in English: of a table, and of a column by its stored name. Empty
// where there is no note.
[[nodiscard]] std::string_view meaningOf(std::string_view table);
[[nodiscard]] std::string_view meaningOf(std::string_view table, std::string_view column);

// The words that may stand in a column; empty where any text may.
[[nodiscard]] const std::vector<std::string_view>& wordsOf(std::string_view table,
                                                           std::string_view column);

} // namespace plumule
