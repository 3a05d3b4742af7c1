#include "core/base/file_key.h"

#include <fstream>
#include <gtest/gtest.h>
#include <random>

namespace plumule {
namespace {

namespace fs = std::filesystem;

class FileKeyTest : public testing::Test
{
protected:
    FileKeyTest()
        : folder(fs::canonical(fs::temp_directory_path()) /
                 ("plumule-key-" + std::to_string(std::random_device{}())))
    {
        fs::create_directories(folder / "deep");
        std::ofstream(folder / "real") << "x";
        std::ofstream(folder / "other") << "x";
    }
    ~FileKeyTest() override
    {
        std::error_code ignored;
        fs::remove_all(folder, ignored);
    }

    fs::path folder;
};

TEST_F(FileKeyTest, IsOneUnderEveryName)
{
    fs::create_symlink(folder / "real", folder / "soft");
    fs::create_hard_link(folder / "real", folder / "hard");
    const FileKey key = fileKeyOf(folder / "real").value();
    EXPECT_EQ(fileKeyOf(folder / "soft"), key);
    EXPECT_EQ(fileKeyOf(folder / "hard"), key);
    EXPECT_EQ(fileKeyOf(folder / "deep" / ".." / "real"), key);
    EXPECT_NE(fileKeyOf(folder / "other"), key) << "the same content is another file";
    fs::rename(folder / "real", folder / "moved");
    EXPECT_EQ(fileKeyOf(folder / "moved"), key);
}

TEST_F(FileKeyTest, IsNoneWhereThereIsNoFile)
{
    EXPECT_FALSE(fileKeyOf(folder / "none"));
    EXPECT_FALSE(fileKeyOf(""));
    fs::create_symlink(folder / "none", folder / "dangling");
    EXPECT_FALSE(fileKeyOf(folder / "dangling"));
    EXPECT_FALSE(fileKeyOf(folder / "real" / "below a file"));
    EXPECT_TRUE(fileKeyOf(folder)) << "a folder is a file too";
}

TEST_F(FileKeyTest, FollowsLinksToAFileThatIsThere)
{
    fs::create_symlink(folder / "real", folder / "first");
    fs::create_symlink("first", folder / "second");
    fs::create_directory_symlink(folder / "deep", folder / "way");
    EXPECT_EQ(behindLinks(folder / "second"), folder / "real");
    EXPECT_EQ(behindLinks(folder / "way" / ".." / "real"), folder / "real");
    EXPECT_EQ(behindLinks(folder / "real"), folder / "real");
}

TEST_F(FileKeyTest, FollowsLinksToAFileThatIsYetToBeMade)
{
    fs::create_symlink(folder / "deep" / "new", folder / "soft");
    EXPECT_EQ(behindLinks(folder / "soft"), folder / "deep" / "new");
    fs::create_symlink("deep/newer", folder / "relative");
    EXPECT_EQ(behindLinks(folder / "relative"), folder / "deep" / "newer");
    fs::create_directory_symlink(folder / "deep", folder / "way");
    EXPECT_EQ(behindLinks(folder / "way" / "none"), folder / "deep" / "none");
}

TEST_F(FileKeyTest, ComesToAnEndInACircle)
{
    fs::create_symlink("round", folder / "and");
    fs::create_symlink("and", folder / "round");
    EXPECT_EQ(behindLinks(folder / "and").parent_path(), folder);
    EXPECT_FALSE(fileKeyOf(folder / "and"));
}

} // namespace
} // namespace plumule
