#pragma once

#include <string>
#include <vector>

namespace plumule {

// The ids of the rows as a JSON list: one bound text for any number of them, read by json_each(),
// so that a statement stays the same and is kept.
template <class Row>
[[nodiscard]] std::string idListOf(const std::vector<Row>& rows)
{
    std::string list = "[";
    for (const Row& row : rows) {
        list += (list.size() > 1 ? "," : "") + std::to_string(row.id.value);
    }
    return list + "]";
}

} // namespace plumule
