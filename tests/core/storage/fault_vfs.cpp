#include "tests/core/storage/fault_vfs.h"

#include <cstring>
#include <sqlite3.h>

namespace plumule {
namespace {

struct FaultState
{
    int countdown = 0; // 0: disarmed
    bool lasts = false;
    bool failed = false;
};

FaultState theFault;

// Whether this operation is the one that fails.
bool strikes()
{
    if (theFault.failed && theFault.lasts) {
        return true;
    }
    if (theFault.countdown > 0 && --theFault.countdown == 0) {
        theFault.failed = true;
        return true;
    }
    return false;
}

// The real file stands right behind our own head in the memory that SQLite gives.
struct FaultFile
{
    sqlite3_file head;
    [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

sqlite3_file* realOf(sqlite3_file* file)
{
    return reinterpret_cast<FaultFile*>(file)->real();
}

sqlite3_vfs* realVfs(sqlite3_vfs* vfs)
{
    return static_cast<sqlite3_vfs*>(vfs->pAppData);
}

int fileClose(sqlite3_file* file)
{
    return realOf(file)->pMethods->xClose(realOf(file));
}

int fileWrite(sqlite3_file* file, const void* bytes, int size, sqlite3_int64 offset)
{
    return strikes() ? SQLITE_IOERR_WRITE
                     : realOf(file)->pMethods->xWrite(realOf(file), bytes, size, offset);
}

int fileTruncate(sqlite3_file* file, sqlite3_int64 size)
{
    return strikes() ? SQLITE_IOERR_TRUNCATE
                     : realOf(file)->pMethods->xTruncate(realOf(file), size);
}

int fileSync(sqlite3_file* file, int flags)
{
    return strikes() ? SQLITE_IOERR_FSYNC : realOf(file)->pMethods->xSync(realOf(file), flags);
}

// Hands a call on to the real file.
template <auto method, class... Arguments>
auto passOn(sqlite3_file* file, Arguments... arguments)
{
    return (realOf(file)->pMethods->*method)(realOf(file), arguments...);
}

const sqlite3_io_methods kMethods = {
    3,
    fileClose,
    passOn<&sqlite3_io_methods::xRead, void*, int, sqlite3_int64>,
    fileWrite,
    fileTruncate,
    fileSync,
    passOn<&sqlite3_io_methods::xFileSize, sqlite3_int64*>,
    passOn<&sqlite3_io_methods::xLock, int>,
    passOn<&sqlite3_io_methods::xUnlock, int>,
    passOn<&sqlite3_io_methods::xCheckReservedLock, int*>,
    passOn<&sqlite3_io_methods::xFileControl, int, void*>,
    passOn<&sqlite3_io_methods::xSectorSize>,
    passOn<&sqlite3_io_methods::xDeviceCharacteristics>,
    passOn<&sqlite3_io_methods::xShmMap, int, int, int, void volatile**>,
    passOn<&sqlite3_io_methods::xShmLock, int, int, int>,
    passOn<&sqlite3_io_methods::xShmBarrier>,
    passOn<&sqlite3_io_methods::xShmUnmap, int>,
    passOn<&sqlite3_io_methods::xFetch, sqlite3_int64, int, void**>,
    passOn<&sqlite3_io_methods::xUnfetch, sqlite3_int64, void*>,
};

int vfsOpen(sqlite3_vfs* vfs, const char* name, sqlite3_file* file, int flags, int* outFlags)
{
    file->pMethods = nullptr;
    if (strikes()) {
        return SQLITE_CANTOPEN;
    }
    const int code = realVfs(vfs)->xOpen(realVfs(vfs), name, realOf(file), flags, outFlags);
    if (code == SQLITE_OK) {
        file->pMethods = &kMethods;
    }
    return code;
}

sqlite3_vfs theVfs = {};

} // namespace

FaultVfs::FaultVfs()
{
    sqlite3_vfs* real = sqlite3_vfs_find(nullptr);
    theVfs = *real;
    theVfs.zName = "plumule-fault";
    theVfs.pAppData = real;
    theVfs.pNext = nullptr;
    theVfs.szOsFile = static_cast<int>(sizeof(FaultFile)) + real->szOsFile;
    theVfs.xOpen = vfsOpen;
    theVfs.xDelete = [](sqlite3_vfs* vfs, const char* name, int sync) {
        return realVfs(vfs)->xDelete(realVfs(vfs), name, sync);
    };
    theVfs.xAccess = [](sqlite3_vfs* vfs, const char* name, int flags, int* out) {
        return realVfs(vfs)->xAccess(realVfs(vfs), name, flags, out);
    };
    theVfs.xFullPathname = [](sqlite3_vfs* vfs, const char* name, int size, char* out) {
        return realVfs(vfs)->xFullPathname(realVfs(vfs), name, size, out);
    };
    sqlite3_vfs_register(&theVfs, 1);
    disarm();
}

FaultVfs::~FaultVfs()
{
    disarm();
    sqlite3_vfs_unregister(&theVfs);
}

void FaultVfs::arm(int operation, Lasting lasting)
{
    theFault = {operation, lasting == Lasting::ForGood, false};
}

void FaultVfs::disarm()
{
    theFault = {};
}

bool FaultVfs::hasFailed() const
{
    return theFault.failed;
}

} // namespace plumule
