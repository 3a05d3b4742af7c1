#pragma once

#include <compare>
#include <cstdint>
#include <filesystem>
#include <optional>

namespace plumule {

// Which file it is, whatever name leads to it.
struct FileKey
{
    std::uint64_t device = 0;
    std::uint64_t inode = 0;
    auto operator<=>(const FileKey&) const = default;
};

// Links are followed. None where there is no file.
[[nodiscard]] std::optional<FileKey> fileKeyOf(const std::filesystem::path& path);

// The name that a file has, or would get, with every link on the way followed.
[[nodiscard]] std::filesystem::path behindLinks(const std::filesystem::path& path);

} // namespace plumule
