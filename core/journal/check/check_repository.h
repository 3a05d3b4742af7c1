#pragma once

#include "core/base/result.h"

#include <vector>

namespace plumule {

class Database;

// Rows that are sound each by itself and yet can't all be true, and words that are none. Throws
// StorageFailure.
class CheckRepository
{
public:
    explicit CheckRepository(Database& database)
        : m_database(database)
    {}

    // FaultReason::CellWord for a column that holds none of its words; CellValue for a number that
    // has no meaning in its column.
    [[nodiscard]] std::vector<Error> unknownWords();
    // With a CheckReason that is not one of the standing rules'.
    [[nodiscard]] std::vector<Error> contradictions();

private:
    Database& m_database;
};

} // namespace plumule
