#pragma once

#include "core/base/result.h"
#include "core/room/room.h"

namespace plumule {

inline constexpr int kMostShelves = 100;
inline constexpr int kMostPlaces = 100;

// Missing name or currency; Invalid unless morning is before evening within one day and the tray
// has a size.
[[nodiscard]] Done checkRoom(const Room& room);

// Invalid: negative light, or more of it than a day has minutes.
[[nodiscard]] Done checkLight(const Shelf& shelf);

// Invalid beyond 0 to kMostShelves and 0 to kMostPlaces.
[[nodiscard]] Done checkShelfCount(int shelves);
[[nodiscard]] Done checkPlaceCount(int places);

// Whether two names are the same but for the letter case (A–Z) and blanks around them.
[[nodiscard]] bool isSameName(std::string_view a, std::string_view b);

// The name of the rack at that position, from 0: A, B … Z, AA, AB …
[[nodiscard]] std::string rackNameAt(int position);

} // namespace plumule
