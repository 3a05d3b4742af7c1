#include "tests/soak/disk_vfs.h"

#include <algorithm>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <map>
#include <random>
#include <sqlite3.h>
#include <string>
#include <vector>

namespace plumule {
namespace {

namespace fs = std::filesystem;

using Bytes = std::string;
constexpr std::size_t kSector = 512;

// A write or a resize that the disk may still lose.
struct Pending
{
    bool isResize = false;
    std::size_t at = 0; // or the new size
    Bytes bytes;
};

struct DiskFile
{
    bool isOnDisk = false;  // its name was synced
    bool isRemoved = false; // the removal of its name may not have been
    Bytes synced;
    std::vector<Pending> pending;
};

struct Disk
{
    int countdown = 0; // 0: calm
    int operations = 0;
    DiskFault fault = DiskFault::None; // None: the power
    bool hasStruck = false;
    bool isDead = false;
    std::map<std::string, DiskFile> files;
};

Disk theDisk;

// What this operation meets. Error too once the power is gone.
DiskFault strike()
{
    ++theDisk.operations;
    if (theDisk.isDead) {
        return DiskFault::Error;
    }
    if (theDisk.countdown == 0 || --theDisk.countdown > 0) {
        return DiskFault::None;
    }
    theDisk.hasStruck = true;
    theDisk.isDead = theDisk.fault == DiskFault::None;
    return theDisk.isDead ? DiskFault::Error : theDisk.fault;
}

void apply(Bytes& content, const Pending& pending, std::size_t length)
{
    if (pending.isResize) {
        content.resize(pending.at, '\0');
        return;
    }
    content.resize(std::max(content.size(), pending.at + length), '\0');
    std::copy_n(pending.bytes.begin(), length,
                content.begin() + static_cast<std::ptrdiff_t>(pending.at));
}

// The real file stands right behind our own head in the memory that SQLite gives.
struct DiskHandle
{
    sqlite3_file head;
    const char* name; // SQLite's own, as long as it is open; null: a passing file
    [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

DiskHandle* handleOf(sqlite3_file* file)
{
    return reinterpret_cast<DiskHandle*>(file);
}

sqlite3_file* realOf(sqlite3_file* file)
{
    return handleOf(file)->real();
}

DiskFile* recordOf(sqlite3_file* file)
{
    const char* name = handleOf(file)->name;
    return name == nullptr ? nullptr : &theDisk.files[name];
}

sqlite3_vfs* realVfs(sqlite3_vfs* vfs)
{
    return static_cast<sqlite3_vfs*>(vfs->pAppData);
}

int diskClose(sqlite3_file* file)
{
    return realOf(file)->pMethods->xClose(realOf(file));
}

int writeThrough(sqlite3_file* file, const void* bytes, int size, sqlite3_int64 at)
{
    const int code = realOf(file)->pMethods->xWrite(realOf(file), bytes, size, at);
    if (DiskFile* record = recordOf(file); record != nullptr && code == SQLITE_OK) {
        record->pending.push_back(
            {false, static_cast<std::size_t>(at),
             Bytes(static_cast<const char*>(bytes), static_cast<std::size_t>(size))});
    }
    return code;
}

int diskWrite(sqlite3_file* file, const void* bytes, int size, sqlite3_int64 at)
{
    switch (strike()) {
    case DiskFault::None:
        return writeThrough(file, bytes, size, at);
    case DiskFault::Error:
        return SQLITE_IOERR_WRITE;
    case DiskFault::Full:
        return SQLITE_FULL;
    case DiskFault::Short:
        writeThrough(file, bytes, size / 2, at);
        return SQLITE_FULL;
    }
    return SQLITE_IOERR_WRITE;
}

int diskTruncate(sqlite3_file* file, sqlite3_int64 size)
{
    if (strike() != DiskFault::None) {
        return SQLITE_IOERR_TRUNCATE;
    }
    const int code = realOf(file)->pMethods->xTruncate(realOf(file), size);
    if (DiskFile* record = recordOf(file); record != nullptr && code == SQLITE_OK) {
        record->pending.push_back({true, static_cast<std::size_t>(size), {}});
    }
    return code;
}

int diskSync(sqlite3_file* file, int)
{
    if (strike() != DiskFault::None) {
        return SQLITE_IOERR_FSYNC;
    }
    if (DiskFile* record = recordOf(file)) {
        for (const Pending& pending : record->pending) {
            apply(record->synced, pending, pending.bytes.size());
        }
        record->pending.clear();
        record->isOnDisk = true; // SQLite's own file system syncs a new file's folder with it
    }
    return SQLITE_OK; // the disk is ours: the real one need not be waited for
}

// Hands a call on to the real file.
template <auto method, class... Arguments>
auto handOn(sqlite3_file* file, Arguments... arguments)
{
    return (realOf(file)->pMethods->*method)(realOf(file), arguments...);
}

// A size hint would write past our record; without one SQLite asks for nothing more.
int diskControl(sqlite3_file* file, int operation, void* argument)
{
    if (operation == SQLITE_FCNTL_SIZE_HINT || operation == SQLITE_FCNTL_CHUNK_SIZE) {
        return SQLITE_OK;
    }
    return realOf(file)->pMethods->xFileControl(realOf(file), operation, argument);
}

// No promise of a disk that writes pages whole or in order.
int promisesNothing(sqlite3_file*)
{
    return 0;
}

const sqlite3_io_methods kDiskMethods = {
    2, // without mapped reads, which would pass us by
    diskClose,
    handOn<&sqlite3_io_methods::xRead, void*, int, sqlite3_int64>,
    diskWrite,
    diskTruncate,
    diskSync,
    handOn<&sqlite3_io_methods::xFileSize, sqlite3_int64*>,
    handOn<&sqlite3_io_methods::xLock, int>,
    handOn<&sqlite3_io_methods::xUnlock, int>,
    handOn<&sqlite3_io_methods::xCheckReservedLock, int*>,
    diskControl,
    handOn<&sqlite3_io_methods::xSectorSize>,
    promisesNothing,
    handOn<&sqlite3_io_methods::xShmMap, int, int, int, void volatile**>,
    handOn<&sqlite3_io_methods::xShmLock, int, int, int>,
    handOn<&sqlite3_io_methods::xShmBarrier>,
    handOn<&sqlite3_io_methods::xShmUnmap, int>,
    nullptr,
    nullptr,
};

Bytes bytesOf(const std::string& name)
{
    std::ifstream file(name, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

int diskOpen(sqlite3_vfs* vfs, const char* name, sqlite3_file* file, int flags, int* outFlags)
{
    file->pMethods = nullptr;
    if (strike() != DiskFault::None) {
        return SQLITE_CANTOPEN;
    }
    const bool isThere = name != nullptr && fs::exists(name);
    const int code = realVfs(vfs)->xOpen(realVfs(vfs), name, realOf(file), flags, outFlags);
    if (code != SQLITE_OK) {
        return code;
    }
    file->pMethods = &kDiskMethods;
    handleOf(file)->name = name;
    if (name != nullptr && !theDisk.files.contains(name)) {
        theDisk.files[name] = {isThere, false, isThere ? bytesOf(name) : Bytes(), {}};
    } else if (name != nullptr && theDisk.files[name].isRemoved) {
        theDisk.files[name].isRemoved = false;
        theDisk.files[name].pending.push_back({true, 0, {}});
    }
    return SQLITE_OK;
}

int diskDelete(sqlite3_vfs* vfs, const char* name, int isSynced)
{
    if (strike() != DiskFault::None) {
        return SQLITE_IOERR_DELETE;
    }
    const int code = realVfs(vfs)->xDelete(realVfs(vfs), name, isSynced);
    if (code == SQLITE_OK && (isSynced != 0 || !theDisk.files[name].isOnDisk)) {
        theDisk.files.erase(name);
    } else if (code == SQLITE_OK) {
        theDisk.files[name].isRemoved = true;
    }
    return code;
}

sqlite3_vfs theDiskVfs = {};

// What is left of it: each write whole, torn at a sector, or lost.
Bytes leftOf(const DiskFile& file, std::mt19937_64& lot)
{
    Bytes content = file.synced;
    for (const Pending& pending : file.pending) {
        const std::size_t size = pending.bytes.size();
        switch (lot() % 3) {
        case 0:
            apply(content, pending, size);
            break;
        case 1:
            if (!pending.isResize) {
                apply(content, pending, std::min(size, lot() % (size / kSector + 1) * kSector));
            }
            break;
        default:
            break;
        }
    }
    return content;
}

} // namespace

DiskVfs::DiskVfs()
{
    sqlite3_vfs* real = sqlite3_vfs_find(nullptr);
    theDiskVfs = *real;
    theDiskVfs.zName = "plumule-disk";
    theDiskVfs.pAppData = real;
    theDiskVfs.pNext = nullptr;
    theDiskVfs.szOsFile = static_cast<int>(sizeof(DiskHandle)) + real->szOsFile;
    theDiskVfs.xOpen = diskOpen;
    theDiskVfs.xDelete = diskDelete;
    theDiskVfs.xAccess = [](sqlite3_vfs* vfs, const char* name, int flags, int* out) {
        return realVfs(vfs)->xAccess(realVfs(vfs), name, flags, out);
    };
    theDiskVfs.xFullPathname = [](sqlite3_vfs* vfs, const char* name, int size, char* out) {
        return realVfs(vfs)->xFullPathname(realVfs(vfs), name, size, out);
    };
    sqlite3_vfs_register(&theDiskVfs, 1);
    theDisk = {};
}

DiskVfs::~DiskVfs()
{
    theDisk = {};
    sqlite3_vfs_unregister(&theDiskVfs);
}

void DiskVfs::failAt(int operation, DiskFault fault)
{
    calm();
    theDisk.countdown = operation;
    theDisk.fault = fault;
}

void DiskVfs::cutAt(int operation)
{
    failAt(operation, DiskFault::None);
}

bool DiskVfs::hasStruck() const
{
    return theDisk.hasStruck;
}

int DiskVfs::operations() const
{
    return theDisk.operations;
}

void DiskVfs::calm()
{
    theDisk.countdown = 0;
    theDisk.operations = 0;
    theDisk.hasStruck = false;
    theDisk.isDead = false;
}

void DiskVfs::takeForSynced()
{
    theDisk.files.clear();
}

void DiskVfs::comeBack(std::uint64_t number)
{
    std::mt19937_64 lot(number);
    for (const auto& [name, file] : theDisk.files) {
        fs::remove(name + "-shm"); // memory
        const bool isLeft = file.isRemoved ? lot() % 2 == 0 : file.isOnDisk || lot() % 2 == 0;
        if (isLeft) {
            std::ofstream(name, std::ios::binary | std::ios::trunc) << leftOf(file, lot);
        } else {
            fs::remove(name);
        }
    }
    theDisk.files.clear();
    calm();
}

} // namespace plumule
