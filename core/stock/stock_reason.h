#pragma once

#include <string_view>

namespace plumule {

// Why something of the stock or of a trace was refused.
// An enumerator's values stand beside it.
enum class StockReason
{
    Unknown,
    NameMissing,
    NameTaken, // the name
    AmountBelowNothing,
    DaysBeyond,    // the most
    CountAhead,    // the day
    MediumReused,  // its name
    NothingCalled, // what was looked for
    CalledTwice,   // what was looked for, and the names that tell them apart
};

constexpr std::string_view familyOf(StockReason)
{
    return "stock";
}

} // namespace plumule
