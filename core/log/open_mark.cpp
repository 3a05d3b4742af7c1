#include "core/log/open_mark.h"

#include "core/base/file_key.h"
#include "core/storage/checksum.h"

#include <fmt/format.h>
#include <fstream>

namespace plumule {

namespace fs = std::filesystem;

OpenMark::OpenMark(const fs::path& folder, const fs::path& journal)
    : m_file(folder / fmt::format("open-{:016x}", static_cast<std::uint64_t>(
                                                      checksumOf(behindLinks(journal).string()))))
{
    std::error_code ignored;
    fs::create_directories(folder, ignored);
    m_wasLeft = fs::exists(m_file, ignored);
    std::ofstream(m_file, std::ios::app);
}

OpenMark::~OpenMark()
{
    std::error_code ignored;
    fs::remove(m_file, ignored);
}

} // namespace plumule
