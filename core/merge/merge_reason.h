#pragma once

#include <string_view>

namespace plumule {

// Why a copy is not taken along or not brought back. An enumerator's values stand beside it.
enum class MergeReason
{
    NameMissing,
    CopyOfACopy,      // this journal is a copy itself
    NotTaken,         // the file that was to be the copy: it is there already
    NoCopy,           // the file: no copy of any journal
    OfAnother,        // the file: a copy of another journal
    Faulty,           // the file
    NothingNew,       // the copy's name
    NotAllChosen,     // how many are left
    ChangedMeanwhile, // what was chosen between is no longer what stands in the journals
    StillBroken,      // the rule's values: no choice between the two sides keeps a rule
};

constexpr std::string_view familyOf(MergeReason)
{
    return "merge";
}

} // namespace plumule
