#pragma once

#include "core/base/result.h"
#include "core/storage/column_traits.h"

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace plumule {

// How a column of a journal's table stands in a table of text.
enum class SheetKind
{
    Number,    // the row's own
    Reference, // to a row of another table: its name or code, else "#" and its number
    Text,
    Day,    // YYYY-MM-DD
    Minute, // HH:MM
    Flag,   // yes, no
    Whole,
    Real,
    Scaled // counted in a small unit, written as a decimal of a large one
};

struct SheetColumn
{
    std::string stored; // "net_mg"
    std::string name;   // "net_g"
    SheetKind kind = SheetKind::Text;
    int decimals = 0;     // of Scaled
    std::string unit;     // "g"; empty: none
    std::string refersTo; // the table, of a Reference
    bool mayBeEmpty = true;
};

// One table of the journal as a file "<table>.csv".
struct JournalSheet
{
    std::string table;
    std::vector<SheetColumn> columns;
};

// How the schema's column is written out, from its name, its type and what it refers to.
[[nodiscard]] SheetColumn sheetColumnOf(const std::string& stored, const std::string& type,
                                        const std::string& refersTo, bool mayBeEmpty);

// What the rows of a table are called where others refer to them: codes and names, with "/" between
// ("A/1/4"). A name that two rows have, that is empty or begins with "#" names none: such rows are
// referred to by "#" and their number.
class SheetNames
{
public:
    // Names the row after the cells of its table's naming columns. Nothing where it has none.
    void note(const JournalSheet& sheet, const std::vector<std::string>& cells, std::int64_t id);
    [[nodiscard]] std::string nameOf(const std::string& table, std::int64_t id) const;
    // NameUnknown, NameOfSeveral, with the column and the text.
    [[nodiscard]] Result<std::int64_t> find(const SheetColumn& column,
                                            const std::string& text) const;
    [[nodiscard]] bool has(const std::string& table, std::int64_t id) const;

private:
    struct OfTable
    {
        std::unordered_map<std::int64_t, std::string> byId;
        std::unordered_map<std::string, std::int64_t> byName; // 0: of several
    };
    std::unordered_map<std::string, OfTable> m_tables;
};

// A stored cell as text, and back. Both are exact: 1 mg is "0.001" g and nothing finer is read. In
// a text that may be missing, an empty one is written as an apostrophe, and one of nothing but
// apostrophes with one more.
[[nodiscard]] std::string sheetText(const SheetColumn& column, const Cell& cell,
                                    const SheetNames& names);
// Missing; Invalid CellForm, CellTooFine, WordUnknown and a BoundsReason; NotFound; Ambiguous.
[[nodiscard]] Result<Cell> sheetCell(const JournalSheet& sheet, const SheetColumn& column,
                                     const std::string& text, const SheetNames& names);

} // namespace plumule
