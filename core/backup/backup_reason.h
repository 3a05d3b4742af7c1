#pragma once

#include <string_view>

namespace plumule {

// How a backup was not made or not brought back.
enum class BackupReason
{
    FolderGone,   // the folder
    Altered,      // the file: no longer as it was written
    PhotoAltered, // the photograph's name
    TargetTaken,  // the file that stands where the journal was to be brought back to
};

constexpr std::string_view familyOf(BackupReason)
{
    return "backup";
}

} // namespace plumule
