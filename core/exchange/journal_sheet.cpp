#include "core/exchange/journal_sheet.h"

#include "core/exchange/exchange_reason.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace plumule {
namespace {

// Columns that are counted in a small unit, by how their names end.
struct Scale
{
    std::string_view ending;
    std::string_view written;
    std::string_view unit;
    int decimals;
};
constexpr Scale kScales[] = {
    {"_ul_per_l", "_ml_per_l", "mL/L", 3},
    {"_mg", "_g", "g", 3},
    {"_ul", "_ml", "mL", 3},
    {"_um", "_mm", "mm", 3},
    {"_mw", "_w", "W", 3},
    {"amount", "amount_in_currency", "currency of room.csv", 4},
    {"price", "price_in_currency", "currency of room.csv", 4},
};

// Units of columns that are written as they are stored.
struct Unit
{
    std::string_view ending;
    std::string_view unit;
};
constexpr Unit kUnits[] = {{"_min", "min"},
                           {"_minutes", "min"},
                           {"seconds", "s"},
                           {"_us_cm", "µS/cm"},
                           {"_percent", "percent"}};

// The columns that name a row for others.
struct Naming
{
    std::string_view table;
    std::vector<std::string_view> columns;
};

const std::vector<std::string_view>& namingColumns(std::string_view table)
{
    static const std::vector<Naming> kNamings = {
        {"rack", {"name"}},
        {"shelf", {"rack_id", "name"}},
        {"place", {"shelf_id", "number"}},
        {"variety", {"name"}},
        {"seed_lot", {"variety_id", "lot_number"}},
        {"medium", {"name"}},
        {"piece", {"medium_id", "number"}},
        {"trial", {"code"}},
        {"tray", {"code"}},
        {"harvest", {"tray_id", "cut"}},
        {"panel", {"name"}},
        {"panel_sample", {"panel_id", "medium_id"}},
        {"panel_attribute", {"panel_id", "name"}},
        {"taster", {"panel_id", "name"}},
        {"serving", {"panel_id", "code"}},
    };
    static const std::vector<std::string_view> kNone;
    const auto found = std::find_if(kNamings.begin(), kNamings.end(),
                                    [&](const Naming& each) { return each.table == table; });
    return found == kNamings.end() ? kNone : found->columns;
}

bool isName(const std::string& text)
{
    return !text.empty() && text.front() != '#';
}

void takeScale(SheetColumn& column)
{
    for (const Scale& scale : kScales) {
        if (column.stored.ends_with(scale.ending)) {
            column.kind = SheetKind::Scaled;
            column.decimals = scale.decimals;
            column.unit = scale.unit;
            column.name = column.stored.substr(0, column.stored.size() - scale.ending.size()) +
                          std::string(scale.written);
            return;
        }
    }
}

SheetKind kindOf(const std::string& stored, const std::string& type)
{
    if (type == "REAL") {
        return SheetKind::Real;
    }
    if (type == "TEXT") {
        const bool isDay = stored.ends_with("_on") || stored.ends_with("_date");
        return isDay ? SheetKind::Day : SheetKind::Text;
    }
    if (stored == "minute" || stored.ends_with("_minute")) {
        return SheetKind::Minute;
    }
    const bool isFlag = stored.starts_with("is_") || stored == "starts_with_soak";
    return isFlag ? SheetKind::Flag : SheetKind::Whole;
}

} // namespace

SheetColumn sheetColumnOf(const std::string& stored, const std::string& type,
                          const std::string& refersTo, bool mayBeEmpty)
{
    SheetColumn column{stored, stored, kindOf(stored, type), 0, "", refersTo, mayBeEmpty};
    if (stored == "id") {
        column.kind = SheetKind::Number;
        column.mayBeEmpty = false;
    } else if (!refersTo.empty()) {
        column.kind = SheetKind::Reference;
        column.name = stored.substr(0, stored.size() - std::string_view("_id").size());
    } else if (column.kind == SheetKind::Minute) {
        column.name = stored.substr(0, stored.size() - std::string_view("minute").size()) + "time";
        column.unit = "HH:MM";
    } else if (column.kind == SheetKind::Day) {
        column.unit = "YYYY-MM-DD";
    } else if (column.kind == SheetKind::Whole) {
        takeScale(column);
    }
    for (const Unit& each : kUnits) {
        if (column.unit.empty() && stored.ends_with(each.ending)) {
            column.unit = each.unit;
        }
    }
    return column;
}

void SheetNames::note(const JournalSheet& sheet, const std::vector<std::string>& cells,
                      std::int64_t id)
{
    OfTable& rows = m_tables[sheet.table];
    std::string name;
    for (const std::string_view wanted : namingColumns(sheet.table)) {
        for (std::size_t i = 0; i < sheet.columns.size() && i < cells.size(); ++i) {
            if (sheet.columns[i].stored == wanted) {
                name += (name.empty() ? "" : "/") + cells[i];
            }
        }
    }
    if (isName(name)) {
        const auto [known, isNew] = rows.byName.emplace(name, id);
        known->second = isNew ? id : 0;
    }
    rows.byId.emplace(id, std::move(name));
}

std::string SheetNames::nameOf(const std::string& table, std::int64_t id) const
{
    const auto rows = m_tables.find(table);
    if (rows != m_tables.end()) {
        const auto row = rows->second.byId.find(id);
        if (row != rows->second.byId.end() && isName(row->second) &&
            rows->second.byName.at(row->second) == id) {
            return row->second;
        }
    }
    return "#" + std::to_string(id);
}

bool SheetNames::has(const std::string& table, std::int64_t id) const
{
    const auto rows = m_tables.find(table);
    return rows != m_tables.end() && rows->second.byId.contains(id);
}

Result<std::int64_t> SheetNames::find(const SheetColumn& column, const std::string& text) const
{
    const auto unknown = [&] {
        return fail(ErrorKind::NotFound, ExchangeReason::NameUnknown, column.name, text);
    };
    if (text.starts_with('#')) {
        std::int64_t id = 0;
        const auto [end, error] = std::from_chars(text.data() + 1, text.data() + text.size(), id);
        const bool isWhole = error == std::errc{} && end == text.data() + text.size();
        return isWhole && has(column.refersTo, id) ? Result<std::int64_t>(id) : unknown();
    }
    const auto rows = m_tables.find(column.refersTo);
    if (rows == m_tables.end()) {
        return unknown();
    }
    const auto row = rows->second.byName.find(text);
    if (row == rows->second.byName.end()) {
        return unknown();
    }
    if (row->second == 0) {
        return fail(ErrorKind::Ambiguous, ExchangeReason::NameOfSeveral, column.name, text);
    }
    return row->second;
}

} // namespace plumule
