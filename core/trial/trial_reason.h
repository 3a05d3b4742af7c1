#pragma once

#include <string_view>

namespace plumule {

// Why something of a trial or its plan was refused.
// An enumerator's values stand beside it.
enum class TrialReason
{
    Unknown,
    NameMissing,
    CodeTaken, // the code
    Margin,
    Spread,
    InUse, // its code
    NoPlan,
    Sown, // its code
    VarietyMissing,
    NothingToGrow,
    MediumMissing,
    MediumTwice,
    TooFewMedia,
    ControlUnknown,
    ControlNotCompared,
    FeedingWithoutNutrient,
    TraysEach,
    TooManyTrays,     // the most
    BlocksDontDivide, // trays of each, blocks
    SquareCount,      // media
    TooFewPlaces,     // free, wanted
    BlockPlaces,      // blocks there is room for, trays of a block
    SquarePlaces,     // media
    TooFewPieces,     // the medium, clean and free, wanted
    LayoutMissing,
    LayoutUneven,
    PlannedTrayUnknown,
};

constexpr std::string_view familyOf(TrialReason)
{
    return "trial";
}

} // namespace plumule
