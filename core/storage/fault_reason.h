#pragma once

#include <string_view>

namespace plumule {

// What a search through a journal finds amiss in its file. Error::row names the table and the row
// where there is one. An enumerator's values stand beside it.
enum class FaultReason
{
    Pages,              // parts of the file that belong to no table
    TablePages,         // parts of the file that hold Error::row's table
    Dangling,           // the table whose row is not there
    CellValue,          // the column, what stands there
    CellWord,           // the column, what stands there
    ChangesetDamaged,   // its number
    ChangesetSenseless, // its number
    IdsRunOut,          // the next row would be given the number of one that is there
};

constexpr std::string_view familyOf(FaultReason)
{
    return "fault";
}

} // namespace plumule
