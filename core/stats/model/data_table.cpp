#include "core/stats/model/data_table.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <unordered_map>

namespace plumule::stats {

namespace {

tl::unexpected<Error> inRow(std::size_t row, tl::unexpected<Error> fault)
{
    fault.value().row = RowAt{{}, static_cast<std::int64_t>(row) + 1};
    return fault;
}

std::optional<double> wholeNumber(std::string_view cell)
{
    if (!cell.empty() && cell.front() == '+') {
        cell.remove_prefix(1);
    }
    double value = 0;
    const auto [end, fault] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (fault != std::errc() || end != cell.data() + cell.size() || !std::isfinite(value)) {
        return std::nullopt;
    }
    return value;
}

template <class Column>
const Column* columnNamed(const std::vector<Column>& columns, std::string_view name)
{
    const auto found =
        std::find_if(columns.begin(), columns.end(), [&](const auto& c) { return c.name == name; });
    return found == columns.end() ? nullptr : &*found;
}

FactorColumn factorWithRows(const FactorColumn& whole, const std::vector<std::size_t>& rows)
{
    std::vector<bool> met(whole.levels.size());
    for (const std::size_t row : rows) {
        if (whole.codes[row]) {
            met[*whole.codes[row]] = true;
        }
    }
    FactorColumn part{whole.name, {}, {}};
    std::vector<std::size_t> newCode(whole.levels.size());
    for (std::size_t level = 0; level < met.size(); ++level) {
        newCode[level] = part.levels.size();
        if (met[level]) {
            part.levels.push_back(whole.levels[level]);
        }
    }
    part.codes.reserve(rows.size());
    for (const std::size_t row : rows) {
        const auto& code = whole.codes[row];
        part.codes.push_back(code ? std::optional(newCode[*code]) : std::nullopt);
    }
    return part;
}

} // namespace

Done DataTable::takeName(const std::string& name, std::size_t rows)
{
    if (name.empty()) {
        return fail(ErrorKind::Missing, ModelReason::ColumnNameMissing);
    }
    if (numbers(name) != nullptr || factor(name) != nullptr) {
        return fail(ErrorKind::Duplicate, ModelReason::ColumnTwice, name);
    }
    const bool first = m_numbers.empty() && m_factors.empty();
    if (!first && rows != m_rows) {
        return fail(ErrorKind::Invalid, ModelReason::ColumnLength, name);
    }
    m_rows = rows;
    return {};
}

Done DataTable::addNumbers(const std::string& name, std::vector<std::optional<double>> values)
{
    for (std::size_t row = 0; row < values.size(); ++row) {
        if (values[row] && !std::isfinite(*values[row])) {
            return inRow(row, fail(ErrorKind::Invalid, ModelReason::NotFinite, name));
        }
    }
    if (auto taken = takeName(name, values.size()); !taken) {
        return taken;
    }
    m_numbers.push_back({name, std::move(values)});
    return {};
}

Done DataTable::addNumbersFromText(const std::string& name, const std::vector<std::string>& cells)
{
    std::vector<std::optional<double>> values;
    values.reserve(cells.size());
    for (std::size_t row = 0; row < cells.size(); ++row) {
        if (cells[row].empty() || cells[row] == "NA") {
            values.emplace_back();
            continue;
        }
        values.push_back(wholeNumber(cells[row]));
        if (!values.back()) {
            return inRow(row, fail(ErrorKind::Invalid, ModelReason::NotANumber, name, cells[row]));
        }
    }
    return addNumbers(name, std::move(values));
}

Done DataTable::addFactor(const std::string& name, const std::vector<std::string>& cells)
{
    if (auto taken = takeName(name, cells.size()); !taken) {
        return taken;
    }
    FactorColumn column{name, {}, {}};
    column.codes.reserve(cells.size());
    std::unordered_map<std::string, std::size_t> codeOf;
    for (const std::string& cell : cells) {
        if (cell.empty()) {
            column.codes.emplace_back();
            continue;
        }
        const auto [place, isNew] = codeOf.try_emplace(cell, column.levels.size());
        if (isNew) {
            column.levels.push_back(cell);
        }
        column.codes.emplace_back(place->second);
    }
    m_factors.push_back(std::move(column));
    return {};
}

const NumberColumn* DataTable::numbers(std::string_view name) const
{
    return columnNamed(m_numbers, name);
}

const FactorColumn* DataTable::factor(std::string_view name) const
{
    return columnNamed(m_factors, name);
}

DataTable DataTable::withRows(const std::vector<std::size_t>& rows) const
{
    DataTable part;
    part.m_rows = rows.size();
    for (const NumberColumn& whole : m_numbers) {
        NumberColumn column{whole.name, {}};
        column.values.reserve(rows.size());
        for (const std::size_t row : rows) {
            column.values.push_back(whole.values[row]);
        }
        part.m_numbers.push_back(std::move(column));
    }
    for (const FactorColumn& whole : m_factors) {
        part.m_factors.push_back(factorWithRows(whole, rows));
    }
    return part;
}

Result<FactorColumn> DataTable::crossed(const std::vector<std::string>& factors) const
{
    std::string joined;
    std::vector<std::string> cells(m_rows);
    std::vector<bool> missing(m_rows);
    for (const std::string& name : factors) {
        const FactorColumn* part = factor(name);
        if (part == nullptr) {
            return fail(ErrorKind::NotFound, ModelReason::ColumnUnknown, name);
        }
        joined += (joined.empty() ? "" : ":") + name;
        for (std::size_t row = 0; row < m_rows; ++row) {
            if (!part->codes[row]) {
                missing[row] = true;
            } else {
                cells[row] += (cells[row].empty() ? "" : ":") + part->levels[*part->codes[row]];
            }
        }
    }
    for (std::size_t row = 0; row < m_rows; ++row) {
        if (missing[row]) {
            cells[row].clear();
        }
    }
    DataTable one;
    if (auto added = one.addFactor(joined, cells); !added) {
        return tl::unexpected(added.error());
    }
    return *one.factor(joined);
}

} // namespace plumule::stats
