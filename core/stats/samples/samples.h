#pragma once

#include "core/base/result.h"
#include "core/stats/samples/groups_reason.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

// Groups of numbers, as they come: group by group, each value of one tray.
namespace plumule::stats {

using Groups = std::span<const std::vector<double>>;

struct GroupSummary
{
    std::size_t n = 0;
    double mean = 0;
    std::optional<double> sd; // missing for a single value
};

// Errors: TooFew when empty, Invalid when one is not finite.
[[nodiscard]] Result<GroupSummary> summarize(std::span<const double> values);

// Sums of squares of groups, found after a value of the data is subtracted from all, which is exact
// where it matters: ill-conditioned data (many like leading digits) lose nothing.
struct GroupSums
{
    std::vector<std::size_t> n;
    std::vector<double> squares; // about the group's own mean
    std::size_t total = 0;
    double between = 0;
    double within = 0;

    [[nodiscard]] double dfBetween() const { return static_cast<double>(n.size()) - 1; }
    [[nodiscard]] double dfWithin() const
    {
        return static_cast<double>(total) - static_cast<double>(n.size());
    }
    // Means less one value of the data: differences of these keep the digits that the means lose.
    std::vector<double> meanLessShift;
};

// Errors: TooFew (fewer than two groups, or an empty one), Invalid (not finite).
[[nodiscard]] Result<GroupSums> sumGroups(Groups groups);

[[nodiscard]] double medianOf(std::span<const double> values);
// True when the values of every group are all alike, so that there is no spread to judge by.
[[nodiscard]] bool haveNoSpread(Groups groups);

} // namespace plumule::stats
