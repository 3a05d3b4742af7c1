#pragma once

#include "core/base/date.h"
#include "core/room/room.h"

#include <optional>
#include <string>
#include <vector>

namespace plumule {

inline constexpr int kFreeEvenings = 28; // four weeks

// A sowing that is planned and not yet done: how many places it takes, on every evening from its
// first day until before its last. Whoever plans sowings hands theirs in.
struct PlannedSowing
{
    std::string whose; // the code of its trial, or what else asks for it
    Date from;
    Date until; // cut on that day
    int trays = 0;
    std::vector<PlaceId> places = {}; // that it is to stand on, where they are chosen
    bool operator==(const PlannedSowing&) const = default;
};

// The places of the room on one evening.
struct FreeEvening
{
    Date on;
    int free = 0;    // that nothing standing and nothing planned takes
    int planned = 0; // that planned sowings take
    int missing = 0; // that planned sowings lack
    bool operator==(const FreeEvening&) const = default;
};

// The evenings from `today` on. `cuts` has one day for each tray that stands on a place: that of
// its cut, from whose evening the place is free; a tray that is late is taken to be cut today, one
// whose cut is not known keeps its place. A planned sowing whose day has gone by is taken to come
// today.
[[nodiscard]] std::vector<FreeEvening> freeEvenings(int places,
                                                    const std::vector<std::optional<Date>>& cuts,
                                                    const std::vector<PlannedSowing>& planned,
                                                    Date today, int evenings = kFreeEvenings);

// Evenings on which equally many places are free, one after another.
struct FreeSpell
{
    Date from;
    Date to; // the last one
    int free = 0;
    int missing = 0; // the most on one evening
    bool operator==(const FreeSpell&) const = default;
};

// The spells with the fewest free places, in order of time, at most so many; none where the room is
// never fuller than on any other evening.
[[nodiscard]] std::vector<FreeSpell> tightestSpells(const std::vector<FreeEvening>& evenings,
                                                    std::size_t most);

} // namespace plumule
