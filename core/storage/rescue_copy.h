#pragma once

#include "core/base/result.h"

#include <filesystem>
#include <optional>

namespace plumule {

// A passing copy of a damaged journal and its log, in a folder of its own beside `beside`, which
// goes with it: to read from it SQLite may have to write there.
class RescueCopy
{
public:
    // FileUnreadable where not one byte can be read; DiskFull, NotMade. What can't be read in the
    // midst of the file is copied as zeros.
    [[nodiscard]] static Result<RescueCopy> make(const std::filesystem::path& old,
                                                 const std::filesystem::path& beside);
    RescueCopy(RescueCopy&& other) noexcept;
    RescueCopy(const RescueCopy&) = delete;
    RescueCopy& operator=(const RescueCopy&) = delete;
    RescueCopy& operator=(RescueCopy&&) = delete;
    ~RescueCopy();

    [[nodiscard]] std::filesystem::path file() const { return m_folder / "journal"; }
    [[nodiscard]] bool hasLog() const;
    void dropLog() const;
    // Writes anew what SQLite's file format keeps in the first 100 bytes (sqlite.org, "Database
    // File Format", 1.3), as a journal of the newest schema has it, and fills up the last page.
    void rebuildHead() const;

private:
    explicit RescueCopy(std::filesystem::path folder);

    std::filesystem::path m_folder; // empty: moved from
};

} // namespace plumule
