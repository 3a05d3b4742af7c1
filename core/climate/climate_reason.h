#pragma once

#include <string_view>

namespace plumule {

// What is wrong with a logger's file, in its line where there is one, or with where it is put.
// An enumerator's values stand beside it.
enum class ClimateReason
{
    FileTooLarge,     // the file, the most megabytes
    TooManyRows,      // rows, the most
    TimeMissing,      // no column of times is chosen
    MeasureMissing,   // no column of temperature, humidity or light is chosen
    ColumnTwice,      // the column, chosen for two things
    DateOrderUnclear, // a day of the file that may be read in two ways
    TimeForm,         // what stands there
    TimeAhead,        // what stands there
    CellForm,         // the column, what stands there
    CellBeyond,       // the column, what stands there, least and most in the column's unit
    CellAmbiguous,    // the column, what may be thousands or decimals there
    LinesLeftOut,     // how many lines can't be read and were not agreed to be left out
    NothingNew,       // all hours of the file are in the journal
    NameMissing,
    PlaceUnknown, // the shelf or rack was removed since
    LightUnlike,  // the logger, whose light is in the other unit so far
    PpfdBeyond,   // the most
};

constexpr std::string_view familyOf(ClimateReason)
{
    return "climate";
}

} // namespace plumule
