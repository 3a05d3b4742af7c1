#pragma once

#include "core/base/result.h"
#include "core/storage/storage_reason.h"

#include <cstdint>
#include <stdexcept>
#include <string>

namespace plumule {

// What the machine broke. Thrown inside core/storage and the repositories, turned into an Error
// once, at the journal's door.
class StorageFailure : public std::runtime_error
{
public:
    explicit StorageFailure(Error error)
        : std::runtime_error(wordsFrom(error))
        , m_error(std::move(error))
    {}
    // As fail(): StorageFailure(ErrorKind::FileGone, StorageReason::FileGone, path)
    template <class... Values>
    StorageFailure(ErrorKind kind, StorageReason reason, Values&&... values)
        : StorageFailure(fail(kind, reason, std::forward<Values>(values)...).value())
    {}
    [[nodiscard]] const Error& error() const { return m_error; }

private:
    // For a debugger and a crash report alone.
    static std::string wordsFrom(const Error& error)
    {
        std::string words = "storage " + std::to_string(error.reason.code());
        for (const std::string& value : error.values) {
            words += ": " + value;
        }
        return words;
    }

    Error m_error;
};

// Damaged: a row that holds what core can't read, or that points at nothing. Row 0: it is not known
// which.
[[nodiscard]] inline StorageFailure damagedRow(const std::string& table, std::int64_t row)
{
    Error error = fail(ErrorKind::Damaged, StorageReason::RowDamaged).value();
    error.row = RowAt{table, row};
    return StorageFailure(std::move(error));
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
