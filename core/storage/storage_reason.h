#pragma once

#include <string_view>

namespace plumule {

// Why a journal's file, or a step back in its history, was refused.
// An enumerator's values stand beside it; Error::row names the row where there is one.
enum class StorageReason
{
    Failed,           // what was being done, the database's words; the error's kind says more
    RowDamaged,       // by Error::row; number 0: it is not known which
    NotAJournal,      // the file
    MadeByNewer,      // the file
    FileDamaged,      // the file
    FileMissing,      // the file
    FileUnreadable,   // the file
    FileExists,       // the file
    NotMade,          // the file
    NotWritable,      // the file
    ShownAsCopy,      // the file
    OpenElsewhere,    // the file
    OlderAndReadOnly, // the file
    FileGone,         // the file
    BackupStopped,
    BackupFaulty,    // the first fault
    ChecksumMissing, // the file
    ChecksumDiffers, // the file
    NothingToTakeBack,
    NothingToDoAgain,
    ChangedSince, // by Error::row
    StoodOnSince,
    EntryUnknown,
    EntryDamaged, // its number
    EntryOfOtherSchema,
};

constexpr std::string_view familyOf(StorageReason)
{
    return "storage";
}

} // namespace plumule
