#include "core/storage/folder_kind.h"

#include "core/base/file_key.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <sys/vfs.h>

namespace plumule {
namespace {

// From the statfs(2) manual page and linux/magic.h.
constexpr std::array<std::uint32_t, 12> kNetwork = {
    0x00006969, // NFS
    0x0000517B, // SMB
    0xFF534D42, // CIFS
    0xFE534D42, // SMB 2 and 3
    0x0000564C, // NCP
    0x5346414F, // AFS of OpenAFS
    0x6B414653, // AFS of the kernel
    0x73757245, // Coda
    0x00C36400, // Ceph
    0x01021997, // 9P
    0x01161970, // GFS2
    0x7461636F, // OCFS2
};
constexpr std::array<std::uint32_t, 2> kBridged = {
    0x65735546, // FUSE
    0x786F4256, // a folder shared with a guest machine
};

} // namespace

FolderKind folderKindOf(const std::filesystem::path& file)
{
    struct statfs found = {};
    if (::statfs(behindLinks(file).parent_path().c_str(), &found) != 0) {
        return FolderKind::Local;
    }
    const auto number = static_cast<std::uint32_t>(found.f_type);
    if (std::find(kNetwork.begin(), kNetwork.end(), number) != kNetwork.end()) {
        return FolderKind::Network;
    }
    return std::find(kBridged.begin(), kBridged.end(), number) != kBridged.end()
               ? FolderKind::Bridged
               : FolderKind::Local;
}

} // namespace plumule
