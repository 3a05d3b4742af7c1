// Part of ui/text/error_words.h: what is wrong with a table.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(ExchangeReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case ExchangeReason::FileUnreadable:
        return Errors::tr(
                   "The file %1 can't be read: check that it is there and that you may open it.")
            .arg(value[0]);
    case ExchangeReason::TooLarge:
        return Errors::tr("%1 holds more than %2 MiB: bring it in in parts.")
            .arg(value[0], value[1]);
    case ExchangeReason::Empty:
        return Errors::tr(
            "The table is empty: choose one with a line of column names and a line for each tray.");
    case ExchangeReason::NotUtf8:
        return Errors::tr(
            "There are letters here that are not UTF-8: save the table again as CSV in UTF-8.");
    case ExchangeReason::NotEncoded:
        return Errors::tr(
                   "There are letters here that are not %1: choose another encoding, or save the "
                   "table again as CSV in UTF-8.")
            .arg(value[0]);
    case ExchangeReason::OpenQuote:
        return Errors::tr(
            "A text in quotation marks does not end: close it with a quotation mark.");
    case ExchangeReason::StrayQuote:
        return Errors::tr("A quotation mark stands inside “%1”: put the whole text in quotation "
                          "marks and double those within.")
            .arg(value[0]);
    case ExchangeReason::HeaderUnnamed:
        return Errors::tr("A column has no name: give it one, or take it out.");
    case ExchangeReason::HeaderTwice:
        return Errors::tr("The column %1 is there twice: take one out.").arg(value[0]);
    case ExchangeReason::CellCount:
        return Errors::tr("This line has another number of cells (%1) than the table has columns "
                          "(%2): check its separators.")
            .arg(value[0], value[1]);
    case ExchangeReason::ColumnMissing:
        return Errors::tr("The column %1 is missing: add it.").arg(value[0]);
    case ExchangeReason::CellMissing:
        return Errors::tr("The cell in %1 is empty: fill it in.").arg(value[0]);
    case ExchangeReason::CellForm:
        return Errors::tr("The cell in %1 can't be “%2”: correct it.").arg(value[0], value[1]);
    case ExchangeReason::CellAmbiguous:
        return Errors::tr("The “%2” in %1 may be thousands or decimals, and no other number "
                          "of the column tells: write it without a mark, or with all its decimals.")
            .arg(value[0], value[1]);
    case ExchangeReason::DayAmbiguous:
        return Errors::tr("The “%2” in %1 may have its day first or its month, and no other day of "
                          "the table tells: choose the order.")
            .arg(value[0], value[1]);
    case ExchangeReason::CellTooFine:
        return Errors::tr("The “%2” in %1 is finer than %3, the least that is kept: correct it.")
            .arg(value[0], value[1], value[2]);
    case ExchangeReason::WordUnknown:
        return Errors::tr("The cell in %1 can't be “%2”: write one of %3.")
            .arg(value[0], value[1], value[2]);
    case ExchangeReason::NameUnknown:
        return Errors::tr("Nothing is called “%2” as %1 says: correct it, or bring that in first.")
            .arg(value[0], value[1]);
    case ExchangeReason::NameOfSeveral:
        return Errors::tr("More than one is called “%2”, so that %1 doesn't tell which is meant: "
                          "give them names of their own first.")
            .arg(value[0], value[1]);
    case ExchangeReason::NumberTwice:
        return Errors::tr("Another row has “%2” in %1 already: take one of the two out.")
            .arg(value[0], value[1]);
    case ExchangeReason::ColumnUnknown:
        return Errors::tr("No table of the journal has a column %1 here: take it out.")
            .arg(value[0]);
    case ExchangeReason::HarvestBeforeSowing:
        return Errors::tr("The harvest of %1 lies before the sowing: correct one of the two days.")
            .arg(value.day(0));
    case ExchangeReason::CodeTaken:
        return Errors::tr("The code %1 is taken already: choose another one.").arg(value[0]);
    case ExchangeReason::PlaceTaken:
        return Errors::tr("A tray grows at %1 already: choose another place, or leave it empty.")
            .arg(value[0]);
    case ExchangeReason::StageUnknown:
        return Errors::tr("The tray %1 does not pass through %2: take the line out.")
            .arg(value[0], value.stage(1));
    case ExchangeReason::StageOutOfOrder:
        return Errors::tr("The tray %1 can't have begun %2 then, before the stage that comes first "
                          "or without it: correct the days.")
            .arg(value[0], value.stage(1));
    case ExchangeReason::DayAhead:
        return Errors::tr("%1 is still to come: correct the day.").arg(value.day(0));
    case ExchangeReason::DayBeforeSowing:
        return Errors::tr("On %1 the tray %2 was not sown yet, but on %3: correct the day.")
            .arg(value.day(0), value[1], value.day(2));
    case ExchangeReason::CutAfterLast:
        return Errors::tr("The tray %1 is harvested: take the line out, or say of the cut before "
                          "that it was not the last.")
            .arg(value[0]);
    case ExchangeReason::ScoreTaken:
        return Errors::tr("The serving %1 has another score for %2 already: take one of the two "
                          "out.")
            .arg(value[0], value[1]);
    case ExchangeReason::RetiredBeforeBought:
        return Errors::tr("It can't be thrown out on %1, before it was bought: correct one of the "
                          "two days.")
            .arg(value.day(0));
    case ExchangeReason::FolderTaken:
        return Errors::tr("There is something in %1 already: choose a folder that is new or empty.")
            .arg(value[0]);
    case ExchangeReason::FolderForeign:
        return Errors::tr(
                   "There is no dictionary.csv in %1, which stands in every folder of tables "
                   "that Plumule writes: choose such a folder.")
            .arg(value[0]);
    case ExchangeReason::FileMissing:
        return Errors::tr("The file %1 is missing from the folder: put it back.").arg(value[0]);
    case ExchangeReason::FileUnknown:
        return Errors::tr("No table of a journal is called %1: take the file out of the folder, or "
                          "use a newer Plumule.")
            .arg(value[0]);
    case ExchangeReason::RoomRows:
        return Errors::tr("A journal has one room: leave one row in this table.");
    }
    return {};
}

} // namespace plumule::ui
