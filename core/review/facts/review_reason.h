#pragma once

#include <string_view>

namespace plumule {

// Why a season's answer, a comparison or an outlook was not given. An enumerator's values stand
// beside it.
enum class ReviewReason
{
    SpanBackwards, // its first day, its last day
    TooFewTrays,
    TooFewMedia,
    NoYieldYet,
    SeasonUnknown,
    SeasonNameMissing,
    SeasonNameTaken,     // the name
    SeasonDayTaken,      // the season that begins that day
    SeasonPlannedTrials, // the fewest, the most
    SeasonHarvested,     // the last sowing that gave a harvest
};

constexpr std::string_view familyOf(ReviewReason)
{
    return "review";
}

} // namespace plumule
