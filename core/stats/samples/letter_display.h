#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace plumule::stats {

// Letters for `levels` means such that two share one exactly when they are not among the pairs
// that differ (Piepho 2004, J. Comput. Graph. Stat. 13:456: insert and absorb). "a" goes to the
// group of the first level; past "z" letters are doubled.
[[nodiscard]] std::vector<std::string>
letterDisplay(std::size_t levels,
              const std::vector<std::pair<std::size_t, std::size_t>>& differing);

} // namespace plumule::stats
