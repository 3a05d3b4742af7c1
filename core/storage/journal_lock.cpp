#include "core/storage/journal_lock.h"

#include <fcntl.h>
#include <map>
#include <mutex>
#include <sys/stat.h>
#include <unistd.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;

// Far beyond the bytes that SQLite locks, and beyond any file: "PLML" in its upper half.
constexpr off_t kLockedByte = off_t{0x504C4D4C} << 32;

struct OpenFile
{
    int connections = 0;
    int handle = -1; // for the lock; kept until the last connection is closed
    bool isHeld = false;
};

struct OpenFiles
{
    std::mutex mutex;
    std::map<FileKey, OpenFile> byKey;
};

OpenFiles& openFiles()
{
    static OpenFiles files;
    return files;
}

struct flock wholeByte(short type)
{
    struct flock lock = {};
    lock.l_type = type;
    lock.l_whence = SEEK_SET;
    lock.l_start = kLockedByte;
    lock.l_len = 1;
    return lock;
}

// The handle for the lock; where the file may not be written it does to ask, not to hold. -1 where
// the name leads elsewhere by now.
int handleFor(OpenFile& file, const fs::path& path, const FileKey& key)
{
    if (file.handle < 0) {
        file.handle = ::open(path.c_str(), O_RDWR | O_CLOEXEC);
    }
    if (file.handle < 0) {
        file.handle = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    }
    struct stat found = {};
    const bool isIt = file.handle >= 0 && ::fstat(file.handle, &found) == 0 &&
                      FileKey{std::uint64_t{found.st_dev}, std::uint64_t{found.st_ino}} == key;
    return isIt ? file.handle : -1;
}

// Closes the handle once that takes no lock from anyone.
void letGo(std::map<FileKey, OpenFile>& files, const FileKey& key)
{
    const auto found = files.find(key);
    if (found == files.end() || found->second.connections > 0 || found->second.isHeld) {
        return;
    }
    if (found->second.handle >= 0) {
        ::close(found->second.handle);
    }
    files.erase(found);
}

} // namespace

OpenConnection::OpenConnection(const fs::path& path)
    : m_file(path.empty() ? std::nullopt : fileKeyOf(path))
{
    if (m_file) {
        OpenFiles& files = openFiles();
        const std::lock_guard guard(files.mutex);
        ++files.byKey[*m_file].connections;
    }
}

OpenConnection::~OpenConnection()
{
    if (m_file) {
        OpenFiles& files = openFiles();
        const std::lock_guard guard(files.mutex);
        --files.byKey[*m_file].connections;
        letGo(files.byKey, *m_file);
    }
}

bool isOpenHere(const fs::path& path)
{
    const auto key = fileKeyOf(path);
    OpenFiles& files = openFiles();
    const std::lock_guard guard(files.mutex);
    const auto found = key ? files.byKey.find(*key) : files.byKey.end();
    return found != files.byKey.end() && found->second.connections > 0;
}

JournalLock::JournalLock(const fs::path& path)
    : m_file(fileKeyOf(path))
{
    if (!m_file) {
        return;
    }
    OpenFiles& files = openFiles();
    const std::lock_guard guard(files.mutex);
    OpenFile& file = files.byKey[*m_file];
    const int handle = handleFor(file, path, *m_file);
    struct flock lock = wholeByte(F_WRLCK);
    m_isHeld = !file.isHeld && handle >= 0 && ::fcntl(handle, F_OFD_SETLK, &lock) == 0;
    file.isHeld = file.isHeld || m_isHeld;
    letGo(files.byKey, *m_file);
}

JournalLock::~JournalLock()
{
    if (!m_isHeld) {
        return;
    }
    OpenFiles& files = openFiles();
    const std::lock_guard guard(files.mutex);
    OpenFile& file = files.byKey[*m_file];
    struct flock lock = wholeByte(F_UNLCK);
    ::fcntl(file.handle, F_OFD_SETLK, &lock);
    file.isHeld = false;
    letGo(files.byKey, *m_file);
}

bool isLocked(const fs::path& path)
{
    const auto key = fileKeyOf(path);
    if (!key) {
        return false;
    }
    OpenFiles& files = openFiles();
    const std::lock_guard guard(files.mutex);
    OpenFile& file = files.byKey[*key];
    const int handle = handleFor(file, path, *key);
    struct flock lock = wholeByte(F_WRLCK);
    const bool isTaken = file.isHeld || (handle >= 0 && ::fcntl(handle, F_OFD_GETLK, &lock) == 0 &&
                                         lock.l_type != F_UNLCK);
    letGo(files.byKey, *key);
    return isTaken;
}

} // namespace plumule
