#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace plumule {

// A table as RFC 4180 has it; commas, or semicolons or tabs where the header has more of those.
struct CsvTable
{
    std::vector<std::string> header;
    std::vector<std::vector<std::string>> rows; // each as long as the header
    std::vector<int> lines; // the line in the file where each row begins, from 1
    char separator = ',';
};

// Quoted fields may hold separators, doubled quotes and line ends; a UTF-8 mark at the start is
// skipped; a line with nothing in it is no row. Invalid, with "line N", for an open quote, text
// beside a quoted field, bytes that are no UTF-8, a row of another length, a doubled or empty
// header name; TooFew for an empty file.
[[nodiscard]] Result<CsvTable> csvFrom(std::string_view text);

// One row, quoted where needed, ending in a line feed.
[[nodiscard]] std::string csvLine(const std::vector<std::string>& fields);

// The whole file; Unreadable when it cannot be read.
[[nodiscard]] Result<std::string> textOfFile(const std::string& path);

} // namespace plumule
