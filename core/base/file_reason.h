#pragma once

#include <string_view>

namespace plumule {

// Why a file was not written or read. Its value is the file.
enum class FileReason
{
    NotWritten,
    NotRead,
    Kept, // it is a journal that is open, or its like
};

constexpr std::string_view familyOf(FileReason)
{
    return "file";
}

} // namespace plumule
