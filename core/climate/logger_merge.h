#pragma once

#include "core/climate/climate.h"

#include <vector>

namespace plumule {

// What a file's hours come to beside those that the logger has in the journal already.
struct HourMerge
{
    std::vector<ClimateHour> added;
    std::vector<ClimateHour> changed; // with the ids of those that they are put in place of
    int same = 0;                     // told nothing new
    int joined = 0;                   // of `changed`: another part of the hour, or another measure
    int fuller = 0;                   // of `changed`: the same readings and more
    int unlike = 0;                   // tell otherwise of the same time; what is stored stays

    [[nodiscard]] bool isEmpty() const { return added.empty() && changed.empty(); }
    bool operator==(const HourMerge&) const = default;
};

// A reading counts once, whichever files it stands in: of two hours of which one's readings may be
// among the other's, the fuller is kept; they are added up only where they are of parts of the hour
// that do not overlap. Both lists are in order.
[[nodiscard]] HourMerge mergeHours(const std::vector<ClimateHour>& stored,
                                   const std::vector<ClimateHour>& read);

} // namespace plumule
