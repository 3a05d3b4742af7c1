#include "core/backup/photo_list.h"

#include "core/storage/checksum.h"
#include "core/storage/failure.h"

#include <algorithm>
#include <fmt/format.h>
#include <sstream>

namespace plumule {
namespace {

constexpr std::size_t kLongestEnding = 8;

bool isKey(const std::string& key)
{
    constexpr std::size_t kHexDigits = 16;
    const auto isHex = [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); };
    return key.size() > kHexDigits + 1 && key[kHexDigits] == '-' && isPlainFileName(key) &&
           std::all_of(key.begin(), key.begin() + kHexDigits, isHex);
}

} // namespace

bool isPlainFileName(const std::string& name)
{
    return !name.empty() && name != "." && name != ".." &&
           name.find_first_of(std::string("/\\\n\0", 4)) == std::string::npos;
}

Result<std::string> photoKeyOf(const std::filesystem::path& file)
{
    std::error_code failed;
    const auto bytes = std::filesystem::file_size(file, failed);
    if (failed) {
        return fail(ErrorKind::Unreadable, BackupReason::PhotoAltered, file.filename().string());
    }
    std::string ending = file.extension().string();
    const auto isPlain = [](char c) {
        return c == '.' || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') ||
               (c >= 'A' && c <= 'Z');
    };
    if (ending.size() > kLongestEnding || !std::all_of(ending.begin(), ending.end(), isPlain)) {
        ending.clear();
    }
    try {
        const auto checksum = static_cast<std::uint64_t>(checksumOfFile(file));
        return fmt::format("{:016x}-{}{}", checksum, bytes, ending);
    } catch (const StorageFailure&) {
        return fail(ErrorKind::Unreadable, BackupReason::PhotoAltered, file.filename().string());
    }
}

std::string photoListText(const std::vector<KeptPhoto>& photos)
{
    std::string text;
    for (const KeptPhoto& photo : photos) {
        text += (photo.key.empty() ? "-" : photo.key) + ' ' + photo.name + '\n';
    }
    return text;
}

std::optional<std::vector<KeptPhoto>> photoListFrom(const std::string& text)
{
    std::vector<KeptPhoto> photos;
    std::istringstream lines(text);
    std::string line;
    while (std::getline(lines, line)) {
        const std::size_t blank = line.find(' ');
        if (blank == std::string::npos) {
            return std::nullopt;
        }
        KeptPhoto photo{line.substr(blank + 1), line.substr(0, blank)};
        if (photo.key == "-") {
            photo.key.clear();
        } else if (!isKey(photo.key)) {
            return std::nullopt;
        }
        if (!isPlainFileName(photo.name)) {
            return std::nullopt;
        }
        photos.push_back(std::move(photo));
    }
    return photos;
}

} // namespace plumule
