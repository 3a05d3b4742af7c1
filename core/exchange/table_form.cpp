#include "core/exchange/table_form.h"

#include "core/base/letter_case.h"
#include "core/exchange/csv.h"
#include "core/exchange/day_text.h"
#include "core/exchange/row_fault.h"

#include <algorithm>
#include <set>

namespace plumule {
namespace {

// A header without its unit, in lower case, with single blanks between its words.
struct HeaderWords
{
    std::string name;
    std::string unit;
};

std::string inWords(std::string_view header)
{
    std::string words;
    for (const char c : header) {
        const bool isBlank = std::string_view(" _-./,:()[]\t").find(c) != std::string_view::npos;
        if (!isBlank) {
            words += lowered(c);
        } else if (!words.empty() && words.back() != ' ') {
            words += ' ';
        }
    }
    return std::string(trimmed(words));
}

HeaderWords headerWords(std::string_view header, CellKind kind)
{
    HeaderWords words{inWords(header), ""};
    for (const std::string_view unit : unitsOf(kind)) {
        const std::string ending = " " + inWords(unit);
        if (words.name.ends_with(ending) && ending.size() > words.unit.size() + 1) {
            words.unit = unit;
        }
    }
    if (!words.unit.empty()) {
        words.name.resize(words.name.size() - words.unit.size() - 1);
    }
    return words;
}

// Our own name counts most, then one of its other names.
int fitOf(const TableColumn& column, const std::string& header)
{
    const HeaderWords words = headerWords(header, column.kind);
    if (inWords(header) == inWords(column.name)) {
        return 3;
    }
    if (words.name == headerWords(column.name, column.kind).name) {
        return 2;
    }
    return std::any_of(column.headers.begin(), column.headers.end(),
                       [&](std::string_view other) { return words.name == other; })
               ? 1
               : 0;
}

std::string unitIn(const TableColumn& column, const std::string& header)
{
    if (unitsOf(column.kind).empty()) {
        return {};
    }
    const std::string unit = headerWords(header, column.kind).unit;
    return unit.empty() ? std::string(unitsOf(column.kind).front()) : unit;
}

// The best fits first, so that no column of the file is taken by a lesser one.
std::vector<ColumnMatch> proposedColumns(const std::vector<TableColumn>& columns,
                                         const std::vector<std::string>& header)
{
    std::vector<ColumnMatch> matches(columns.size());
    std::set<std::size_t> taken;
    for (const int wanted : {3, 2, 1}) {
        for (std::size_t i = 0; i < columns.size(); ++i) {
            for (std::size_t at = 0; at < header.size() && !matches[i].at; ++at) {
                if (!taken.contains(at) && fitOf(columns[i], header[at]) == wanted) {
                    matches[i] = {at, unitIn(columns[i], header[at])};
                    taken.insert(at);
                }
            }
        }
    }
    return matches;
}

Done takeDecided(const TableAsk& ask, const std::vector<std::string>& header,
                 std::vector<ColumnMatch>& matches)
{
    const auto& columns = columnsOf(ask.kind);
    for (const NamedMatch& decided : ask.columns) {
        const auto column =
            std::find_if(columns.begin(), columns.end(),
                         [&](const TableColumn& each) { return each.name == decided.column; });
        const auto at = std::find(header.begin(), header.end(), decided.header);
        if (column == columns.end()) {
            return faultAt("", 1, ErrorKind::NotFound, ExchangeReason::ColumnUnknown,
                           decided.column);
        }
        ColumnMatch& match = matches[static_cast<std::size_t>(column - columns.begin())];
        if (decided.header.empty()) {
            match = {};
            continue;
        }
        if (at == header.end()) {
            return faultAt("", 1, ErrorKind::Missing, ExchangeReason::ColumnMissing,
                           decided.header);
        }
        match = {static_cast<std::size_t>(at - header.begin()),
                 decided.unit.empty() ? unitIn(*column, *at) : decided.unit};
    }
    return {};
}

Done checkEachOnce(const std::vector<ColumnMatch>& matches, const std::vector<std::string>& header)
{
    std::set<std::size_t> taken;
    for (const ColumnMatch& match : matches) {
        if (match.at && !taken.insert(*match.at).second) {
            return faultAt("", 1, ErrorKind::Duplicate, ExchangeReason::HeaderTwice,
                           header[*match.at]);
        }
    }
    return {};
}

bool isDecimal(CellKind kind)
{
    return !unitsOf(kind).empty() || kind == CellKind::Sum || kind == CellKind::Number;
}

// What all cells of the file say of how days and decimals are written.
struct Evidence
{
    bool isPoint = false;
    bool isComma = false;
    bool isYearFirst = false;
    bool isDayFirst = false;
    bool isMonthFirst = false;
    bool mayBeEither = false;

    void lookAt(CellKind kind, std::string_view cell)
    {
        if (isDecimal(kind)) {
            const DecimalMark mark = decimalMarkOf({cell}, DecimalMark::Ours);
            isPoint = isPoint || mark == DecimalMark::Point;
            isComma = isComma || mark == DecimalMark::Comma;
        } else if (kind == CellKind::Day) {
            const auto parts = dayPartsIn(cell);
            isYearFirst = isYearFirst || (parts && parts->order == DateOrder::YearMonthDay);
            isDayFirst = isDayFirst || (parts && parts->order == DateOrder::DayMonthYear);
            isMonthFirst = isMonthFirst || (parts && parts->order == DateOrder::MonthDayYear);
            mayBeEither = mayBeEither || (parts && parts->order == DateOrder::Unclear);
        }
    }

    [[nodiscard]] DecimalMark decimalMark(char separator) const
    {
        if (isPoint || isComma) {
            return isPoint && isComma ? DecimalMark::Unclear
                   : isPoint          ? DecimalMark::Point
                                      : DecimalMark::Comma;
        }
        return separator == ',' ? DecimalMark::Ours : DecimalMark::Unclear;
    }
    [[nodiscard]] DateOrder dateOrder() const
    {
        if (isDayFirst != isMonthFirst) {
            return isDayFirst ? DateOrder::DayMonthYear : DateOrder::MonthDayYear;
        }
        return mayBeEither || isDayFirst ? DateOrder::Unclear : DateOrder::YearMonthDay;
    }
};

} // namespace

Result<TableForm> proposedForm(std::string_view text, const TableAsk& ask)
{
    auto reader = CsvReader::on(text);
    if (!reader) {
        return passOn(reader);
    }
    const auto& columns = columnsOf(ask.kind);
    TableForm form{ask.kind, ask.encoding.value_or(TextEncoding::Utf8)};
    form.columns = proposedColumns(columns, reader->header());
    Done taken = takeDecided(ask, reader->header(), form.columns).and_then([&] {
        return checkEachOnce(form.columns, reader->header());
    });
    if (!taken) {
        return passOn(taken);
    }
    Evidence evidence;
    for (auto isRow = reader->next(); isRow && *isRow; isRow = reader->next()) {
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const auto at = form.columns[i].at;
            if (at && *at < reader->cells().size()) {
                evidence.lookAt(columns[i].kind, trimmed(reader->cells()[*at]));
            }
        }
    }
    form.dateOrder = ask.dateOrder.value_or(evidence.dateOrder());
    form.decimalMark = ask.decimalMark.value_or(evidence.decimalMark(reader->separator()));
    return form;
}

} // namespace plumule
