#pragma once

#include <string_view>

namespace plumule::stats {

// Why a table was not taken, or a model of it not fitted or not asked. An enumerator's values stand
// beside it; where one row is at fault, the error says which, counted from 1.
enum class ModelReason
{
    ColumnNameMissing,
    ColumnTwice,   // the column
    ColumnLength,  // the column
    ColumnUnknown, // the column
    RowLength,     // the row's cells, the columns
    NotFinite,     // the column
    NotANumber,    // the column, the cell
    TooFewRows,
    OneLevel,     // the column
    NoRowsToRest, // no degree of freedom is left for the spread
    NoSpread,
    Inseparable, // the term
    NotConverged,
    TermEmpty,
    TermTwice,       // the term
    TermPartMissing, // the term, the part
    TermUnknown,     // the term
    NotCategories,   // the column
    RandomMissing,
    FixedAndRandom, // the column
    LevelUnknown,   // the level, the column
    ContrastSum,
    ConfidenceLevel,
    Margin,
};

constexpr std::string_view familyOf(ModelReason)
{
    return "model";
}

} // namespace plumule::stats
