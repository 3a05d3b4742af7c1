#pragma once

#include <cstdint>
#include <filesystem>
#include <string_view>

namespace plumule {

// CRC-64 (ECMA-182 polynomial), to see flipped bytes that SQLite's own checks do not.
[[nodiscard]] std::int64_t checksumOf(std::string_view bytes);

// Of a whole file; throws StorageFailure (Unreadable) when it cannot be read.
[[nodiscard]] std::int64_t checksumOfFile(const std::filesystem::path& path);

} // namespace plumule
