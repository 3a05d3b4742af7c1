#pragma once

#include <string>
#include <vector>

namespace plumule {

// Ids as a JSON list: one bound text for any number of them, read by json_each(), so that a
// statement stays the same and is kept.
template <class Ids>
[[nodiscard]] std::string idList(const Ids& ids)
{
    std::string list = "[";
    for (const auto id : ids) {
        list += (list.size() > 1 ? "," : "") + std::to_string(id.value);
    }
    return list + "]";
}

// Those of the rows.
template <class Row>
[[nodiscard]] std::string idListOf(const std::vector<Row>& rows)
{
    std::vector<decltype(Row::id)> ids;
    ids.reserve(rows.size());
    for (const Row& row : rows) {
        ids.push_back(row.id);
    }
    return idList(ids);
}

} // namespace plumule
