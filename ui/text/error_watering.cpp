// Part of ui/text/error_words.h: what a watering, a reading and a recipe refuse.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(WateringReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case WateringReason::Unknown:
        return Errors::tr("This watering is not in the journal any more: look at the round again.");
    case WateringReason::RoundAhead:
        return Errors::tr("The round of %1 is still to come: tick it when it is done.")
            .arg(value.day(0));
    case WateringReason::NotAsked:
        return Errors::tr("%1 needs no water in this round: leave it, or water it outside the "
                          "rounds and note that.")
            .arg(value[0]);
    case WateringReason::TickedAlready:
        return Errors::tr("%1 is ticked already in this round: go on to the next tray.")
            .arg(value[0]);
    case WateringReason::NotTicked:
        return Errors::tr("%1 is not ticked in this round: go on to the next tray.").arg(value[0]);
    case WateringReason::NoTrayChosen:
        return Errors::tr("No tray is chosen: choose those that were watered.");
    case WateringReason::TimeAhead:
        return Errors::tr("That time is still to come: enter when the water was given.");
    case WateringReason::BeforeSowing:
        return Errors::tr("%1 was not sown yet at that time: choose a later one.").arg(value[0]);
    case WateringReason::Amount:
        return Errors::tr(
            "An amount of water is not below 0: enter what was given, or leave the field empty.");
    case WateringReason::MethodMissing:
        return Errors::tr("The way of watering is missing: choose how it was given.");
    case WateringReason::Minute:
        return Errors::tr("The time is not one of a day: enter it from 00:00 to 23:59.");
    case WateringReason::ReadingMissing:
        return Errors::tr("Neither pH nor EC is given: enter one of the two.");
    case WateringReason::ReadingPh:
        return Errors::tr("A pH lies between 0 and 14: read the meter again.");
    case WateringReason::ReadingEc:
        return Errors::tr("An EC lies between 0 and %1 µS/cm: read the meter again.").arg(value[0]);
    case WateringReason::RecipeDose:
        return Errors::tr("A dose is not below 0: enter it, or leave the field empty.");
    case WateringReason::RecipePh:
        return Errors::tr("The pH of a mix goes from a lower to a higher number, between 0 and 14: "
                          "correct the two.");
    case WateringReason::RecipeEc:
        return Errors::tr("The EC of a mix goes from a lower to a higher number, between 0 and %1 "
                          "µS/cm: correct the two.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
