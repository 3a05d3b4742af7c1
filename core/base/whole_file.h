#pragma once

#include "core/base/result.h"

#include <filesystem>
#include <string_view>

namespace plumule {

// Whether the system's error number says that nothing more fits: the disk, or what one may have of
// it.
[[nodiscard]] bool isDiskFull(int systemError);

// Who writes: a journal puts files into its own folder, which is kept from everyone else.
enum class WrittenBy
{
    Anyone,
    TheJournal
};

// A file that is there whole or not at all: written under another name in its folder, synced,
// renamed, and the folder synced. What stood there before stays until then. Links are followed, so
// that a link stays one. Errors: FileReason::Kept where the target is one of KeptFiles;
// DiskFull; NotWritable, also for what is no file.
class WholeFile
{
public:
    // Makes the unfinished file.
    [[nodiscard]] static Result<WholeFile> begin(const std::filesystem::path& target,
                                                 WrittenBy by = WrittenBy::Anyone);
    WholeFile(WholeFile&& other) noexcept;
    WholeFile(const WholeFile&) = delete;
    WholeFile& operator=(const WholeFile&) = delete;
    WholeFile& operator=(WholeFile&&) = delete;
    // Removes what was not committed.
    ~WholeFile();

    // For those who write by the name; they have closed it before commit().
    [[nodiscard]] const std::filesystem::path& unfinished() const { return m_unfinished; }
    // Appends.
    [[nodiscard]] Done write(std::string_view bytes);
    // Puts what was written so far on the disk, still unfinished.
    [[nodiscard]] Done sync();
    [[nodiscard]] Done commit();

private:
    WholeFile(std::filesystem::path target, std::filesystem::path unfinished, int handle);

    std::filesystem::path m_target;
    std::filesystem::path m_unfinished; // empty: committed, or moved from
    int m_handle = -1;
};

// The bytes as the whole content of the file.
[[nodiscard]] Done writeWhole(const std::filesystem::path& target, std::string_view bytes);

// The content of another file. Unreadable where that can't be read.
[[nodiscard]] Done copyWhole(const std::filesystem::path& from, const std::filesystem::path& target,
                             WrittenBy by = WrittenBy::Anyone);

// Puts the names in the file's folder on the disk. DiskFull, NotWritable.
[[nodiscard]] Done syncFolderOf(const std::filesystem::path& file);

// Makes the folder where it is not there, and puts its name on the disk. DiskFull, NotWritable.
[[nodiscard]] Done makeFolder(const std::filesystem::path& folder);

} // namespace plumule
