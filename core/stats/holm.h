#pragma once

#include <span>
#include <vector>

namespace plumule::stats {

// p values adjusted for their number by Holm 1979, Scand. J. Stat. 6:65; in the order given.
[[nodiscard]] std::vector<double> holmAdjusted(std::span<const double> p);

} // namespace plumule::stats
