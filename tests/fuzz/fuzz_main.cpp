#include "tests/fuzz/fuzz_entries.h"

#include <cstddef>
#include <cstdint>

// One program a target: the build names its entry.
#ifndef PLUMULE_FUZZ_ENTRY
#define PLUMULE_FUZZ_ENTRY tryTable
#endif

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    plumule::fuzz::PLUMULE_FUZZ_ENTRY({reinterpret_cast<const char*>(data), size});
    return 0;
}
