#pragma once

namespace plumule {

// An id is the number of the copy of the journal that gave it, shifted by so many bits, and a
// counter.
inline constexpr int kIdCounterBits = 40;

} // namespace plumule
