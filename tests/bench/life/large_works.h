#pragma once

#include "tests/bench/life/race.h"
#include "tests/bench/life/room_of_years.h"

namespace plumule::bench {

// What is done now and then: reviews, backups, tables of ten thousand trays in and back out.
[[nodiscard]] std::vector<Work> largeWorks(const std::filesystem::path& journal,
                                           const RoomOfYears& room);

} // namespace plumule::bench
