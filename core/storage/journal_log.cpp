#include "core/storage/journal_log.h"

#include "core/base/file_key.h"
#include "core/base/whole_file.h"
#include "core/storage/failure.h"

#include <cerrno>
#include <cstdlib>
#include <fstream>
#include <unistd.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;

constexpr const char* kLogs[] = {"-wal", "-journal"};

} // namespace

FileFormat formatOf(const fs::path& path)
{
    constexpr std::size_t kHead = 20;
    constexpr std::size_t kReadVersion = 19;
    std::ifstream file(path, std::ios::binary);
    std::string head(kHead, '\0');
    file.read(head.data(), kHead);
    if (file.gcount() != kHead || head.compare(0, 16, std::string("SQLite format 3\0", 16)) != 0) {
        return FileFormat::NotSqlite;
    }
    return head[kReadVersion] == 2 ? FileFormat::WriteAheadLog : FileFormat::RollbackJournal;
}

bool isWritableInPlace(const fs::path& path)
{
    const fs::path file = behindLinks(path);
    return ::access(file.c_str(), W_OK) == 0 && ::access(file.parent_path().c_str(), W_OK) == 0;
}

bool hasLogBeside(const fs::path& file)
{
    for (const char* log : kLogs) {
        std::error_code isNone;
        if (fs::file_size(file.string() + log, isNone) > 0 && !isNone) {
            return true;
        }
    }
    return false;
}

fs::path nameWithLog(const fs::path& file)
{
    const fs::path name = behindLinks(file);
    std::error_code failed;
    if (hasLogBeside(name) || fs::hard_link_count(name, failed) < 2 || failed) {
        return name;
    }
    const auto key = fileKeyOf(name);
    for (fs::directory_iterator each(name.parent_path(), failed), end; !failed && each != end;
         each.increment(failed)) {
        if (each->is_regular_file(failed) && fileKeyOf(each->path()) == key &&
            hasLogBeside(each->path())) {
            return each->path();
        }
    }
    return name;
}

PrivateCopy::PrivateCopy(const fs::path& file)
    : m_name(file.filename())
{
    std::error_code failed;
    std::string folder = (fs::temp_directory_path(failed) / "plumule-XXXXXX").string();
    if (failed || ::mkdtemp(folder.data()) == nullptr) {
        throw StorageFailure(isDiskFull(errno) ? ErrorKind::DiskFull : ErrorKind::NotWritable,
                             StorageReason::NotMade, folder);
    }
    m_folder = folder;
    for (const char* ending : {"", "-wal", "-journal"}) {
        const fs::path from = file.string() + ending;
        if (*ending != '\0' && !fs::exists(from, failed)) {
            continue;
        }
        if (const Done copied = copyWhole(from, this->file().string() + ending); !copied) {
            fs::remove_all(m_folder, failed);
            throw StorageFailure(copied.error());
        }
    }
}

PrivateCopy::~PrivateCopy()
{
    std::error_code ignored;
    fs::remove_all(m_folder, ignored);
}

} // namespace plumule
