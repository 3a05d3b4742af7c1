#include "core/exchange/csv.h"

#include "core/base/kept_files.h"
#include "core/base/number_text.h"
#include "core/base/utf8.h"
#include "core/exchange/cell_guard.h"
#include "core/exchange/row_fault.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <set>

namespace plumule {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::size_t kMostMebibytes = 256;
constexpr std::size_t kBytesAtOnce = std::size_t{1} << 20;

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

} // namespace

CsvReader::CsvReader(std::string_view text)
    : m_text(text)
    , m_separator(separatorOf(text))
{}

Result<CsvReader> CsvReader::on(std::string_view text)
{
    if (text.starts_with(kByteOrderMark)) {
        text.remove_prefix(kByteOrderMark.size());
    }
    if (const int line = firstBrokenLine(text); line != 0) {
        return brokenAt(line, ExchangeReason::NotUtf8);
    }
    CsvReader reader(text);
    const auto begun = reader.next();
    if (!begun) {
        return passOn(begun);
    }
    if (!*begun) {
        return fail(ErrorKind::TooFew, ExchangeReason::Empty);
    }
    if (Done taken = reader.takeHeader(); !taken) {
        return passOn(taken);
    }
    return reader;
}

Done CsvReader::takeHeader()
{
    std::set<std::string> seen;
    for (std::string& cell : m_cells) {
        std::string name(trimmed(cell));
        if (name.empty()) {
            return brokenAt(m_rowLine, ExchangeReason::HeaderUnnamed);
        }
        if (!seen.insert(name).second) {
            return brokenAt(m_rowLine, ExchangeReason::HeaderTwice, name);
        }
        m_header.push_back(std::move(name));
    }
    return {};
}

Result<bool> CsvReader::next()
{
    while (m_at < m_text.size()) {
        m_rowLine = m_line;
        if (Done read = readRow(); !read) {
            return passOn(read);
        }
        if (m_cells.size() > 1 || !trimmed(m_cells.front()).empty()) {
            return true;
        }
    }
    return false;
}

double CsvReader::fractionRead() const
{
    return m_text.empty() ? 1 : static_cast<double>(m_at) / static_cast<double>(m_text.size());
}

bool CsvReader::isAtFieldEnd() const
{
    return m_at >= m_text.size() || m_text[m_at] == m_separator || m_text[m_at] == '\n' ||
           m_text[m_at] == '\r';
}

Done CsvReader::readRow()
{
    std::size_t count = 0;
    for (;;) {
        if (count == m_cells.size()) {
            m_cells.emplace_back();
        }
        std::string& field = m_cells[count++];
        field.clear();
        const bool isQuoted = m_at < m_text.size() && m_text[m_at] == '"';
        if (Done read = isQuoted ? readQuoted(field) : readPlain(field); !read) {
            return read;
        }
        unguard(field);
        if (m_at >= m_text.size() || m_text[m_at] != m_separator) {
            skipLineEnd();
            m_cells.resize(count);
            return {};
        }
        ++m_at;
    }
}

Done CsvReader::readPlain(std::string& field)
{
    const std::size_t begin = m_at;
    while (!isAtFieldEnd() && m_text[m_at] != '"') {
        ++m_at;
    }
    field = m_text.substr(begin, m_at - begin);
    if (!isAtFieldEnd()) {
        return brokenAt(m_line, ExchangeReason::StrayQuote, field);
    }
    return {};
}

Done CsvReader::readQuoted(std::string& field)
{
    const int begin = m_line;
    for (++m_at; m_at < m_text.size(); ++m_at) {
        const char c = m_text[m_at];
        if (c != '"') {
            m_line += c == '\n' ? 1 : 0;
            field += c;
        } else if (m_at + 1 < m_text.size() && m_text[m_at + 1] == '"') {
            field += c;
            ++m_at;
        } else {
            ++m_at;
            return isAtFieldEnd() ? Done() : brokenAt(m_line, ExchangeReason::StrayQuote, field);
        }
    }
    return brokenAt(begin, ExchangeReason::OpenQuote);
}

void CsvReader::skipLineEnd()
{
    if (m_at < m_text.size() && m_text[m_at] == '\r') {
        ++m_at;
    }
    if (m_at < m_text.size() && m_text[m_at] == '\n') {
        ++m_at;
    }
    ++m_line;
}

Result<CsvTable> csvFrom(std::string_view text)
{
    auto reader = CsvReader::on(text);
    if (!reader) {
        return passOn(reader);
    }
    CsvTable table{reader->header(), {}, {}, reader->separator()};
    for (;;) {
        const auto isRow = reader->next();
        if (!isRow) {
            return passOn(isRow);
        }
        if (!*isRow) {
            return table;
        }
        if (reader->cells().size() != table.header.size()) {
            return brokenAt(reader->line(), ExchangeReason::CellCount, reader->cells().size(),
                            table.header.size());
        }
        table.rows.push_back(reader->cells());
        table.lines.push_back(reader->line());
    }
}

std::string csvLine(const std::vector<std::string>& fields)
{
    std::string line;
    for (std::size_t i = 0; i < fields.size(); ++i) {
        const std::string field = guarded(fields[i]);
        line += i == 0 ? "" : ",";
        if (field.find_first_of(",;\t\"\r\n") == std::string::npos && trimmed(field) == field) {
            line += field;
            continue;
        }
        line += '"';
        for (const char c : field) {
            line.append(c == '"' ? 2 : 1, c);
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
    std::string text;
    while (file && file.peek() != std::ifstream::traits_type::eof()) {
        const std::size_t before = text.size();
        text.resize(before + kBytesAtOnce);
        file.read(text.data() + before, static_cast<std::streamsize>(kBytesAtOnce));
        text.resize(before + static_cast<std::size_t>(file.gcount()));
        if (text.size() > kMostMebibytes << 20) {
            return fail(ErrorKind::Unreadable, ExchangeReason::TooLarge, path, kMostMebibytes);
        }
    }
    if (!file.is_open() || file.bad()) {
        return fail(ErrorKind::Unreadable, ExchangeReason::FileUnreadable, path);
    }
    return text;
}

} // namespace plumule
