#pragma once

#include <filesystem>

namespace plumule::app {

// From here on a signal that ends the program for a fault of its own leaves a line in that file
// first. Where it can't be written none is left.
void noteCrashesIn(const std::filesystem::path& file);

} // namespace plumule::app
