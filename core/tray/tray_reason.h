#pragma once

#include <string_view>

namespace plumule {

// Why something of a tray was refused.
// An enumerator's values stand beside it. Stages are named by their keys, moments are "2026-03-12
// 06:50".
enum class TrayReason
{
    Unknown,
    CodeUnknown, // the code
    CodeTaken,   // the code
    CodeMissing,
    CodeOfMany,
    Count,      // the most at once
    PieceCount, // trays, pieces chosen
    PlaceCount, // trays, places chosen
    PieceTwice,
    PlaceTwice,
    Seed,
    Block,
    VarietyUnknown,
    MediumUnknown,
    ProtocolMissing, // the variety
    LotUnknown,
    LotOfOtherVariety, // its number
    TrialUnknown,
    PieceUnknown,
    PieceOfOtherMedium, // its number
    PieceRetired,       // its number
    PieceInUse,         // its number
    PieceNotSanitised,  // its number
    PlaceUnknown,
    PlaceTaken,      // rack and shelf, place, the other tray's code
    PlaceTakenThen,  // rack and shelf, place, the other tray's code, the moment it left
    NotGrowing,      // its code
    NoStages,        // its code
    NothingBegun,    // its code
    OnlyHarvestLeft, // its code
    StageNotBegun,   // the stage
    StartOutOfOrder, // the moment
    Delay,
    MoveBeforeStay, // the moment it came to its place or left its last one
    EndBeforeStay,  // the moment it came to its place
    DiscardReasonMissing,
    SetAsideReasonMissing,
    HeightRange,
    SurfaceUnknown, // the medium
    NoteMissing,
    NoteUnknown,
    PhotoUnknown,
    PhotoUnreadable, // the file
    PhotoFolder,     // the folder
    PhotoNotCopied,  // the file
};

constexpr std::string_view familyOf(TrayReason)
{
    return "tray";
}

} // namespace plumule
