#pragma once

#include "core/tray/tray.h"

#include <filesystem>

namespace plumule::bench {

// How large a room was, and for how long.
struct RoomSize
{
    const char* name;
    int trays;
    int years;
};

inline constexpr RoomSize kRoom{"room", 1'000, 1};
inline constexpr RoomSize kFarm{"farm", 100'000, 10};
inline constexpr RoomSize kGiant{"giant", 730'000, 10};

// What of an invented room is looked for.
struct RoomOfYears
{
    TrialId trial;         // the newest that ended, of twelve trays
    std::string someCode;  // of a tray that grows
    VarietyId someVariety; // that is sown all the time
};

// Makes a journal of so many trays, each day's work in its turn and written as the program writes
// it: sown, moved on stage by stage, ticked twice a day in light, cut after eleven days, one entry
// of the history an act. What grows on the last day goes on growing.
RoomOfYears makeRoomOfYears(const std::filesystem::path& journal, const RoomSize& size);

} // namespace plumule::bench
