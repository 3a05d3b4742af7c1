#pragma once

#include "core/base/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumule {

// Walks through a table as RFC 4180 has it, a row at a time: commas, or semicolons or tabs where
// the header has more of those. Quoted fields may hold separators, doubled quotes and line ends; a
// UTF-8 mark at the start is skipped; a line with nothing in it is no row. What our own export put
// before a cell that a spreadsheet would run is taken off (core/exchange/cell_guard.h). The text
// must outlive the reader.
class CsvReader
{
public:
    // Reads the header. Invalid, with the line, for bytes that are no UTF-8, a doubled or empty
    // header name; TooFew for an empty text; as next().
    [[nodiscard]] static Result<CsvReader> on(std::string_view text);

    [[nodiscard]] const std::vector<std::string>& header() const { return m_header; }
    [[nodiscard]] char separator() const { return m_separator; }

    // Goes to the next row; false where there is none. Invalid, with the line, for an open quote or
    // text beside a quoted field.
    [[nodiscard]] Result<bool> next();
    // Of the present row, not always as many as the header has; and the line where it begins, from
    // 1.
    [[nodiscard]] const std::vector<std::string>& cells() const { return m_cells; }
    [[nodiscard]] int line() const { return m_rowLine; }
    // How much of the text is read, from 0 to 1.
    [[nodiscard]] double fractionRead() const;

private:
    explicit CsvReader(std::string_view text);
    [[nodiscard]] Done readRow();
    [[nodiscard]] Done readPlain(std::string& field);
    [[nodiscard]] Done readQuoted(std::string& field);
    [[nodiscard]] bool isAtFieldEnd() const;
    void skipLineEnd();
    [[nodiscard]] Done takeHeader();

    std::string_view m_text;
    char m_separator = ',';
    std::size_t m_at = 0;
    int m_line = 1;
    int m_rowLine = 0;
    std::vector<std::string> m_header;
    std::vector<std::string> m_cells;
};

// A whole table.
struct CsvTable
{
    std::vector<std::string> header;
    std::vector<std::vector<std::string>> rows; // each as long as the header
    std::vector<int> lines; // the line in the file where each row begins, from 1
    char separator = ',';
};

// As CsvReader; Invalid too for a row of another length.
[[nodiscard]] Result<CsvTable> csvFrom(std::string_view text);

// One row, quoted where needed, guarded where a spreadsheet would run it, ending in a line feed.
[[nodiscard]] std::string csvLine(const std::vector<std::string>& fields);

// The whole file, up to 256 MiB; Unreadable when it cannot be read or is larger.
[[nodiscard]] Result<std::string> textOfFile(const std::string& path);

} // namespace plumule
