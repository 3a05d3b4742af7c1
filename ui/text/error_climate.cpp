// Part of ui/text/error_words.h: what is wrong with a logger's file.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(ClimateReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case ClimateReason::FileTooLarge:
        return Errors::tr("The file %1 is larger than %2 MB: bring it in by parts.")
            .arg(value[0], value[1]);
    case ClimateReason::TooManyRows:
        return Errors::tr("The file has %1 lines, and %2 are read at most: bring it in by parts.")
            .arg(value[0], value[1]);
    case ClimateReason::TimeMissing:
        return Errors::tr("No column is chosen for the times: say which one holds them.");
    case ClimateReason::MeasureMissing:
        return Errors::tr("No column is chosen for temperature, humidity or light: choose one.");
    case ClimateReason::ColumnTwice:
        return Errors::tr("The column %1 is chosen for two things: choose another for one of them.")
            .arg(value[0]);
    case ClimateReason::DateOrderUnclear:
        return Errors::tr("A day such as “%1” may be read in two ways: say whether the day or the "
                          "month comes first.")
            .arg(value[0]);
    case ClimateReason::TimeForm:
        return Errors::tr("“%1” is no day and time that can be read: correct it, or leave the line "
                          "out.")
            .arg(value[0]);
    case ClimateReason::TimeAhead:
        return Errors::tr("“%1” has not come yet: look at the order of the days and at the clock "
                          "that the file's times are of.")
            .arg(value[0]);
    case ClimateReason::CellForm:
        return Errors::tr("The cell in %1 can't be “%2”: correct it, or leave the line out.")
            .arg(value[0], value[1]);
    case ClimateReason::CellBeyond:
        return Errors::tr("“%2” in %1 lies beyond %3 to %4: look at the column's unit, or leave "
                          "the line out.")
            .arg(value[0], value[1], value[2], value[3]);
    case ClimateReason::CellAmbiguous:
        return Errors::tr("The “%2” in %1 may be thousands or decimals, and no other number of the "
                          "column tells: write it without a mark.")
            .arg(value[0], value[1]);
    case ClimateReason::LinesLeftOut:
        return Errors::tr("This file has %n line(s) that can't be read: look at them, and agree to "
                          "leave them out.",
                          nullptr, value.number(0));
    case ClimateReason::NothingNew:
        return Errors::tr("The journal holds all that this file tells: choose a later one.");
    case ClimateReason::NameMissing:
        return Errors::tr("The logger has no name: give it one, such as the number on it.");
    case ClimateReason::PlaceUnknown:
        return Errors::tr("This shelf or rack is not in the room any more: choose another one.");
    case ClimateReason::LightUnlike:
        return Errors::tr("The light of the logger %1 is counted in the other unit in the journal: "
                          "choose that unit, or give this logger another name.")
            .arg(value[0]);
    case ClimateReason::PpfdBeyond:
        return Errors::tr("The light under a lamp lies between 0 and %1 µmol/m²/s: correct it.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
