#pragma once

#include <string_view>

namespace plumule {

// What a rescue says of what it could not take over as it stood. Error::row names the table and the
// row where it is one row. An enumerator's values stand beside it.
enum class RescueReason
{
    // Left out.
    RowUnreadable,   // by Error::row
    RowsUnreadable,  // of Error::row's table; between these two numbers
    TableUnreadable, // Error::row's table
    CellUnsound,     // Error::row; the column, what stands there
    OwnerLost,       // Error::row; the table of the entry that it belongs to
    RowTwice,        // Error::row: another has its code
    StepLost,        // its number
    StepsLost,       // between these two numbers
    LogUnreadable,
    PhotoLost,       // the file
                     // Taken over otherwise than it stood.
    Emptied,         // Error::row; the column that named what is lost
    FromHistory,     // Error::row
    StandIn,         // Error::row
    HeadRebuilt,     // what says where everything is in the file
                     // Nothing is left.
    NothingReadable, // the file
};

constexpr std::string_view familyOf(RescueReason)
{
    return "rescue";
}

} // namespace plumule
