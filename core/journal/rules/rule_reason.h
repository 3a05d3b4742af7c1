#pragma once

#include <string_view>

namespace plumule {

// Which rule an entry would break when it is taken back out of its turn. An enumerator's values
// stand beside it; days are "2026-03-12".
enum class RuleReason
{
    PlaceTaken,         // rack and shelf, the place's number, the tray put back, the other
    TrayTwice,          // the tray
    EndedTrayStands,    // the tray
    PieceTaken,         // medium, the piece's number, the tray put back, the other
    PieceRetired,       // medium, the piece's number, the tray
    PieceNotSanitised,  // medium, the piece's number, the tray
    NameTaken,          // the name
    NumberTaken,        // the medium or the shelf, the number
    MarkerTaken,        // the medium put back, the other
    GrowsAfterLastCut,  // the tray
    NoLastCut,          // the tray
    StagesOutOfOrder,   // the tray
    TickedTwice,        // the tray, the day
    PriceTwice,         // the day
    TastingStaysClosed, // the tasting
    TastingIsFinal,     // the tasting
};

constexpr std::string_view familyOf(RuleReason)
{
    return "rule";
}

} // namespace plumule
