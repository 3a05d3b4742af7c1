#pragma once

#include <string_view>

namespace plumule {

// Why a repeating sowing was refused, or could not be sown. An enumerator's values stand beside it.
enum class WeekReason
{
    RepeatUnknown,
    TraysBeyond,   // the most
    RhythmMissing, // no weekday, and no number of days
    DaysBeyond,    // the most days between two sowings
    EndsBeforeStart,
    DayNotItsOwn, // the day; not one of its days
    DayAnswered,  // the day; sown or skipped already
    PlacesShort,  // places free now that no trial's plan holds, places needed
    PiecesShort,  // the medium, clean pieces that are free, pieces needed
};

constexpr std::string_view familyOf(WeekReason)
{
    return "week";
}

} // namespace plumule
