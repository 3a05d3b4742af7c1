#pragma once

#include "core/base/date.h"
#include "core/base/money.h"
#include "core/base/quantity.h"
#include "core/exchange/exchange_reason.h"
#include "core/exchange/table_form.h"

#include <unordered_map>

namespace plumule {

// What is wrong in a table. The first few hundred are kept; a file of faults must not become a list
// as large as itself.
class FaultList
{
public:
    void add(Error fault);
    [[nodiscard]] std::int64_t count() const { return m_count; }
    // By line.
    [[nodiscard]] std::vector<Error> sorted() const;

private:
    std::vector<Error> m_kept;
    std::int64_t m_count = 0;
};

// What an amount may be.
enum class Amounts
{
    Positive,
    NotNegative
};

// The cells of one row by our columns' names, read as the form says; notes what is wrong with them
// under the file's own names. An empty cell is none. Form and header must outlive it.
class RowCells
{
public:
    RowCells(const TableForm& form, const std::vector<std::string>& header, FaultList& faults);

    // Turns to a row of the file.
    void turnTo(const std::vector<std::string>& cells, int line)
    {
        m_cells = &cells;
        m_line = line;
        m_hasFaults = false;
    }
    [[nodiscard]] int line() const { return m_line; }
    // Of the present row.
    [[nodiscard]] bool hasFaults() const { return m_hasFaults; }

    template <ReasonEnum R, class... Values>
    void fault(ErrorKind kind, R reason, Values&&... values)
    {
        note(fail(kind, reason, std::forward<Values>(values)...).value());
    }
    void note(Error fault);
    void missing(std::string_view column);
    void misformed(std::string_view column);
    // Nothing is called so: the cell of that column names what is not there.
    void unknown(std::string_view column);

    // Without blanks around.
    [[nodiscard]] std::string text(std::string_view column) const;
    [[nodiscard]] std::optional<std::string> maybe(std::string_view column) const;
    std::string needed(std::string_view column);
    // 1990 to 2100.
    std::optional<Date> day(std::string_view column);
    std::optional<int> minute(std::string_view column);
    // `most` in g and mm; more than 0 and yet less than what is kept is refused, not rounded away.
    std::optional<Mass> mass(std::string_view column, double most);
    std::optional<Length> length(std::string_view column, double most,
                                 Amounts amounts = Amounts::Positive);
    std::optional<Volume> volume(std::string_view column, double most); // mL
    std::optional<Money> money(std::string_view column, double most);
    // 0 and up, in µS/cm where it is a conductivity.
    std::optional<double> number(std::string_view column, double most);
    std::optional<int> whole(std::string_view column, int least, int most);
    std::optional<bool> flag(std::string_view column);
    // In any letter case (A–Z).
    template <class Word>
    std::optional<Word> word(std::string_view column)
    {
        Word value{};
        const std::string wanted = wordIn(column);
        return !wanted.empty() && fromText(wanted, value) ? std::optional(value) : std::nullopt;
    }

    // The row as it is read, in our units, a text a column; empty where there is no such column.
    [[nodiscard]] std::vector<std::string> shown();

private:
    [[nodiscard]] std::size_t indexOf(std::string_view column) const;
    [[nodiscard]] std::string nameOf(std::string_view column) const;
    std::optional<double> amount(std::string_view column, double most, Amounts amounts);
    std::optional<std::int64_t> count(std::string_view column, double most, double countsPerUnit,
                                      Amounts amounts);
    std::string wordIn(std::string_view column);
    std::string shownCell(const TableColumn& column);

    const TableForm& m_form;
    const std::vector<TableColumn>& m_columns;
    const std::vector<std::string>& m_header;
    FaultList& m_faults;
    std::unordered_map<std::string_view, std::size_t> m_indices;
    const std::vector<std::string>* m_cells = nullptr;
    int m_line = 0;
    bool m_hasFaults = false;
};

} // namespace plumule
