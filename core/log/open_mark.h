#pragma once

#include <filesystem>

namespace plumule {

// Stands in a folder of the program's own while a journal is open for writing, and is gone once
// that was closed as it should be. Made only by who holds the journal's lock: one that stands
// already was left by a program that ended otherwise. It holds nothing; its name tells the file by
// a checksum.
class OpenMark
{
public:
    OpenMark(const std::filesystem::path& folder, const std::filesystem::path& journal);
    ~OpenMark();
    OpenMark(const OpenMark&) = delete;
    OpenMark& operator=(const OpenMark&) = delete;

    [[nodiscard]] bool wasLeft() const { return m_wasLeft; }

private:
    std::filesystem::path m_file;
    bool m_wasLeft = false;
};

} // namespace plumule
