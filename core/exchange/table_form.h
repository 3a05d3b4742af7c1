#pragma once

#include "core/base/number_text.h"
#include "core/exchange/file_text.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumule {

// What the rows of a table from elsewhere are.
enum class TableKind
{
    Trays,
    Stages,
    Waterings,
    Heights,
    Cuts,
    Residues,
    Scores,
    Prices,
    SeedLots,
    Pieces,
    WaterReadings
};
// trays, stages, waterings, heights, cuts, residues, scores, prices, seed_lots, pieces,
// water_readings
[[nodiscard]] const char* toText(TableKind kind);
bool fromText(std::string_view text, TableKind& kind);
[[nodiscard]] const std::vector<TableKind>& allTableKinds();

// How the cells of a column are read.
enum class CellKind
{
    Text,
    Day,
    Time, // HH:MM
    Weight,
    Distance,
    Fluid,
    Conductivity,
    Sum,    // in the room's currency
    Number, // with decimals, without a unit
    Whole,
    Word, // one of the column's words
    Flag  // yes, no, true, false, 1, 0
};

enum class Need
{
    Always,   // the column, and something in every row of it
    InHeader, // the column: without it much would be lost unseen
    Nothing
};

struct TableColumn
{
    std::string_view name; // "net_g"
    CellKind kind = CellKind::Text;
    Need need = Need::Nothing;
    std::vector<std::string_view> headers = {}; // what else it is called, without a unit
    std::vector<std::string_view> words = {};   // of Word
};
[[nodiscard]] const std::vector<TableColumn>& columnsOf(TableKind kind);

// The units that such a column may be in, the usual one first; empty where it has none.
[[nodiscard]] const std::vector<std::string_view>& unitsOf(CellKind kind);
// How many g, mm, mL or µS/cm it is; 1 where there is no such unit.
[[nodiscard]] double unitFactor(CellKind kind, std::string_view unit);

enum class DateOrder
{
    YearMonthDay,
    DayMonthYear,
    MonthDayYear,
    Unclear // day or month first: what may be either is not read
};
[[nodiscard]] const char* toText(DateOrder order); // ymd, dmy, mdy, unclear
bool fromText(std::string_view text, DateOrder& order);

// Where a column is found in the file, and what its numbers are in.
struct ColumnMatch
{
    std::optional<std::size_t> at; // none: nowhere
    std::string unit = {};
    bool operator==(const ColumnMatch&) const = default;
};

// How a file is read.
struct TableForm
{
    TableKind kind = TableKind::Trays;
    TextEncoding encoding = TextEncoding::Utf8;
    DateOrder dateOrder = DateOrder::YearMonthDay;
    DecimalMark decimalMark = DecimalMark::Ours;
    std::vector<ColumnMatch> columns = {}; // in the order of columnsOf(kind)
    bool operator==(const TableForm&) const = default;
};

// A match by names: which column of the file is ours, and its unit.
struct NamedMatch
{
    std::string column;
    std::string header; // empty: left out
    std::string unit;   // empty: as the header says
    bool operator==(const NamedMatch&) const = default;
};

// What a person has decided of a file; the rest is proposed.
struct TableAsk
{
    TableKind kind = TableKind::Trays;
    std::optional<TextEncoding> encoding = {};
    std::optional<DateOrder> dateOrder = {};
    std::optional<DecimalMark> decimalMark = {};
    std::vector<NamedMatch> columns = {};
};

// The form that the words of the header and all cells of the file speak for, in `text` as UTF-8,
// under what was decided. Where no number tells, a point is decimals in a file that is parted by
// commas; others part by semicolons because their decimals have the comma. As CsvReader;
// ColumnUnknown, ColumnMissing for a match of names that are not there; HeaderTwice for a column of
// the file that is to be two.
[[nodiscard]] Result<TableForm> proposedForm(std::string_view text, const TableAsk& ask);

} // namespace plumule
