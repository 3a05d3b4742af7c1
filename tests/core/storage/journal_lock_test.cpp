#include "core/storage/journal_lock.h"

#include "tests/core/storage/scratch.h"

#include <fcntl.h>
#include <fstream>
#include <unistd.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;

// Another program that tries for the lock, as the system sees it: an open file description of its
// own, on the byte that a journal is locked by.
class OtherProgram
{
public:
    explicit OtherProgram(const fs::path& file, off_t byte = off_t{0x504C4D4C} << 32)
        : m_handle(::open(file.c_str(), O_RDWR | O_CLOEXEC))
    {
        struct flock lock = {};
        lock.l_type = F_WRLCK;
        lock.l_whence = SEEK_SET;
        lock.l_start = byte;
        lock.l_len = 1;
        m_isHeld = m_handle >= 0 && ::fcntl(m_handle, F_OFD_SETLK, &lock) == 0;
    }
    ~OtherProgram() { ::close(m_handle); }
    OtherProgram(const OtherProgram&) = delete;
    OtherProgram& operator=(const OtherProgram&) = delete;

    [[nodiscard]] bool isHeld() const { return m_isHeld; }

private:
    int m_handle;
    bool m_isHeld = false;
};

class JournalLockTest : public testing::Test
{
protected:
    JournalLockTest() { std::ofstream(file()) << "a journal"; }

    [[nodiscard]] fs::path file() const { return folder / "room.plumule"; }

    ScratchFolder folder;
};

TEST_F(JournalLockTest, HasOneHolderAtATime)
{
    EXPECT_FALSE(isLocked(file()));
    {
        const JournalLock first(file());
        EXPECT_TRUE(first.isHeld());
        EXPECT_TRUE(isLocked(file()));
        const JournalLock second(file());
        EXPECT_FALSE(second.isHeld());
        EXPECT_EQ(second.file(), first.file());
    }
    EXPECT_FALSE(isLocked(file()));
    EXPECT_TRUE(JournalLock(file()).isHeld()) << "it is free again";
}

TEST_F(JournalLockTest, OneThatWasRefusedTakesNothingAway)
{
    const JournalLock holder(file());
    {
        const JournalLock refused(file());
        ASSERT_FALSE(refused.isHeld());
    }
    EXPECT_TRUE(isLocked(file()));
    EXPECT_FALSE(JournalLock(file()).isHeld());
    EXPECT_FALSE(OtherProgram(file()).isHeld());
}

TEST_F(JournalLockTest, IsTheFilesWhateverNameLeadsToIt)
{
    fs::create_symlink(file(), folder / "soft");
    fs::create_hard_link(file(), folder / "hard");
    const JournalLock holder(folder / "soft");
    ASSERT_TRUE(holder.isHeld());
    EXPECT_TRUE(isLocked(folder / "hard"));
    EXPECT_FALSE(JournalLock(folder / "hard").isHeld());
    fs::rename(file(), folder / "moved");
    EXPECT_TRUE(isLocked(folder / "moved"));
    std::ofstream(file()) << "another journal";
    EXPECT_FALSE(isLocked(file())) << "a new file of the old name is another one";
}

TEST_F(JournalLockTest, ReachesBeyondThisProgramBothWays)
{
    {
        const OtherProgram other(file());
        ASSERT_TRUE(other.isHeld());
        EXPECT_TRUE(isLocked(file()));
        EXPECT_FALSE(JournalLock(file()).isHeld());
    }
    EXPECT_FALSE(isLocked(file())) << "the program that held it has ended";
    const JournalLock holder(file());
    ASSERT_TRUE(holder.isHeld());
    EXPECT_FALSE(OtherProgram(file()).isHeld());
}

// A lock on any other byte, such as SQLite's pending byte (sqlite.org/fileformat2.html), is none of
// ours.
TEST_F(JournalLockTest, LeavesSQLitesBytesAlone)
{
    const OtherProgram sqlite(file(), 0x40000000);
    ASSERT_TRUE(sqlite.isHeld());
    EXPECT_FALSE(isLocked(file()));
    EXPECT_TRUE(JournalLock(file()).isHeld());
}

TEST_F(JournalLockTest, StaysWhileConnectionsComeAndGo)
{
    EXPECT_FALSE(isOpenHere(file()));
    const JournalLock holder(file());
    {
        const OpenConnection one(file());
        const OpenConnection other(file());
        EXPECT_TRUE(isOpenHere(file()));
        EXPECT_EQ(one.file(), other.file());
    }
    EXPECT_FALSE(isOpenHere(file()));
    EXPECT_FALSE(OtherProgram(file()).isHeld()) << "closing a connection dropped the lock";
}

TEST_F(JournalLockTest, IsNotHeldWhereThereIsNoFile)
{
    const JournalLock none(folder / "none");
    EXPECT_FALSE(none.isHeld());
    EXPECT_FALSE(none.file());
    EXPECT_FALSE(isLocked(folder / "none"));
    EXPECT_FALSE(isOpenHere(folder / "none"));
    EXPECT_FALSE(OpenConnection("").file()) << "in memory";
    EXPECT_FALSE(fs::exists(folder / "none")) << "nothing is left behind";
}

} // namespace
} // namespace plumule
