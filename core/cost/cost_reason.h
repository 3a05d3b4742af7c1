#pragma once

#include <string_view>

namespace plumule {

// Why a price or the minutes of a task were refused.
// An enumerator's values stand beside it.
enum class CostReason
{
    PriceUnknown,
    PriceNegative,
    MediumMissing,
    DayTaken, // the day
    LabourUnknown,
    LabourNegative,
};

constexpr std::string_view familyOf(CostReason)
{
    return "cost";
}

} // namespace plumule
