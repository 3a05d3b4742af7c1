#include "core/base/kept_files.h"

#include "core/base/file_key.h"
#include "tests/core/storage/scratch.h"

#include <fstream>

namespace plumule {
namespace {

namespace fs = std::filesystem;

void touch(const fs::path& file)
{
    std::ofstream(file) << "x";
}

TEST(KeptFiles, AreKnownByEveryNameThatLeadsToThem)
{
    const ScratchFolder folder;
    const fs::path file = folder / "room.plumule";
    touch(file);
    fs::create_symlink(file, folder / "link");
    fs::create_hard_link(file, folder / "second name");
    fs::create_directory(folder / "below");
    fs::create_directory_symlink(folder.path(), folder / "below" / "up");
    {
        const KeptFiles kept({file}, {});
        EXPECT_TRUE(isKept(file));
        EXPECT_TRUE(isKept(folder / "link"));
        EXPECT_TRUE(isKept(folder / "second name"));
        EXPECT_TRUE(isKept(folder / "below" / ".." / "room.plumule"));
        EXPECT_TRUE(isKept(folder / "below" / "up" / "room.plumule"));
        EXPECT_FALSE(isKept(folder / "room.plumule.backup"));
        EXPECT_FALSE(isKept(folder / "below" / "room.plumule"));
    }
    EXPECT_FALSE(isKept(file)) << "only as long as the journal is open";
}

TEST(KeptFiles, NeedNotBeThereYet)
{
    const ScratchFolder folder;
    const fs::path log = folder / "room.plumule-wal";
    fs::create_symlink(log, folder / "link");
    const KeptFiles kept({log}, {});
    EXPECT_TRUE(isKept(log));
    EXPECT_TRUE(isKept(folder / "link")) << "a link to what is yet to be made";
}

TEST(KeptFiles, AFolderIsKeptWithAllThatIsOrWouldBeInIt)
{
    const ScratchFolder folder;
    const fs::path photos = folder / "room photos";
    fs::create_directories(photos / "2026");
    fs::create_directory_symlink(photos, folder / "pictures");
    const KeptFiles kept({}, photos);
    EXPECT_TRUE(isKept(photos / "new.png"));
    EXPECT_TRUE(isKept(photos / "2026" / "new.png"));
    EXPECT_TRUE(isKept(folder / "pictures" / "new.png"));
    EXPECT_FALSE(isKept(folder / "new.png"));
    EXPECT_FALSE(isKept(folder / "room photos.png"));
}

TEST(KeptFiles, WhatTwoKeepIsFreeWhenBothHaveLetGo)
{
    const ScratchFolder folder;
    const fs::path file = folder / "room.plumule";
    touch(file);
    auto first = std::make_unique<KeptFiles>(std::vector{file}, fs::path());
    const auto second = std::make_unique<KeptFiles>(std::vector{file}, fs::path());
    first.reset();
    EXPECT_TRUE(isKept(file));
}

TEST(FileKey, TellsFilesNotNames)
{
    const ScratchFolder folder;
    touch(folder / "a");
    touch(folder / "b");
    fs::create_hard_link(folder / "a", folder / "c");
    EXPECT_EQ(fileKeyOf(folder / "a"), fileKeyOf(folder / "c"));
    EXPECT_NE(fileKeyOf(folder / "a"), fileKeyOf(folder / "b"));
    EXPECT_FALSE(fileKeyOf(folder / "none"));
}

TEST(BehindLinks, EndsAtALinkThatLeadsToItself)
{
    const ScratchFolder folder;
    fs::create_symlink(folder / "b", folder / "a");
    fs::create_symlink(folder / "a", folder / "b");
    EXPECT_FALSE(behindLinks(folder / "a").empty());
}

} // namespace
} // namespace plumule
