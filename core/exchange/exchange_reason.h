#pragma once

#include <string_view>

namespace plumule {

// What is wrong with a table, in its row where there is one.
// An enumerator's values stand beside it.
enum class ExchangeReason
{
    FileUnreadable, // the file
    TooLarge,       // the file, the most MiB
    Empty,
    NotUtf8,
    NotEncoded, // the encoding
    OpenQuote,
    StrayQuote,
    HeaderUnnamed,
    HeaderTwice,         // the column
    CellCount,           // cells, columns
    ColumnMissing,       // the column
    CellMissing,         // the column
    CellForm,            // the column, what stands there
    CellAmbiguous,       // the column, what may be thousands or decimals there
    DayAmbiguous,        // the column, what stands there
    CellTooFine,         // the column, what stands there, the finest that is kept
    WordUnknown,         // the column, what stands there, the words that may
    NameUnknown,         // the column, what stands there
    NameOfSeveral,       // the column, what stands there
    NumberTwice,         // the column, what stands there
    ColumnUnknown,       // the column
    HarvestBeforeSowing, // the day of harvest
    CodeTaken,           // the code
    PlaceTaken,          // rack/shelf/place
    StageUnknown,        // the tray, the stage
    StageOutOfOrder,     // the tray, the stage
    DayAhead,            // the day
    DayBeforeSowing,     // the day, the tray, its day of sowing
    CutAfterLast,        // the tray
    ScoreTaken,          // the serving's code, the attribute
    RetiredBeforeBought, // the day it was retired
    FolderTaken,         // the folder
    FolderForeign,       // the folder
    FileMissing,         // the file
    FileUnknown,         // the file
    RoomRows,
};

constexpr std::string_view familyOf(ExchangeReason)
{
    return "exchange";
}

} // namespace plumule
