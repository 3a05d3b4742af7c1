#pragma once

#include "core/storage/history_since.h"

#include <compare>
#include <string>
#include <vector>

namespace plumule {

// Of two journals: the one that is open, and the copy that comes back.
enum class Side
{
    Here,
    There
};

// Rows that only make sense together, so that one side is chosen for all of them: the stays of a
// tray, its stages, its cuts with their bowls and how it ended. Named "stays", "stages", "cut",
// "residue" (of the tray `owner`), "on_piece" (which piece that tray stands on), "variety" (with
// its protocol), "medium", "trial" (with its plan), "panel" (a tasting), "price"; a row for itself
// is of its table's name.
struct Family
{
    std::string name;
    std::int64_t owner = 0;
    auto operator<=>(const Family&) const = default;
};

// A row that is not the same on both sides, in this journal's ids.
struct MergeRow
{
    RowKey key;
    Family family;
    bool isBeforeKnown = true;
    RowState before; // when the copy was last seen here
    RowState here;
    RowState there;
    std::int64_t hereAtUtcMs = 0; // last touched; 0: not since
    std::int64_t thereAtUtcMs = 0;

    [[nodiscard]] bool isAlike() const { return here == there; }
    // Nobody here touched it, so that the copy's may be taken.
    [[nodiscard]] bool isFree() const { return isBeforeKnown && here == before; }
};

// What the copy named with a code, a number or a name that was taken here.
struct Renamed
{
    RowKey row;
    std::string from;
    std::string to;
    bool operator==(const Renamed&) const = default;
};

} // namespace plumule
