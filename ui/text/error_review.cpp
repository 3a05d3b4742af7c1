// Part of ui/text/error_words.h: why a season or a comparison is not told, or the invented room not
// made.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(ReviewReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case ReviewReason::SpanBackwards:
        return Errors::tr("The first day, %1, comes after the last, %2: change one of the two.")
            .arg(value.day(0), value.day(1));
    case ReviewReason::TooFewTrays:
        return Errors::tr("Too few trays are weighed to tell anything apart: weigh more of each "
                          "medium, or choose a longer season.");
    case ReviewReason::TooFewMedia:
        return Errors::tr("Weights are there of fewer than two media: weigh trays of another one, "
                          "or choose a longer season.");
    case ReviewReason::NoYieldYet:
        return Errors::tr("No yield is on record yet to expect one by: weigh a harvest first, or "
                          "enter the spread and the margin yourself.");
    case ReviewReason::SeasonUnknown:
        return Errors::tr("This season is not there any more: choose another one.");
    case ReviewReason::SeasonNameMissing:
        return Errors::tr("The season has no name: give it one.");
    case ReviewReason::SeasonNameTaken:
        return Errors::tr("A season is called %1 already: choose another name.").arg(value[0]);
    case ReviewReason::SeasonDayTaken:
        return Errors::tr("%1 begins on that day: choose another one.").arg(value[0]);
    case ReviewReason::SeasonPlannedTrials:
        return Errors::tr(
                   "A plan has from %1 to %n trials: change the number, or leave it empty to "
                   "look after every sowing.",
                   nullptr, value.number(1))
            .arg(value[0]);
    case ReviewReason::SeasonHarvested:
        return Errors::tr(
                   "Trays sown on %1 are harvested already, and an answer that was seen must "
                   "not choose its own season: let it begin with a later sowing.")
            .arg(value.day(0));
    }
    return {};
}

QString words(SampleReason reason, const Error&)
{
    switch (reason) {
    case SampleReason::JournalHasTrays:
        return Errors::tr(
            "This journal has trays already: make another one for the invented room.");
    }
    return {};
}

} // namespace plumule::ui
