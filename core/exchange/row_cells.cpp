#include "core/exchange/row_cells.h"

#include "core/base/bounds_reason.h"
#include "core/base/letter_case.h"
#include "core/exchange/day_text.h"
#include "core/exchange/row_fault.h"
#include "core/storage/cell_bounds.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <fmt/format.h>

namespace plumule {
namespace {

constexpr std::size_t kKeptFaults = 500;
constexpr std::size_t kShownText = 60;
constexpr double kPerThousandth = 1e3;
constexpr double kPerMoney = 1e4;

std::string inLowerCase(std::string text)
{
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c == ' ' ? '_' : lowered(c); });
    return text;
}

// A hostile cell may be as long as the file; cut between letters.
std::string beginningOf(const std::string& text)
{
    std::size_t length = std::min(text.size(), kShownText);
    while (length < text.size() && length > 0 && (text[length] & '\xC0') == '\x80') {
        --length;
    }
    return text.substr(0, length);
}

} // namespace

void FaultList::add(Error fault)
{
    ++m_count;
    if (m_kept.size() < kKeptFaults) {
        m_kept.push_back(std::move(fault));
    }
}

std::vector<Error> FaultList::sorted() const
{
    std::vector<Error> faults = m_kept;
    std::stable_sort(faults.begin(), faults.end(), [](const Error& a, const Error& b) {
        return (a.row ? a.row->number : 0) < (b.row ? b.row->number : 0);
    });
    return faults;
}

RowCells::RowCells(const TableForm& form, const std::vector<std::string>& header, FaultList& faults)
    : m_form(form)
    , m_columns(columnsOf(form.kind))
    , m_header(header)
    , m_faults(faults)
{
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        m_indices.emplace(m_columns[i].name, i);
    }
}

void RowCells::note(Error fault)
{
    fault.row = RowAt{"", m_line};
    m_hasFaults = true;
    m_faults.add(std::move(fault));
}

void RowCells::missing(std::string_view column)
{
    fault(ErrorKind::Missing, ExchangeReason::CellMissing, nameOf(column));
}

void RowCells::misformed(std::string_view column)
{
    fault(ErrorKind::Invalid, ExchangeReason::CellForm, nameOf(column), beginningOf(text(column)));
}

void RowCells::unknown(std::string_view column)
{
    fault(ErrorKind::NotFound, ExchangeReason::NameUnknown, nameOf(column),
          beginningOf(text(column)));
}

std::size_t RowCells::indexOf(std::string_view column) const
{
    const auto found = m_indices.find(column);
    assert(found != m_indices.end());
    return found->second;
}

std::string RowCells::nameOf(std::string_view column) const
{
    const auto at = m_form.columns[indexOf(column)].at;
    return at ? m_header[*at] : std::string(column);
}

std::string RowCells::text(std::string_view column) const
{
    const auto at = m_form.columns[indexOf(column)].at;
    return at && *at < m_cells->size() ? std::string(trimmed((*m_cells)[*at])) : std::string();
}

std::optional<std::string> RowCells::maybe(std::string_view column) const
{
    std::string value = text(column);
    return value.empty() ? std::nullopt : std::optional(std::move(value));
}

std::string RowCells::needed(std::string_view column)
{
    std::string value = text(column);
    if (value.empty()) {
        missing(column);
    }
    return value;
}

std::optional<Date> RowCells::day(std::string_view column)
{
    const std::string value = text(column);
    if (value.empty()) {
        return std::nullopt;
    }
    const auto day = dayFromText(value, m_form.dateOrder);
    if (!day && day.error().kind == ErrorKind::Ambiguous) {
        fault(ErrorKind::Ambiguous, ExchangeReason::DayAmbiguous, nameOf(column), value);
    } else if (!day) {
        misformed(column);
    } else if (boundsFault("on_date", toIso(*day))) {
        fault(ErrorKind::Invalid, BoundsReason::Day, value);
    } else {
        return *day;
    }
    return std::nullopt;
}

std::optional<int> RowCells::minute(std::string_view column)
{
    const std::string value = text(column);
    if (value.empty()) {
        return std::nullopt;
    }
    const auto minute = minuteFromText(value);
    if (!minute) {
        misformed(column);
        return std::nullopt;
    }
    return *minute;
}

std::optional<double> RowCells::amount(std::string_view column, double most, Amounts amounts)
{
    const std::string value = text(column);
    if (value.empty()) {
        return std::nullopt;
    }
    const std::size_t index = indexOf(column);
    const auto number = decimalFromText(value, m_form.decimalMark);
    if (!number && number.error().kind == ErrorKind::Ambiguous) {
        fault(ErrorKind::Ambiguous, ExchangeReason::CellAmbiguous, nameOf(column), value);
        return std::nullopt;
    }
    const double inOurs =
        number.value_or(-1) * unitFactor(m_columns[index].kind, m_form.columns[index].unit);
    if (!number || inOurs < 0 || inOurs > most || (inOurs == 0 && amounts == Amounts::Positive)) {
        misformed(column);
        return std::nullopt;
    }
    return inOurs;
}

std::optional<std::int64_t> RowCells::count(std::string_view column, double most,
                                            double countsPerUnit, Amounts amounts)
{
    const auto value = amount(column, most, amounts);
    if (!value) {
        return std::nullopt;
    }
    const std::int64_t counted = std::llround(*value * countsPerUnit);
    if (counted == 0 && *value > 0) {
        fault(ErrorKind::Invalid, ExchangeReason::CellTooFine, nameOf(column), text(column),
              fmt::format("{}", 1 / countsPerUnit));
        return std::nullopt;
    }
    return counted;
}

std::optional<Mass> RowCells::mass(std::string_view column, double most)
{
    const auto counted = count(column, most, kPerThousandth, Amounts::Positive);
    return counted ? std::optional(Mass::ofCount(*counted)) : std::nullopt;
}

std::optional<Length> RowCells::length(std::string_view column, double most, Amounts amounts)
{
    const auto counted = count(column, most, kPerThousandth, amounts);
    return counted ? std::optional(Length::ofCount(*counted)) : std::nullopt;
}

std::optional<Volume> RowCells::volume(std::string_view column, double most)
{
    const auto counted = count(column, most, kPerThousandth, Amounts::Positive);
    return counted ? std::optional(Volume::ofCount(*counted)) : std::nullopt;
}

std::optional<Money> RowCells::money(std::string_view column, double most)
{
    const auto counted = count(column, most, kPerMoney, Amounts::NotNegative);
    return counted ? std::optional(Money::ofCount(*counted)) : std::nullopt;
}

std::optional<double> RowCells::number(std::string_view column, double most)
{
    return amount(column, most, Amounts::NotNegative);
}

std::optional<int> RowCells::whole(std::string_view column, int least, int most)
{
    const std::string value = text(column);
    if (value.empty()) {
        return std::nullopt;
    }
    const auto whole = wholeFromText(value);
    if (!whole || *whole < least || *whole > most) {
        misformed(column);
        return std::nullopt;
    }
    return static_cast<int>(*whole);
}

std::optional<bool> RowCells::flag(std::string_view column)
{
    const std::string value = inLowerCase(text(column));
    if (value.empty()) {
        return std::nullopt;
    }
    if (value == "yes" || value == "true" || value == "1") {
        return true;
    }
    if (value != "no" && value != "false" && value != "0") {
        misformed(column);
    }
    return false;
}

std::string RowCells::wordIn(std::string_view column)
{
    std::string value = inLowerCase(text(column));
    const auto& words = m_columns[indexOf(column)].words;
    if (!value.empty() && std::find(words.begin(), words.end(), value) == words.end()) {
        fault(ErrorKind::Invalid, ExchangeReason::WordUnknown, nameOf(column),
              beginningOf(text(column)), fmt::format("{}", fmt::join(words, ", ")));
        return {};
    }
    return value;
}

std::string RowCells::shownCell(const TableColumn& column)
{
    const auto decimal = [&](CellKind kind) -> std::string {
        const auto number = decimalFromText(text(column.name), m_form.decimalMark);
        const std::string& unit = m_form.columns[indexOf(column.name)].unit;
        return number ? fmt::format("{:.10g}", *number * unitFactor(kind, unit)) : "";
    };
    std::string shown = text(column.name);
    if (column.kind == CellKind::Day) {
        const auto day = dayFromText(shown, m_form.dateOrder);
        return day ? toIso(*day) : beginningOf(shown);
    }
    if (!unitsOf(column.kind).empty() || column.kind == CellKind::Sum ||
        column.kind == CellKind::Number) {
        const std::string read = decimal(column.kind);
        return read.empty() ? beginningOf(shown) : read;
    }
    return beginningOf(shown);
}

std::vector<std::string> RowCells::shown()
{
    std::vector<std::string> cells;
    for (const TableColumn& column : m_columns) {
        cells.push_back(shownCell(column));
    }
    return cells;
}

} // namespace plumule
