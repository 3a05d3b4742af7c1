#include "core/base/file_key.h"

#include <sys/stat.h>

namespace plumule {

namespace fs = std::filesystem;

std::optional<FileKey> fileKeyOf(const fs::path& path)
{
    struct stat found = {};
    if (::stat(path.c_str(), &found) != 0) {
        return std::nullopt;
    }
    return FileKey{std::uint64_t{found.st_dev}, std::uint64_t{found.st_ino}};
}

fs::path behindLinks(const fs::path& path)
{
    constexpr int kMostLinks = 40; // as Linux follows at most
    std::error_code ignored;
    fs::path at = fs::absolute(path, ignored);
    // A link to a file that is yet to be made is not followed by weakly_canonical().
    for (int i = 0; i < kMostLinks && fs::is_symlink(fs::symlink_status(at, ignored)); ++i) {
        at = at.parent_path() / fs::read_symlink(at, ignored);
    }
    const fs::path whole = fs::weakly_canonical(at, ignored);
    return ignored || whole.empty() ? at.lexically_normal() : whole;
}

} // namespace plumule
