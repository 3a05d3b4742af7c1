#pragma once

#include <string_view>

namespace plumule {

// Why a price, the minutes of a task or its timing were refused.
// An enumerator's values stand beside it.
enum class CostReason
{
    PriceUnknown,
    PriceNegative,
    MediumMissing,
    DayTaken, // the day
    LabourUnknown,
    LabourNegative,
    TimerRuns, // the task
    NoTimerRuns,
    TimerForgotten, // the task
    WorkTimeWrong,
    WorkTimesMissing,
    WorkUnknown,
};

constexpr std::string_view familyOf(CostReason)
{
    return "cost";
}

} // namespace plumule
