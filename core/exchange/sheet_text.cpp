// Part of core/exchange/journal_sheet.h: cells as text, and back.
#include "core/base/number_text.h"
#include "core/exchange/decimal_text.h"
#include "core/exchange/exchange_reason.h"
#include "core/exchange/journal_sheet.h"
#include "core/exchange/sheet_notes.h"
#include "core/storage/cell_bounds.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fmt/format.h>

namespace plumule {
namespace {

constexpr std::string_view kYes = "yes";
constexpr std::string_view kNo = "no";

bool isOnlyApostrophes(std::string_view text)
{
    return text.find_first_not_of('\'') == std::string_view::npos;
}

std::string wholeText(const SheetColumn& column, std::int64_t value, const SheetNames& names)
{
    switch (column.kind) {
    case SheetKind::Reference:
        return names.nameOf(column.refersTo, value);
    case SheetKind::Minute:
        return toClockText(static_cast<int>(value));
    case SheetKind::Flag:
        return std::string(value != 0 ? kYes : kNo);
    case SheetKind::Scaled:
        return decimalText(value, column.decimals);
    default:
        return std::to_string(value);
    }
}

tl::unexpected<Error> misformed(const SheetColumn& column, const std::string& text)
{
    return fail(ErrorKind::Invalid, ExchangeReason::CellForm, column.name, text);
}

Result<Cell> wholeCell(const SheetColumn& column, const std::string& text)
{
    std::int64_t value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size()) {
        return misformed(column, text);
    }
    return Cell(value);
}

Result<Cell> realCell(const SheetColumn& column, const std::string& text)
{
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) {
        return misformed(column, text);
    }
    return Cell(value);
}

Result<Cell> scaledCell(const SheetColumn& column, const std::string& text)
{
    const auto value = countFromDecimal(text, column.decimals);
    if (value) {
        return Cell(*value);
    }
    if (value.error() == NoCount::TooFine) {
        return fail(ErrorKind::Invalid, ExchangeReason::CellTooFine, column.name, text,
                    decimalText(1, column.decimals) + " " + column.unit);
    }
    return misformed(column, text);
}

Result<Cell> minuteCell(const SheetColumn& column, const std::string& text)
{
    const auto minute = minuteFromText(text);
    return minute ? Result<Cell>(Cell(std::int64_t{*minute})) : misformed(column, text);
}

Result<Cell> flagCell(const SheetColumn& column, const std::string& text)
{
    return text == kYes || text == kNo ? Result<Cell>(Cell(std::int64_t{text == kYes ? 1 : 0}))
                                       : misformed(column, text);
}

Result<Cell> textCell(const JournalSheet& sheet, const SheetColumn& column, const std::string& text)
{
    const auto& words = wordsOf(sheet.table, column.stored);
    if (!words.empty() && std::find(words.begin(), words.end(), text) == words.end()) {
        return fail(ErrorKind::Invalid, ExchangeReason::WordUnknown, column.name, text,
                    fmt::format("{}", fmt::join(words, ", ")));
    }
    const bool hasOneMore = column.mayBeEmpty && isOnlyApostrophes(text);
    return Cell(hasOneMore ? text.substr(1) : text);
}

Result<Cell> unboundedCell(const JournalSheet& sheet, const SheetColumn& column,
                           const std::string& text, const SheetNames& names)
{
    switch (column.kind) {
    case SheetKind::Reference: {
        const auto id = names.find(column, text);
        return id ? Result<Cell>(Cell(*id)) : passOn(id);
    }
    case SheetKind::Number:
    case SheetKind::Whole:
        return wholeCell(column, text);
    case SheetKind::Text:
        return textCell(sheet, column, text);
    case SheetKind::Day:
        return dateFromIso(text) ? Result<Cell>(Cell(text)) : misformed(column, text);
    case SheetKind::Minute:
        return minuteCell(column, text);
    case SheetKind::Flag:
        return flagCell(column, text);
    case SheetKind::Real:
        return realCell(column, text);
    case SheetKind::Scaled:
        return scaledCell(column, text);
    }
    return misformed(column, text);
}

} // namespace

std::string sheetText(const SheetColumn& column, const Cell& cell, const SheetNames& names)
{
    if (const auto* whole = std::get_if<std::int64_t>(&cell)) {
        return wholeText(column, *whole, names);
    }
    if (const auto* real = std::get_if<double>(&cell)) {
        return fmt::format("{}", *real);
    }
    if (const auto* text = std::get_if<std::string>(&cell)) {
        const bool needsOneMore =
            column.kind == SheetKind::Text && column.mayBeEmpty && isOnlyApostrophes(*text);
        return needsOneMore ? *text + "'" : *text;
    }
    return {};
}

Result<Cell> sheetCell(const JournalSheet& sheet, const SheetColumn& column,
                       const std::string& text, const SheetNames& names)
{
    if (text.empty() && column.mayBeEmpty) {
        return Cell{};
    }
    if (text.empty() && column.kind != SheetKind::Text) {
        return fail(ErrorKind::Missing, ExchangeReason::CellMissing, column.name);
    }
    auto cell = unboundedCell(sheet, column, text, names);
    if (!cell) {
        return cell;
    }
    if (const auto fault = boundsFault(column.stored, *cell)) {
        constexpr std::size_t kShown = 60;
        return fail(ErrorKind::Invalid, *fault, text.substr(0, kShown), longestText(column.stored));
    }
    return cell;
}

} // namespace plumule
