#include "tests/core/storage/told_file_system.h"

#include <dlfcn.h>
#include <sys/vfs.h>

namespace plumule {
namespace {

std::uint32_t theNumber = 0; // 0: nothing is told

} // namespace

ToldFileSystem::ToldFileSystem(std::uint32_t number)
{
    theNumber = number;
}

ToldFileSystem::~ToldFileSystem()
{
    theNumber = 0;
}

} // namespace plumule

// In place of the C library's.
extern "C" int statfs(const char* path, struct statfs* found) noexcept
{
    using Function = int (*)(const char*, struct statfs*);
    static const auto real = reinterpret_cast<Function>(::dlsym(RTLD_NEXT, "statfs"));
    const int code = real(path, found);
    if (code == 0 && plumule::theNumber != 0) {
        found->f_type = plumule::theNumber;
    }
    return code;
}
