// Part of compare_table.h: the columns that a request needs, out of rows of cells.
#include "core/stats/model/compare_table.h"

#include <algorithm>

namespace plumule::stats {

namespace {

using CellRows = std::vector<std::vector<std::string>>;

Done checkShape(const std::vector<std::string>& header, const CellRows& rows)
{
    if (rows.empty()) {
        return fail(ErrorKind::TooFew, ModelReason::TooFewRows);
    }
    for (std::size_t row = 0; row < rows.size(); ++row) {
        if (rows[row].size() != header.size()) {
            auto fault =
                fail(ErrorKind::Invalid, ModelReason::RowLength, rows[row].size(), header.size());
            fault.value().row = RowAt{{}, static_cast<std::int64_t>(row) + 1};
            return fault;
        }
    }
    return {};
}

enum class ColumnKind
{
    Numbers,
    Categories,
};

// Each column that the request names.
std::vector<std::pair<std::string, ColumnKind>> columnsOf(const CompareRequest& request)
{
    std::vector<std::pair<std::string, ColumnKind>> columns{
        {request.response, ColumnKind::Numbers}, {request.medium, ColumnKind::Categories}};
    for (const std::string& name : request.factors) {
        columns.emplace_back(name, ColumnKind::Categories);
    }
    for (const std::string& name : request.covariates) {
        columns.emplace_back(name, ColumnKind::Numbers);
    }
    for (const TermColumns& names : request.random) {
        for (const std::string& name : names) {
            columns.emplace_back(name, ColumnKind::Categories);
        }
    }
    return columns;
}

// Once, however often it is named.
Done addColumn(DataTable& table, const std::vector<std::string>& header, const CellRows& rows,
               const std::string& name, ColumnKind kind)
{
    if (table.numbers(name) != nullptr || table.factor(name) != nullptr) {
        return {};
    }
    const auto place = std::find(header.begin(), header.end(), name);
    if (place == header.end()) {
        return fail(ErrorKind::NotFound, ModelReason::ColumnUnknown, name);
    }
    std::vector<std::string> cells;
    for (const auto& row : rows) {
        cells.push_back(row[static_cast<std::size_t>(place - header.begin())]);
    }
    return kind == ColumnKind::Numbers ? table.addNumbersFromText(name, cells)
                                       : table.addFactor(name, cells);
}

} // namespace

Result<DataTable> tableForRequest(const std::vector<std::string>& header, const CellRows& rows,
                                  const CompareRequest& request)
{
    if (const Done shaped = checkShape(header, rows); !shaped) {
        return tl::unexpected(shaped.error());
    }
    DataTable table;
    for (const auto& [name, kind] : columnsOf(request)) {
        if (const Done added = addColumn(table, header, rows, name, kind); !added) {
            return tl::unexpected(added.error());
        }
    }
    return table;
}

} // namespace plumule::stats
