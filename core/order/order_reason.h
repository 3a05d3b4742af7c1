#pragma once

#include <string_view>

namespace plumule {

// Why something of an order was refused. An enumerator's values stand beside it.
enum class OrderReason
{
    Unknown,
    VarietyMissing,
    MediumUnknown,
    Amount,        // the most kilograms
    EndsBeforeDay, // its first day
    NotStanding,   // it is of one day, so it has no end
    CutUnknown,
    CutOfOtherVariety, // the cut's tray
    DayNotPromised,    // the day
};

constexpr std::string_view familyOf(OrderReason)
{
    return "order";
}

} // namespace plumule
