#include "core/storage/folder_kind.h"

#include "tests/core/storage/scratch.h"
#include "tests/core/storage/told_file_system.h"

namespace plumule {
namespace {

// Numbers from the statfs(2) manual page.
TEST(FolderKind, IsKnownByTheFileSystem)
{
    const ScratchFolder folder;
    const auto file = folder / "not there yet.plumule";
    EXPECT_EQ(folderKindOf(file), FolderKind::Local);
    for (const std::uint32_t number : {0x6969U, 0x517BU, 0xFF534D42U, 0x01021997U}) {
        const ToldFileSystem told(number);
        EXPECT_EQ(folderKindOf(file), FolderKind::Network);
    }
    const ToldFileSystem fuse(0x65735546);
    EXPECT_EQ(folderKindOf(file), FolderKind::Bridged);
    const ToldFileSystem ext4(0xEF53);
    EXPECT_EQ(folderKindOf(file), FolderKind::Local);
}

TEST(FolderKind, IsLocalWhereTheSystemSaysNothing)
{
    EXPECT_EQ(folderKindOf("/nowhere at all/room.plumule"), FolderKind::Local);
}

} // namespace
} // namespace plumule
