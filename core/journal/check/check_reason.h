#pragma once

#include <string_view>

namespace plumule {

// What a check of a journal finds that no intention would have left so, though every row by itself
// is sound. Error::row names the table and the row where it is one row that is at fault. An
// enumerator's values stand beside it; days are "2026-03-12".
enum class CheckReason
{
    TwoTraysOnAPlace,      // rack and shelf, the place's number, a tray, the other
    TrayAtTwoPlaces,       // the tray
    EndedTrayStands,       // the tray
    TwoTraysOnAPiece,      // medium, the piece's number, a tray, the other
    RetiredPieceInUse,     // medium, the piece's number, the tray
    PieceNotSanitised,     // medium, the piece's number, the tray
    NameTwice,             // the name
    NumberTwice,           // the medium or the shelf, the number
    GrowsAfterLastCut,     // the tray
    NoLastCut,             // the tray
    StagesOutOfOrder,      // the tray
    TickedTwice,           // the tray, the day
    PriceTwice,            // the day
    StayEndsBeforeIt,      // the tray, the day it came, the day it left
    BeforeSowing,          // the tray, the day, the day of sowing
    EndUnknown,            // the tray
    GrowsThoughEnded,      // the tray
    PieceOfOtherMedium,    // the tray
    LotOfOtherVariety,     // the tray
    ServingOfOtherTasting, // the tasting
    ScoreOfOtherTasting,   // the tasting
    NetIsNotItsBowls,      // the tray
    NoRoom,
};

constexpr std::string_view familyOf(CheckReason)
{
    return "check";
}

} // namespace plumule
