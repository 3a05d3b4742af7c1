#pragma once

#include <string_view>

namespace plumule {

// What is wrong with a table, in its row where there is one.
// An enumerator's values stand beside it.
enum class ExchangeReason
{
    FileUnreadable, // the file
    Empty,
    NotUtf8,
    OpenQuote,
    StrayQuote,
    HeaderUnnamed,
    HeaderTwice,         // the column
    CellCount,           // cells, columns
    ColumnMissing,       // the column
    CellMissing,         // the column
    CellForm,            // the column, what stands there
    CellAmbiguous,       // the column, what may be thousands or decimals there
    HarvestBeforeSowing, // the day of harvest
    CodeTaken,           // the code
    PlaceTaken,          // rack/shelf/place
};

constexpr std::string_view familyOf(ExchangeReason)
{
    return "exchange";
}

} // namespace plumule
