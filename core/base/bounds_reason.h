#pragma once

#include <string_view>

namespace plumule {

// How a value lies beyond what a journal keeps. The first value is what was given; of a text its
// beginning, followed by the most characters that there may be.
enum class BoundsReason
{
    Day,       // before 1990 or after 2100, or no day
    TimeOfDay, // no minute of a day
    Amount,    // a weight, volume, length, time, price or count that nothing in a room has
    TextLength,
    TextCharacters, // not UTF-8, or with a null character
};

constexpr std::string_view familyOf(BoundsReason)
{
    return "bounds";
}

} // namespace plumule
