#pragma once

#include "tests/bench/life/race.h"

#include <filesystem>

namespace plumule::bench {

// For how long the window's thread is held by what is done in the window every day: the longest of
// the events of each work, within a WatchedApplication.
[[nodiscard]] std::vector<Measured> windowWorks(const std::filesystem::path& journal);

} // namespace plumule::bench
