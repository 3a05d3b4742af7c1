#include "core/base/kept_files.h"

#include "core/base/file_key.h"

#include <algorithm>
#include <map>
#include <mutex>

namespace plumule {
namespace {

namespace fs = std::filesystem;

struct Kept
{
    std::vector<fs::path> files; // behind links
    fs::path folder;
};

struct AllKept
{
    std::mutex mutex;
    std::map<int, Kept> byNumber;
    int next = 1;
};

AllKept& allKept()
{
    static AllKept all;
    return all;
}

bool isSameFile(const fs::path& a, const fs::path& b)
{
    const auto key = fileKeyOf(a);
    return a == b || (key && key == fileKeyOf(b));
}

bool isWithin(const fs::path& path, const fs::path& folder)
{
    for (fs::path at = path; !folder.empty() && at.has_relative_path(); at = at.parent_path()) {
        if (isSameFile(at, folder)) {
            return true;
        }
    }
    return false;
}

} // namespace

KeptFiles::KeptFiles(const std::vector<fs::path>& files, const fs::path& folder)
{
    Kept kept;
    for (const fs::path& file : files) {
        kept.files.push_back(behindLinks(file));
    }
    kept.folder = folder.empty() ? fs::path() : behindLinks(folder);
    AllKept& all = allKept();
    const std::lock_guard lock(all.mutex);
    m_number = all.next++;
    all.byNumber.emplace(m_number, std::move(kept));
}

KeptFiles::~KeptFiles()
{
    AllKept& all = allKept();
    const std::lock_guard lock(all.mutex);
    all.byNumber.erase(m_number);
}

bool isKept(const fs::path& path)
{
    const fs::path target = behindLinks(path);
    AllKept& all = allKept();
    const std::lock_guard lock(all.mutex);
    return std::any_of(all.byNumber.begin(), all.byNumber.end(), [&](const auto& entry) {
        const Kept& kept = entry.second;
        return isWithin(target, kept.folder) ||
               std::any_of(kept.files.begin(), kept.files.end(),
                           [&](const fs::path& file) { return isSameFile(target, file); });
    });
}

} // namespace plumule
