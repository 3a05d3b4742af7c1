#pragma once

#include <cstdint>

namespace plumule {

// While it lives the system says of every folder that its file system is of that number
// (statfs(2)); the folder itself stays as it is. One at a time.
class ToldFileSystem
{
public:
    explicit ToldFileSystem(std::uint32_t number);
    ~ToldFileSystem();
    ToldFileSystem(const ToldFileSystem&) = delete;
    ToldFileSystem& operator=(const ToldFileSystem&) = delete;
};

} // namespace plumule
