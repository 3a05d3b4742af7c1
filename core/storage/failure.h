#pragma once

#include "core/base/result.h"

#include <cstdint>
#include <stdexcept>
#include <string>

namespace plumule {

// What the machine broke. Thrown inside core/storage and the repositories, turned into an Error
// once, at the journal's door.
class StorageFailure : public std::runtime_error
{
public:
    StorageFailure(ErrorKind kind, const std::string& subject, const std::string& detail)
        : std::runtime_error(subject + ": " + detail)
        , m_error{kind, subject, detail}
    {}
    explicit StorageFailure(Error error)
        : std::runtime_error("refused")
        , m_error(std::move(error))
    {}
    [[nodiscard]] const Error& error() const { return m_error; }

private:
    Error m_error;
};

// Damaged: a row that holds what core can't read, or that points at nothing. Row 0: it is not known
// which.
[[nodiscard]] inline StorageFailure damagedRow(const std::string& table, std::int64_t row)
{
    return {ErrorKind::Damaged, table, row == 0 ? std::string() : std::to_string(row)};
}

// What the row of `table` points at, in a map of what was read; throws damagedRow() where it is not
// there.
template <class Map, class RowId>
const auto& pointedAt(const Map& rows, const typename Map::key_type& id, const char* table,
                      RowId row)
{
    const auto found = rows.find(id);
    if (found == rows.end()) {
        throw damagedRow(table, row.value);
    }
    return found->second;
}

} // namespace plumule
