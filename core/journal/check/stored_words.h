#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace plumule {

// A column that holds one of a few words, and which.
struct WordColumn
{
    const char* table;
    const char* column;
    bool (*isWord)(std::string_view text);
    const char* first; // one of them
};

// Every such column of the journal's tables.
[[nodiscard]] const std::vector<WordColumn>& wordColumns();

} // namespace plumule
