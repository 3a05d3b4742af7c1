#include <cstdlib>
#include <gtest/gtest.h>
#include <unistd.h>

// In memory, where there is a folder for that: what is tried is not how long a disk takes.
int main(int argc, char** argv)
{
    constexpr const char* kInMemory = "/dev/shm";
    if (::access(kInMemory, W_OK) == 0) {
        ::setenv("TMPDIR", kInMemory, 0);
    }
    ::testing::InitGoogleTest(&argc, argv);
    return RUN_ALL_TESTS();
}
