// Part of ui/text/error_words.h: what the stock and a trace refuse.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(StockReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case StockReason::Unknown:
        return Errors::tr("This is not in the journal any more: choose something else.");
    case StockReason::NameMissing:
        return Errors::tr("What is kept has no name: give it one.");
    case StockReason::NameTaken:
        return Errors::tr("%1 is kept already: choose another name, or count that.").arg(value[0]);
    case StockReason::AmountBelowNothing:
        return Errors::tr("An amount can't be below 0: enter what is there.");
    case StockReason::DaysBeyond:
        return Errors::tr("Days until something runs low lie between 0 and %1: enter how many, or "
                          "leave the field empty.")
            .arg(value[0]);
    case StockReason::CountAhead:
        return Errors::tr("The %1 has not come yet: enter the day on which it was counted.")
            .arg(value.day(0));
    case StockReason::MediumReused:
        return Errors::tr("%1 is washed and used again: add its pieces under Set-up, Media.")
            .arg(value[0]);
    case StockReason::NothingCalled:
        return Errors::tr("No tray, seed lot, piece, water or person is called “%1”: look at its "
                          "label and enter it as it stands there.")
            .arg(value[0]);
    case StockReason::CalledTwice:
        return Errors::tr("More than one seed lot is called “%1”: enter one of these: %2.")
            .arg(value[0], value[1]);
    }
    return {};
}

} // namespace plumule::ui
