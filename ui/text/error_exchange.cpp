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
    case ExchangeReason::Empty:
        return Errors::tr(
            "The table is empty: choose one with a line of column names and a line for each tray.");
    case ExchangeReason::NotUtf8:
        return Errors::tr(
            "There are letters here that are not UTF-8: save the table again as CSV in UTF-8.");
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
    case ExchangeReason::HarvestBeforeSowing:
        return Errors::tr("The harvest of %1 lies before the sowing: correct one of the two days.")
            .arg(value.day(0));
    case ExchangeReason::CodeTaken:
        return Errors::tr("The code %1 is taken already: choose another one.").arg(value[0]);
    case ExchangeReason::PlaceTaken:
        return Errors::tr("A tray grows at %1 already: choose another place, or leave it empty.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
