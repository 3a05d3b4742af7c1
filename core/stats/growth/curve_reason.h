#pragma once

#include <string_view>

namespace plumule::stats {

// Why a curve was not fitted or not asked. An enumerator's values stand beside it.
enum class CurveReason
{
    Lengths, // not as many x as y
    NotFinite,
    TooFewReadings, // the readings, the fewest
    TooFewPlaces,   // the different x, the fewest
    AllAlike,
    Undetermined, // the curve
    Stalled,      // the curve
    NoFullHeight, // the curve
    HeightNotReached,
    Fraction,
    Level,
    AskedNotFinite, // a place or a height that is asked for
};

constexpr std::string_view familyOf(CurveReason)
{
    return "curve";
}

} // namespace plumule::stats
