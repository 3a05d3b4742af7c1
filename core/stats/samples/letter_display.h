#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace plumule::stats {

// Letters for means such that two share one exactly when they are not among the pairs that differ
// (Piepho 2004, J. Comput. Graph. Stat. 13:456: insert and absorb). "a" stands with the highest
// mean; past "z" letters are doubled.
[[nodiscard]] std::vector<std::string>
letterDisplay(std::span<const double> means,
              const std::vector<std::pair<std::size_t, std::size_t>>& differing);

} // namespace plumule::stats
