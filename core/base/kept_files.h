#pragma once

#include <filesystem>
#include <vector>

namespace plumule {

// Files that nothing may be saved over, and a folder that nothing may be saved into, as long as
// this lives: an open journal with what belongs to it. They need not be there yet. May be made and
// asked on any thread.
class KeptFiles
{
public:
    KeptFiles(const std::vector<std::filesystem::path>& files, const std::filesystem::path& folder);
    ~KeptFiles();
    KeptFiles(const KeptFiles&) = delete;
    KeptFiles& operator=(const KeptFiles&) = delete;

private:
    int m_number = 0;
};

// Whether the name leads to one of them, by a link or not.
[[nodiscard]] bool isKept(const std::filesystem::path& path);

} // namespace plumule
