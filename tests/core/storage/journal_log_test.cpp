#include "core/storage/journal_log.h"

#include "tests/core/storage/scratch.h"

#include <fstream>

namespace plumule {
namespace {

namespace fs = std::filesystem;

class JournalLogTest : public testing::Test
{
protected:
    static void put(const fs::path& path, const std::string& text) { std::ofstream(path) << text; }

    ScratchFolder folder;
    fs::path path = folder / "room.plumule";
};

TEST_F(JournalLogTest, TellsTheFormatByTheFirstBytes)
{
    EXPECT_EQ(formatOf(path), FileFormat::NotSqlite) << "it is not there";
    put(path, "SQLite format 3");
    EXPECT_EQ(formatOf(path), FileFormat::NotSqlite) << "too short";
    put(path, std::string("SQLite format 3\0\x10\0\1\1", 20));
    EXPECT_EQ(formatOf(path), FileFormat::RollbackJournal);
    put(path, std::string("SQLite format 3\0\x10\0\2\2", 20));
    EXPECT_EQ(formatOf(path), FileFormat::WriteAheadLog);
}

TEST_F(JournalLogTest, AnEmptyLogHoldsNothing)
{
    put(path, "file");
    for (const char* ending : {"-wal", "-journal"}) {
        EXPECT_FALSE(hasLogBeside(path));
        put(path.string() + ending, "");
        EXPECT_FALSE(hasLogBeside(path));
        put(path.string() + ending, "work");
        EXPECT_TRUE(hasLogBeside(path));
        fs::remove(path.string() + ending);
    }
}

TEST_F(JournalLogTest, StandsBesideOneNameOfAFile)
{
    put(path, "file");
    put(folder / "another.plumule", "another file");
    put(folder / "another.plumule-wal", "another's work");
    fs::create_hard_link(path, folder / "hard.plumule");
    fs::create_symlink(path, folder / "link.plumule");
    EXPECT_EQ(nameWithLog(folder / "link.plumule"), behindLinks(path));
    put(folder / "hard.plumule-wal", "work");
    EXPECT_EQ(nameWithLog(path).filename(), "hard.plumule");
    EXPECT_EQ(nameWithLog(folder / "link.plumule").filename(), "hard.plumule");
}

TEST_F(JournalLogTest, APrivateCopyIsGoneWithItsFolder)
{
    put(path, "file");
    put(path.string() + "-wal", "work");
    put(path.string() + "-shm", "index");
    fs::path copied;
    {
        const PrivateCopy copy(path);
        copied = copy.file();
        EXPECT_TRUE(hasLogBeside(copied));
        EXPECT_FALSE(fs::exists(copied.string() + "-shm")) << "it is made anew";
    }
    EXPECT_FALSE(fs::exists(copied.parent_path()));
    EXPECT_THROW(PrivateCopy(folder / "none"), StorageFailure);
}

} // namespace
} // namespace plumule
