#pragma once

#include <string_view>

namespace plumule {

// Why something of a watering, a reading or a recipe was refused.
// An enumerator's values stand beside it.
enum class WateringReason
{
    Unknown,
    RoundAhead,    // its day
    NotAsked,      // the tray
    TickedAlready, // the tray
    NotTicked,     // the tray
    NoTrayChosen,
    TimeAhead,
    BeforeSowing, // the tray
    Amount,
    MethodMissing,
    Minute,
    ReadingMissing,
    ReadingPh,
    ReadingEc, // the highest
    RecipeDose,
    RecipePh,
    RecipeEc, // the highest
};

constexpr std::string_view familyOf(WateringReason)
{
    return "watering";
}

} // namespace plumule
