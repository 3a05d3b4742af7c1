#pragma once

#include <string_view>

namespace plumule {

// Why something of a medium or its pieces was refused.
// An enumerator's values stand beside it.
enum class MediumReason
{
    Unknown,
    NameMissing,
    NameTaken, // the name
    InUse,     // its name
    LooseMixReused,
    PlannedUses,
    PlannedUsesOfOneUse,
    SurfaceBelowRim,
    AmountPerTray,
    Marker,
    MarkerTaken, // the other medium
    HasPieces,   // its name
    NotReusable, // its name
    PieceUnknown,
    PieceCount,   // the most at once
    PieceGrows,   // medium and number
    PieceRetired, // the day
    NoPieceChosen,
    MethodMissing,  // of sanitising
    Strength,       // of a sanitiser: the most
    ContactMinutes, // of a sanitiser: the most
};

constexpr std::string_view familyOf(MediumReason)
{
    return "medium";
}

} // namespace plumule
