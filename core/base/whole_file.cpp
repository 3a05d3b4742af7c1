#include "core/base/whole_file.h"

#include "core/base/file_key.h"
#include "core/base/file_reason.h"
#include "core/base/kept_files.h"

#include <cerrno>
#include <fcntl.h>
#include <fstream>
#include <random>
#include <sys/stat.h>
#include <unistd.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;

tl::unexpected<Error> failedBy(int code, const fs::path& target)
{
    return fail(isDiskFull(code) ? ErrorKind::DiskFull : ErrorKind::NotWritable,
                FileReason::NotWritten, target.string());
}

// A name of its own beside the target, taken by nobody.
int openBeside(const fs::path& target, mode_t mode, fs::path& unfinished)
{
    constexpr int kTries = 100;
    std::random_device lot;
    for (int i = 0; i < kTries; ++i) {
        unfinished = target.parent_path() / (".plumule-" + std::to_string(lot()) + ".part");
        const int handle =
            ::open(unfinished.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_APPEND | O_CLOEXEC, mode);
        if (handle >= 0 || errno != EEXIST) {
            return handle;
        }
    }
    return -1;
}

} // namespace

bool isDiskFull(int systemError)
{
    return systemError == ENOSPC || systemError == EDQUOT || systemError == EFBIG;
}

Done syncFolderOf(const fs::path& target)
{
    const int handle = ::open(target.parent_path().c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle < 0) {
        // A folder that may be written but not read: what was named in it is.
        return errno == EACCES ? Done() : failedBy(errno, target);
    }
    const int code = ::fsync(handle) == 0 ? 0 : errno;
    ::close(handle);
    // Some file systems sync no folder and say so.
    return code == 0 || code == EINVAL || code == ENOTSUP ? Done() : failedBy(code, target);
}

WholeFile::WholeFile(fs::path target, fs::path unfinished, int handle)
    : m_target(std::move(target))
    , m_unfinished(std::move(unfinished))
    , m_handle(handle)
{}

WholeFile::WholeFile(WholeFile&& other) noexcept
    : m_target(std::move(other.m_target))
    , m_unfinished(std::exchange(other.m_unfinished, {}))
    , m_handle(std::exchange(other.m_handle, -1))
{}

WholeFile::~WholeFile()
{
    if (m_handle >= 0) {
        ::close(m_handle);
    }
    if (!m_unfinished.empty()) {
        ::unlink(m_unfinished.c_str());
    }
}

Result<WholeFile> WholeFile::begin(const fs::path& named, WrittenBy by)
{
    const fs::path target = behindLinks(named);
    if (by == WrittenBy::Anyone && isKept(target)) {
        return fail(ErrorKind::Conflict, FileReason::Kept, named.string());
    }
    mode_t mode = 0666;
    struct stat found = {};
    if (::stat(target.c_str(), &found) == 0) {
        // A device or a pipe would be replaced by a file; one that is write-protected is meant to
        // be.
        if (!S_ISREG(found.st_mode) || ::access(target.c_str(), W_OK) != 0) {
            return fail(ErrorKind::NotWritable, FileReason::NotWritten, named.string());
        }
        mode = found.st_mode & 0777;
    } else if (errno != ENOENT) {
        return failedBy(errno, named);
    }
    fs::path unfinished;
    const int handle = openBeside(target, mode, unfinished);
    if (handle < 0) {
        return failedBy(errno, named);
    }
    return WholeFile(target, std::move(unfinished), handle);
}

Done WholeFile::write(std::string_view bytes)
{
    while (!bytes.empty()) {
        const ssize_t written = ::write(m_handle, bytes.data(), bytes.size());
        if (written < 0 && errno != EINTR) {
            return failedBy(errno, m_target);
        }
        bytes.remove_prefix(written < 0 ? 0 : static_cast<std::size_t>(written));
    }
    return {};
}

Done WholeFile::sync()
{
    if (::fsync(m_handle) != 0) {
        return failedBy(errno, m_target);
    }
    return {};
}

Done WholeFile::commit()
{
    if (auto synced = sync(); !synced) {
        return synced;
    }
    if (::close(std::exchange(m_handle, -1)) != 0) {
        return failedBy(errno, m_target);
    }
    if (::rename(m_unfinished.c_str(), m_target.c_str()) != 0) {
        return failedBy(errno, m_target);
    }
    m_unfinished.clear();
    // The rename is on the disk only when the folder is.
    return syncFolderOf(m_target);
}

Done writeWhole(const fs::path& target, std::string_view bytes)
{
    auto file = WholeFile::begin(target);
    if (!file) {
        return passOn(file);
    }
    return file->write(bytes).and_then([&] { return file->commit(); });
}

Done copyWhole(const fs::path& from, const fs::path& target, WrittenBy by)
{
    std::ifstream source(from, std::ios::binary);
    if (!source) {
        return fail(ErrorKind::Unreadable, FileReason::NotRead, from.string());
    }
    auto file = WholeFile::begin(target, by);
    if (!file) {
        return passOn(file);
    }
    std::string block(std::size_t{1} << 16, '\0');
    while (source.read(block.data(), static_cast<std::streamsize>(block.size())),
           source.gcount() > 0) {
        const std::string_view read(block.data(), static_cast<std::size_t>(source.gcount()));
        if (const Done written = file->write(read); !written) {
            return written;
        }
    }
    if (source.bad()) {
        return fail(ErrorKind::Unreadable, FileReason::NotRead, from.string());
    }
    return file->commit();
}

Done makeFolder(const fs::path& folder)
{
    std::error_code failed;
    if (fs::is_directory(folder, failed)) {
        return {};
    }
    fs::create_directory(folder, failed);
    return failed ? failedBy(failed.value(), folder) : syncFolderOf(folder);
}

} // namespace plumule
