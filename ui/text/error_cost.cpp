// Part of ui/text/error_words.h: what prices and minutes refuse.
#include "ui/text/error_words.h"

#include "core/cost/cost.h"
#include "ui/text/text.h"

namespace plumule::ui {
namespace {

QString taskOf(const ErrorValues& value)
{
    LabourKind task{};
    return fromText(value[0].toStdString(), task) ? nameOf(task) : value[0];
}

} // namespace

QString words(CostReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case CostReason::PriceUnknown:
        return Errors::tr("This price is not in the journal any more: look at the prices again.");
    case CostReason::PriceNegative:
        return Errors::tr("A price is not below 0: enter what it costs.");
    case CostReason::MediumMissing:
        return Errors::tr("No medium is chosen: choose the one that the price is for.");
    case CostReason::DayTaken:
        return Errors::tr(
                   "There is a price from %1 on already: change that one, or choose another day.")
            .arg(value.day(0));
    case CostReason::LabourUnknown:
        return Errors::tr("This task is not in the journal any more: look at the tasks again.");
    case CostReason::LabourNegative:
        return Errors::tr("Work takes no time below 0: enter its minutes.");
    case CostReason::TimerRuns:
        return Errors::tr("The timer of %1 runs already: end it first.").arg(taskOf(value));
    case CostReason::NoTimerRuns:
        return Errors::tr("No timer runs: start one first.");
    case CostReason::TimerForgotten:
        return Errors::tr("The timer of %1 has run for hours: say how long the work took.")
            .arg(taskOf(value));
    case CostReason::WorkTimeWrong:
        return Errors::tr("Work takes more than no time and at most ten days: enter its minutes.");
    case CostReason::WorkTimesMissing:
        return Errors::tr("How often it was done in that time is not known: enter the number.");
    case CostReason::WorkUnknown:
        return Errors::tr("This time is not in the journal any more: look at the times again.");
    }
    return {};
}

} // namespace plumule::ui
