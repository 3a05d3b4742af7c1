#pragma once

#include <string_view>

namespace plumule {

// How a value lies beyond what a journal keeps. The first value is what was given, of a text its
// beginning; the second is the column, which Error::row's table has.
enum class BoundsReason
{
    Day,        // before 1990 or after 2100, or no day
    TimeOfDay,  // no minute of a day
    Amount,     // what nothing in a room has; the least and the most that there may be, as stored
    TextLength, // the most bytes that there may be
    TextCharacters, // not UTF-8, or with a null character
};

constexpr std::string_view familyOf(BoundsReason)
{
    return "bounds";
}

} // namespace plumule
