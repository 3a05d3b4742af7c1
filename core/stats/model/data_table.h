#pragma once

#include "core/base/result.h"
#include "core/stats/model/model_reason.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumule::stats {

// Numbers of one column; a missing value is nullopt, never NaN.
struct NumberColumn
{
    std::string name;
    std::vector<std::optional<double>> values;
};

// Categories of one column: `codes` index `levels`, which stand in the order of first appearance.
// A missing category is nullopt.
struct FactorColumn
{
    std::string name;
    std::vector<std::string> levels;
    std::vector<std::optional<std::size_t>> codes;
};

// Columns of equal length, numbers or categories, by name. Errors name the column and, where one
// row is at fault, its number (from 1).
class DataTable
{
public:
    // NotFinite for a NaN or infinite value, ColumnTwice for a name in use, ColumnLength for
    // another length than the columns so far.
    Done addNumbers(const std::string& name, std::vector<std::optional<double>> values);
    // Empty cells and "NA" are missing; any other cell must be a finite number, whole, with a
    // point.
    Done addNumbersFromText(const std::string& name, const std::vector<std::string>& cells);
    // Categories whatever the cells look like; empty cells are missing.
    Done addFactor(const std::string& name, const std::vector<std::string>& cells);

    [[nodiscard]] std::size_t rows() const { return m_rows; }
    [[nodiscard]] const NumberColumn* numbers(std::string_view name) const;
    [[nodiscard]] const FactorColumn* factor(std::string_view name) const;
    // The rows asked for, in that order. Levels without a row are dropped, the others keep theirs.
    [[nodiscard]] DataTable withRows(const std::vector<std::size_t>& rows) const;
    // One factor whose levels are the combinations met of several, joined by ":". Missing where any
    // part is missing. NotFound names the column that is not there.
    [[nodiscard]] Result<FactorColumn> crossed(const std::vector<std::string>& factors) const;

private:
    Done takeName(const std::string& name, std::size_t rows);

    std::size_t m_rows = 0;
    std::vector<NumberColumn> m_numbers;
    std::vector<FactorColumn> m_factors;
};

} // namespace plumule::stats
