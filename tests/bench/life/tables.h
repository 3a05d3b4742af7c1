#pragma once

#include "tests/bench/life/race.h"

#include <filesystem>
#include <vector>

namespace plumule::bench {

// Prints the works of a room below a line that says what it is, and writes them as JSON.
void tell(const std::string& what, const std::vector<Measured>& works,
          const std::filesystem::path& json);

} // namespace plumule::bench
