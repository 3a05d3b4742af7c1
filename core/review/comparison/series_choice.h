#pragma once

#include "core/review/comparison/comparison.h"

namespace plumule {

// Which sowings answer, and whether all that were planned are in.
struct SeriesChoice
{
    std::set<std::size_t> sowings; // indices; where none is in all of them, for their means alone
    stats::Series state = stats::Series::Open;
    int in = 0; // of the planned trials
};

// A plan is answered by its first trials once all of them are in; an open series by every sowing
// that is; one trial when its last tray is.
[[nodiscard]] SeriesChoice chooseSowings(const Series& series, const std::vector<Sowing>& sowings);

} // namespace plumule
