#pragma once

#include <algorithm>
#include <cmath>
#include <span>

namespace plumule::stats {

[[nodiscard]] inline bool allFinite(std::span<const double> values)
{
    return std::all_of(values.begin(), values.end(), [](double x) { return std::isfinite(x); });
}

// Also of no value at all.
[[nodiscard]] inline bool allAlike(std::span<const double> values)
{
    return std::all_of(values.begin(), values.end(), [&](double x) { return x == values.front(); });
}

} // namespace plumule::stats
