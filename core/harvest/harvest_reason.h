#pragma once

#include <string_view>

namespace plumule {

// Why a weight was refused.
// An enumerator's values stand beside it.
enum class HarvestReason
{
    Unknown,
    TrayDiscarded, // its code
    BeforeSowing,  // the day of sowing
    Ahead,         // of today
    DoubtOpen,     // the doubt's key
    NoBowls,
    TareNegative,
    GrossTooHeavy,
    NothingNet,
    ScaleText,    // what came
    PieceInUse,   // the tray that would grow again, the piece's number
    PieceRetired, // the tray that would grow again, the piece's number
};

constexpr std::string_view familyOf(HarvestReason)
{
    return "harvest";
}

} // namespace plumule
