#pragma once

#include "core/base/result.h"
#include "core/room/room.h"

namespace plumule {

inline constexpr int kMostShelves = 100;
inline constexpr int kMostPlaces = 100;

// Invalid, naming the field ("room.morning"), unless morning is before evening within one day and
// the tray has a size.
[[nodiscard]] Done checkRoom(const Room& room);

// Invalid beyond 0 to kMostShelves and 0 to kMostPlaces.
[[nodiscard]] Done checkShelfCount(int shelves);
[[nodiscard]] Done checkPlaceCount(int places);

// The name of the rack at that position, from 0: A, B … Z, AA, AB …
[[nodiscard]] std::string rackNameAt(int position);

} // namespace plumule
