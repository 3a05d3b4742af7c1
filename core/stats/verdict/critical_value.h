#pragma once

#include <cstddef>

namespace plumule::stats {

// c = q(1 − level; media, df)/√2, q the quantile of the studentized range (Tukey); for two media
// Student's t(1 − level/2; df). `level` is the risk. Values asked for are kept for the program's
// life, since one costs some milliseconds; between whole df they are interpolated in 1/df, to 1e-6.
// Threads may ask at once. media from 2, df > 0 (may be infinite), 0 < level < 1.
[[nodiscard]] double criticalValue(std::size_t media, double df, double level);

} // namespace plumule::stats
