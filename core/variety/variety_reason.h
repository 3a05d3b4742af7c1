#pragma once

#include <string_view>

namespace plumule {

// Why something of a variety, its protocol or its seed lots was refused.
// An enumerator's values stand beside it. A stage is named by its key.
enum class VarietyReason
{
    Unknown,
    NameMissing,
    NameTaken, // the name
    InUse,     // its name
    PrefixMissing,
    PrefixForm, // the letters given
    SeedPerTray,
    StageOrder,     // the stage
    StageLength,    // the stage
    StageWaterings, // the stage; the most a day
    StageMethod,    // the stage; watered without a way, or a way without water
    StageAmount,    // the stage
    LotUnknown,
    LotNumberMissing,
    LotNumberTaken,  // the number
    LotInUse,        // its number
    LotVarietyFixed, // its number
    LotGermination,
    LotBought,
    LotPrice,
    LotFound,
    LotBoughtUnknown, // its number
};

constexpr std::string_view familyOf(VarietyReason)
{
    return "variety";
}

} // namespace plumule
