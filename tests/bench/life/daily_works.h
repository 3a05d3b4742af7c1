#pragma once

#include "tests/bench/life/race.h"
#include "tests/bench/life/room_of_years.h"

namespace plumule::bench {

// What is done every day in that journal. They keep it open between themselves.
[[nodiscard]] std::vector<Work> dailyWorks(const std::filesystem::path& journal,
                                           const RoomOfYears& room);

} // namespace plumule::bench
