#pragma once

#include "core/storage/column_traits.h"

#include <cstdint>
#include <string>
#include <vector>

namespace plumule {

enum class ChangeKind
{
    Insert,
    Update,
    Delete
};

// A cell that an undo would write anew.
struct CellEffect
{
    std::string column;
    Cell now;
    Cell after;
    bool operator==(const CellEffect&) const = default;
};

// What an undo would do to a row: put it back, take it away, or write cells of it anew.
struct RowEffect
{
    ChangeKind kind = ChangeKind::Update;
    std::string table;
    std::int64_t id = 0;
    std::vector<CellEffect> cells; // of an update
};

} // namespace plumule
