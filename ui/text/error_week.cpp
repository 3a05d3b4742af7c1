// Part of ui/text/error_words.h: repeating sowings.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(WeekReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case WeekReason::RepeatUnknown:
        return Errors::tr("This repeating sowing was taken out since: look at the list again.");
    case WeekReason::TraysBeyond:
        return Errors::tr("A repeating sowing has 1 to %1 trays: correct their number.")
            .arg(value[0]);
    case WeekReason::RhythmMissing:
        return Errors::tr(
            "The sowing repeats on no day: choose at least one weekday, or a number of "
            "days between sowings.");
    case WeekReason::DaysBeyond:
        return Errors::tr("There are 1 to %1 days from one sowing to the next: correct the number.")
            .arg(value[0]);
    case WeekReason::EndsBeforeStart:
        return Errors::tr("The last day lies before the first: correct one of them.");
    case WeekReason::DayNotItsOwn:
        return Errors::tr("%1 is no day of this repeating sowing any more: look at the page again.")
            .arg(value.day(0));
    case WeekReason::DayAnswered:
        return Errors::tr("The sowing of %1 was done or skipped already: look at the week again.")
            .arg(value.day(0));
    case WeekReason::PlacesShort:
        return Errors::tr(
                   "Of %2 places that it needs %1 are free now and held by no trial's plan: move "
                   "trays or cut them first, or sow fewer under Sow….")
            .arg(value[0], value[1]);
    case WeekReason::PiecesShort:
        return Errors::tr("Of the pieces of %1 there are %2 clean and free, of the %3 that it "
                          "needs: sanitise some and note it "
                          "under Set-up, Media, or sow fewer under Sow….")
            .arg(value[0], value[1], value[2]);
    }
    return {};
}

} // namespace plumule::ui
