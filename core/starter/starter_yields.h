#pragma once

#include <string>
#include <string_view>

namespace plumule {

// The source of a figure that nobody read.
inline constexpr const char* kFromMemory = "from memory";

// What a square metre of a variety gives in one cut, and who says so.
struct LibraryYield
{
    double gramsLow = 0;
    double gramsHigh = 0;
    std::string source; // the title that was read, or kFromMemory
    bool operator==(const LibraryYield&) const = default;
};

// By the name of a starter variety, letter case (A–Z) aside; for any other name the least and the
// most of all of them.
[[nodiscard]] LibraryYield libraryYield(std::string_view variety);

} // namespace plumule
