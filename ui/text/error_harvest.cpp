// Part of ui/text/error_words.h: why a weight is refused.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(HarvestReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case HarvestReason::Unknown:
        return Errors::tr(
            "This weight is not in the journal any more: look at the tray's page again.");
    case HarvestReason::TrayDiscarded:
        return Errors::tr(
                   "%1 was discarded: check the code on the tray, or undo the discarding first.")
            .arg(value[0]);
    case HarvestReason::BeforeSowing:
        return Errors::tr("The tray was sown on %1: choose that day or a later one for the weight.")
            .arg(value.day(0));
    case HarvestReason::Ahead:
        return Errors::tr("This day is still to come: choose today or an earlier one for the "
                          "weight.");
    case HarvestReason::DoubtOpen:
        return Errors::tr(
            "This weight is in doubt: look at it once more, then accept it or weigh again.");
    case HarvestReason::NoBowls:
        return Errors::tr("There is no weight yet: weigh a bowl or type its weight.");
    case HarvestReason::TareNegative:
        return Errors::tr("The weight of an empty bowl is not below 0: weigh the bowl again.");
    case HarvestReason::GrossTooHeavy:
        return Errors::tr(
            "A bowl of more than 50 kg is a slip: check the decimal point and the unit.");
    case HarvestReason::NothingNet:
        return Errors::tr(
            "Without its bowl the harvest weighs nothing: check the weight and the bowl.");
    case HarvestReason::ScaleText:
        return Errors::tr("“%1” is no weight: type it as 331.5, or let the scale send it again.")
            .arg(value[0]);
    case HarvestReason::PieceInUse:
        return Errors::tr("Without a last cut %1 would grow again on piece %2, where another tray "
                          "grows by now: keep its last cut, or harvest the other tray first.")
            .arg(value[0], value[1]);
    case HarvestReason::PieceRetired:
        return Errors::tr("Without a last cut %1 would grow again on piece %2, which is retired: "
                          "keep its last cut, or bring the piece back into use first.")
            .arg(value[0], value[1]);
    }
    return {};
}

} // namespace plumule::ui
