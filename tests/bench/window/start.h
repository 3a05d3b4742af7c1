#pragma once

#include "tests/bench/life/race.h"

#include <filesystem>

namespace plumule::bench {

// The program starts itself with these words, to measure a start from the first instruction on.
inline constexpr const char* kBareWindow = "--bare";
inline constexpr const char* kOurWindow = "--ours"; // and the journal

// Show a window, and print the CPU ms to its first picture and the MB that are resident then. Of
// ours the picture shows trays of the round.
int startBare(int count, char** words);
int startOurs(int count, char** words, const std::filesystem::path& journal);

// The start to a painted Round beside that of an empty window of Qt's, and their memory.
[[nodiscard]] std::vector<Measured> startWorks(const char* self,
                                               const std::filesystem::path& journal);

} // namespace plumule::bench
