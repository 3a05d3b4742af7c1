#pragma once

#include <filesystem>

namespace plumule {

// What a folder's file system is to a journal.
enum class FolderKind
{
    Local,
    Network, // another machine's disk
    Bridged  // a program stands between: a synced or far folder, or a disk that it reads for us
};

// By the file system's own number, as statfs(2) gives it; Local where it is not known. Links are
// followed. A local folder that a program copies elsewhere now and then has no mark of its own.
[[nodiscard]] FolderKind folderKindOf(const std::filesystem::path& file);

} // namespace plumule
