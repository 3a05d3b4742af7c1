#include "core/exchange/csv.h"

#include "core/base/kept_files.h"
#include "core/base/number_text.h"
#include "core/base/utf8.h"
#include "core/exchange/row_fault.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <set>
#include <sstream>

namespace plumule {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

template <class... Values>
tl::unexpected<Error> brokenAt(int line, ExchangeReason reason, Values&&... values)
{
    return faultAt("", line, ErrorKind::Invalid, reason, std::forward<Values>(values)...);
}

// The line of the first byte that is no UTF-8; 0 when there is none.
int firstBrokenLine(std::string_view text)
{
    const auto at = firstNotUtf8(text);
    return at ? 1 + static_cast<int>(std::count(text.begin(), text.begin() + *at, '\n')) : 0;
}

char separatorOf(std::string_view text)
{
    std::array<std::size_t, 3> counts{};
    constexpr std::array<char, 3> kSeparators{',', ';', '\t'};
    bool isQuoted = false;
    for (const char c : text) {
        if (c == '"') {
            isQuoted = !isQuoted;
        } else if (!isQuoted && (c == '\n' || c == '\r')) {
            break;
        }
        for (std::size_t i = 0; i < kSeparators.size() && !isQuoted; ++i) {
            counts[i] += c == kSeparators[i] ? 1 : 0;
        }
    }
    const auto most = std::max_element(counts.begin(), counts.end());
    return kSeparators[static_cast<std::size_t>(most - counts.begin())];
}

// Walks through the text row by row.
class RowReader
{
public:
    RowReader(std::string_view text, char separator)
        : m_text(text)
        , m_separator(separator)
    {}

    [[nodiscard]] bool atEnd() const { return m_at >= m_text.size(); }
    [[nodiscard]] int line() const { return m_line; }

    Result<std::vector<std::string>> row()
    {
        std::vector<std::string> fields;
        for (;;) {
            Result<std::string> field = atQuote() ? quotedField() : plainField();
            if (!field) {
                return passOn(field);
            }
            fields.push_back(std::move(*field));
            if (atEnd() || m_text[m_at] != m_separator) {
                skipLineEnd();
                return fields;
            }
            ++m_at;
        }
    }

private:
    [[nodiscard]] bool atQuote() const { return !atEnd() && m_text[m_at] == '"'; }
    [[nodiscard]] bool atFieldEnd() const
    {
        return atEnd() || m_text[m_at] == m_separator || m_text[m_at] == '\n' ||
               m_text[m_at] == '\r';
    }

    Result<std::string> plainField()
    {
        std::string field;
        for (; !atFieldEnd(); ++m_at) {
            if (m_text[m_at] == '"') {
                return brokenAt(m_line, ExchangeReason::StrayQuote, field);
            }
            field += m_text[m_at];
        }
        return field;
    }

    Result<std::string> quotedField()
    {
        const int begin = m_line;
        std::string field;
        for (++m_at; !atEnd(); ++m_at) {
            const char c = m_text[m_at];
            if (c != '"') {
                m_line += c == '\n' ? 1 : 0;
                field += c;
            } else if (m_at + 1 < m_text.size() && m_text[m_at + 1] == '"') {
                field += c;
                ++m_at;
            } else {
                ++m_at;
                return atFieldEnd() ? Result<std::string>(field)
                                    : brokenAt(m_line, ExchangeReason::StrayQuote, field);
            }
        }
        return brokenAt(begin, ExchangeReason::OpenQuote);
    }

    void skipLineEnd()
    {
        if (!atEnd() && m_text[m_at] == '\r') {
            ++m_at;
        }
        if (!atEnd() && m_text[m_at] == '\n') {
            ++m_at;
        }
        ++m_line;
    }

    std::string_view m_text;
    char m_separator;
    std::size_t m_at = 0;
    int m_line = 1;
};

Done takeHeader(std::vector<std::string> names, int line, CsvTable& table)
{
    std::set<std::string> seen;
    for (std::string& name : names) {
        name = std::string(trimmed(name));
        if (name.empty()) {
            return brokenAt(line, ExchangeReason::HeaderUnnamed);
        }
        if (!seen.insert(name).second) {
            return brokenAt(line, ExchangeReason::HeaderTwice, name);
        }
    }
    table.header = std::move(names);
    return {};
}

} // namespace

Result<CsvTable> csvFrom(std::string_view text)
{
    if (text.starts_with(kByteOrderMark)) {
        text.remove_prefix(kByteOrderMark.size());
    }
    if (const int line = firstBrokenLine(text); line != 0) {
        return brokenAt(line, ExchangeReason::NotUtf8);
    }
    CsvTable table;
    table.separator = separatorOf(text);
    RowReader reader(text, table.separator);
    while (!reader.atEnd()) {
        const int line = reader.line();
        auto fields = reader.row();
        if (!fields) {
            return passOn(fields);
        }
        if (fields->size() == 1 && trimmed(fields->front()).empty()) {
            continue;
        }
        if (table.header.empty()) {
            if (Done taken = takeHeader(std::move(*fields), line, table); !taken) {
                return passOn(taken);
            }
            continue;
        }
        if (fields->size() != table.header.size()) {
            return brokenAt(line, ExchangeReason::CellCount, fields->size(), table.header.size());
        }
        table.rows.push_back(std::move(*fields));
        table.lines.push_back(line);
    }
    if (table.header.empty()) {
        return fail(ErrorKind::TooFew, ExchangeReason::Empty);
    }
    return table;
}

std::string csvLine(const std::vector<std::string>& fields)
{
    std::string line;
    for (std::size_t i = 0; i < fields.size(); ++i) {
        const std::string& field = fields[i];
        line += i == 0 ? "" : ",";
        if (field.find_first_of(",;\t\"\r\n") == std::string::npos && trimmed(field) == field) {
            line += field;
            continue;
        }
        line += '"';
        for (const char c : field) {
            line += c == '"' ? "\"\"" : std::string(1, c);
        }
        line += '"';
    }
    return line + "\n";
}

Result<std::string> textOfFile(const std::string& path)
{
    if (isKept(path)) {
        // No table, and closing it would drop SQLite's locks on it.
        return fail(ErrorKind::Unreadable, ExchangeReason::FileUnreadable, path);
    }
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    if (file && file.peek() != std::ifstream::traits_type::eof()) {
        text << file.rdbuf();
    }
    if (!file.is_open() || file.bad() || !text) {
        return fail(ErrorKind::Unreadable, ExchangeReason::FileUnreadable, path);
    }
    return text.str();
}

} // namespace plumule
