// Part of ui/text/error_words.h: what an order refuses.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(OrderReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case OrderReason::Unknown:
        return Errors::tr("This order is not in the journal any more: choose another one.");
    case OrderReason::VarietyMissing:
        return Errors::tr("The order is of no variety: choose what is promised.");
    case OrderReason::MediumUnknown:
        return Errors::tr("This medium is not in the journal any more: choose another one.");
    case OrderReason::Amount:
        return Errors::tr("What is promised weighs more than nothing and at most %1 kg: enter its "
                          "weight.")
            .arg(value[0]);
    case OrderReason::EndsBeforeDay:
        return Errors::tr("The order would end before its first day, %1: choose a later end, or "
                          "remove the order.")
            .arg(value.day(0));
    case OrderReason::NotStanding:
        return Errors::tr("The order is of one day only, so there is nothing to end: remove it "
                          "where it doesn't hold any more.");
    case OrderReason::CutUnknown:
        return Errors::tr("This cut is not in the journal any more: choose others.");
    case OrderReason::CutOfOtherVariety:
        return Errors::tr("%1 is of another variety than the order: leave it out.").arg(value[0]);
    case OrderReason::DayNotPromised:
        return Errors::tr("The order promises nothing for %1 any more: choose another day.")
            .arg(value.day(0));
    }
    return {};
}

} // namespace plumule::ui
