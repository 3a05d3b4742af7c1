#include "core/storage/checksum.h"

#include "core/storage/failure.h"

#include <boost/crc.hpp>
#include <fstream>
#include <vector>

namespace plumule {
namespace {

using Crc64 = boost::crc_optimal<64, 0x42F0E1EBA9EA3693ULL, 0, 0, false, false>;

} // namespace

std::int64_t checksumOf(std::string_view bytes)
{
    Crc64 crc;
    crc.process_bytes(bytes.data(), bytes.size());
    return static_cast<std::int64_t>(crc.checksum());
}

std::int64_t checksumOfFile(const std::filesystem::path& path)
{
    std::ifstream file(path, std::ios::binary);
    if (!file) {
        throw StorageFailure(ErrorKind::Unreadable, StorageReason::FileUnreadable, path.string());
    }
    Crc64 crc;
    std::vector<char> block(std::size_t{1} << 16);
    while (file.read(block.data(), static_cast<std::streamsize>(block.size())), file.gcount() > 0) {
        crc.process_bytes(block.data(), static_cast<std::size_t>(file.gcount()));
    }
    return static_cast<std::int64_t>(crc.checksum());
}

} // namespace plumule
