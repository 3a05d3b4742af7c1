// Part of ui/text/error_words.h: what prices and minutes refuse.
#include "ui/text/error_words.h"

namespace plumule::ui {

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
    }
    return {};
}

} // namespace plumule::ui
