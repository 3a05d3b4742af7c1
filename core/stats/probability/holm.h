#pragma once

#include <optional>
#include <vector>

namespace plumule::stats {

// p values adjusted after Holm (1979), in the order given; missing ones stay missing and do not
// count.
[[nodiscard]] std::vector<std::optional<double>>
holmAdjusted(const std::vector<std::optional<double>>& p);

} // namespace plumule::stats
