#pragma once

#include <string_view>

namespace plumule {

// Why something of the room, its racks, shelves and places was refused.
// An enumerator's values stand beside it.
enum class RoomReason
{
    NameMissing,
    CurrencyMissing,
    RoundTimes,
    TraySize,
    LightPower,
    LightMinutes,
    ShelfCount, // the most
    PlaceCount, // the most
    RackUnknown,
    RackNameMissing,
    RackNameTaken, // the name
    RackInUse,     // its name
    ShelfUnknown,
    ShelfNameMissing,
    ShelfNameTaken, // the name
    ShelfInUse,     // rack and shelf
    PlaceInUse,     // its number
};

constexpr std::string_view familyOf(RoomReason)
{
    return "room";
}

} // namespace plumule
