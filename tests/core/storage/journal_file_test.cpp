#include "core/storage/schema_reason.h"
#include "tests/core/storage/scratch.h"

#include <fstream>
#include <gmock/gmock.h>
#include <sqlite3.h>
#include <sys/wait.h>
#include <unistd.h>

namespace plumule {
namespace {

using testing::ElementsAre;
namespace fs = std::filesystem;

std::string bytesOf(const fs::path& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

void write(const fs::path& path, const std::string& bytes)
{
    std::ofstream(path, std::ios::binary) << bytes;
}

// Runs SQL with nothing of the journal's protection, as another program would.
void runOutside(const fs::path& path, const char* sql)
{
    sqlite3* handle = nullptr;
    ASSERT_EQ(sqlite3_open(path.c_str(), &handle), SQLITE_OK);
    char* message = nullptr;
    EXPECT_EQ(sqlite3_exec(handle, sql, nullptr, nullptr, &message), SQLITE_OK) << message;
    sqlite3_close(handle);
}

class JournalFileTest : public testing::Test
{
protected:
    void makeJournal()
    {
        const JournalFile journal = newJournal(path);
        addRack(*journal.database, "A");
    }

    // Expects the refusal, for writing and for reading, and not one byte of the file changed.
    void expectRefused(ErrorKind kind)
    {
        const std::string before = bytesOf(path);
        for (const Access access : {Access::ReadWrite, Access::ReadOnly}) {
            const auto opened = openJournalFile(path, access);
            ASSERT_FALSE(opened);
            EXPECT_EQ(opened.error().kind, kind);
        }
        EXPECT_EQ(bytesOf(path), before);
    }

    ScratchFolder folder;
    fs::path path = folder / "room.plumule";
};

TEST_F(JournalFileTest, IsOneWholeFileAfterACleanClose)
{
    makeJournal();
    std::vector<std::string> files;
    for (const auto& entry : fs::directory_iterator(folder.path())) {
        files.push_back(entry.path().filename());
    }
    EXPECT_THAT(files, ElementsAre("room.plumule"));
    const JournalFile journal = openedJournal(path);
    EXPECT_FALSE(journal.readOnlyBecause);
    EXPECT_THAT(rackNames(*journal.database), ElementsAre("A"));
}

TEST_F(JournalFileTest, RefusesToMakeAJournalWhereAFileIs)
{
    write(path, "a shopping list");
    const auto created = createJournalFile(path);
    ASSERT_FALSE(created);
    EXPECT_EQ(created.error().kind, ErrorKind::Duplicate);
    EXPECT_EQ(bytesOf(path), "a shopping list");
}

TEST_F(JournalFileTest, RefusesToMakeAJournalWhereNoFolderIs)
{
    const auto created = createJournalFile(folder / "nowhere/room.plumule");
    ASSERT_FALSE(created);
    EXPECT_EQ(created.error().kind, ErrorKind::NotWritable);
}

TEST_F(JournalFileTest, MakesNoJournalWhenThereIsNoneToOpen)
{
    const auto opened = openJournalFile(path);
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().kind, ErrorKind::NotFound);
    EXPECT_FALSE(fs::exists(path));
}

TEST_F(JournalFileTest, RefusesAFolder)
{
    fs::create_directory(path);
    const auto opened = openJournalFile(path);
    ASSERT_FALSE(opened);
    EXPECT_EQ(opened.error().kind, ErrorKind::Unreadable);
}

TEST_F(JournalFileTest, RefusesWhatIsNoJournal)
{
    for (const std::string& bytes :
         {std::string(), std::string("a shopping list"), std::string(4096, 'x')}) {
        write(path, bytes);
        expectRefused(ErrorKind::NotAJournal);
    }
}

TEST_F(JournalFileTest, RefusesAnotherProgramsDatabase)
{
    runOutside(path, "CREATE TABLE tray (id INTEGER PRIMARY KEY)");
    expectRefused(ErrorKind::NotAJournal);
}

TEST_F(JournalFileTest, RefusesAJournalOfANewerPlumule)
{
    makeJournal();
    runOutside(path, "PRAGMA user_version = 999");
    expectRefused(ErrorKind::NewerVersion);
}

TEST_F(JournalFileTest, RefusesAJournalThatLostItsTables)
{
    makeJournal();
    runOutside(path, "DROP TABLE history");
    expectRefused(ErrorKind::Damaged);
    EXPECT_TRUE(openJournalFile(path).error().is(SchemaReason::Missing));
}

TEST_F(JournalFileTest, RefusesAJournalWhoseFirstPageIsDamaged)
{
    makeJournal();
    std::string bytes = bytesOf(path);
    std::fill(bytes.begin() + 16, bytes.begin() + 2000, '\xff');
    write(path, bytes);
    expectRefused(ErrorKind::Damaged);
}

TEST_F(JournalFileTest, RefusesAJournalThatWasCutShort)
{
    makeJournal();
    write(path, bytesOf(path).substr(0, 4096));
    expectRefused(ErrorKind::Damaged);
}

TEST_F(JournalFileTest, OpensOnlyToReadWhileItIsOpenElsewhere)
{
    makeJournal();
    JournalFile first = openedJournal(path);
    {
        const JournalFile second = openedJournal(path);
        ASSERT_TRUE(second.readOnlyBecause);
        EXPECT_EQ(second.readOnlyBecause->kind, ErrorKind::AlreadyOpen);
        EXPECT_EQ(second.database->access(), Access::ReadOnly);
        addRack(*first.database, "B");
        EXPECT_THAT(rackNames(*second.database), ElementsAre("A", "B"));
        EXPECT_EQ(failureOf([&] { addRack(*second.database, "C"); }), ErrorKind::NotWritable);
    }
    // The second one's end takes nothing from the first.
    EXPECT_TRUE(openedJournal(path).readOnlyBecause);
    first = JournalFile();
    EXPECT_FALSE(openedJournal(path).readOnlyBecause);
}

constexpr const char* kJournalOfOtherProcess = "PLUMULE_JOURNAL_OF_OTHER_PROCESS";

// Run by mayWriteElsewhere() in a process of its own.
TEST(OtherProcess, MayWriteTheJournal)
{
    const char* path = std::getenv(kJournalOfOtherProcess);
    if (path == nullptr) {
        GTEST_SKIP() << "is run by another test";
    }
    const auto opened = openJournalFile(path);
    std::exit(opened && !opened->readOnlyBecause ? 0 : 1);
}

// Whether another process may write the journal by that name.
bool mayWriteElsewhere(const fs::path& path)
{
    const pid_t child = ::fork();
    if (child == 0) {
        ::setenv(kJournalOfOtherProcess, path.c_str(), 1);
        ::execl("/proc/self/exe", "other", "--gtest_filter=OtherProcess.*", nullptr);
        ::_exit(2);
    }
    int status = -1;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

TEST_F(JournalFileTest, IsOneJournalUnderTwoNames)
{
    makeJournal();
    fs::create_symlink("room.plumule", folder / "link.plumule");
    fs::create_hard_link(path, folder / "hard.plumule");
    {
        const JournalFile first = openedJournal(path);
        const JournalFile second = openedJournal(folder / "link.plumule");
        ASSERT_TRUE(second.readOnlyBecause);
        EXPECT_EQ(second.readOnlyBecause->kind, ErrorKind::AlreadyOpen);
        addRack(*first.database, "B");
        EXPECT_THAT(rackNames(*second.database), ElementsAre("A", "B"));
        // Its log stands beside the other name, by which it is read.
        const JournalFile third = openedJournal(folder / "hard.plumule");
        ASSERT_TRUE(third.readOnlyBecause);
        EXPECT_EQ(third.readOnlyBecause->kind, ErrorKind::AlreadyOpen);
        EXPECT_EQ(third.path, folder / "hard.plumule");
        EXPECT_THAT(rackNames(*third.database), ElementsAre("A", "B"));
    }
    const JournalFile later = openedJournal(folder / "hard.plumule");
    EXPECT_FALSE(later.readOnlyBecause);
    EXPECT_THAT(rackNames(*later.database), ElementsAre("A", "B"));
    const auto byLink = openJournalFile(folder / "link.plumule", Access::ReadOnly);
    ASSERT_FALSE(byLink);
    EXPECT_EQ(byLink.error().kind, ErrorKind::AlreadyOpen);
}

TEST_F(JournalFileTest, IsHeldAgainstOtherProcessesUntilItIsClosed)
{
    makeJournal();
    fs::create_symlink("room.plumule", folder / "link.plumule");
    fs::create_hard_link(path, folder / "hard.plumule");
    {
        const JournalFile journal = openedJournal(path);
        EXPECT_FALSE(mayWriteElsewhere(path));
        EXPECT_FALSE(mayWriteElsewhere(folder / "link.plumule"));
        EXPECT_FALSE(mayWriteElsewhere(folder / "hard.plumule"));
        // What is opened and closed here meanwhile takes no lock away.
        openedJournal(path, Access::ReadOnly);
        openedJournal(path);
        EXPECT_FALSE(mayWriteElsewhere(path));
    }
    EXPECT_TRUE(mayWriteElsewhere(path));
}

TEST_F(JournalFileTest, LeavesNoLockFileBehindNorTripsOverOne)
{
    write(path.string() + ".lock", "");
    makeJournal();
    EXPECT_FALSE(openedJournal(path).readOnlyBecause);
}

TEST_F(JournalFileTest, OpensOnlyToReadWhenAskedTo)
{
    makeJournal();
    const JournalFile journal = openedJournal(path, Access::ReadOnly);
    EXPECT_FALSE(journal.readOnlyBecause);
    EXPECT_EQ(failureOf([&] { addRack(*journal.database, "B"); }), ErrorKind::NotWritable);
}

class UnwritableFolderTest : public JournalFileTest
{
protected:
    void forbidWriting() { fs::permissions(folder.path(), fs::perms(0555)); }
};

TEST_F(UnwritableFolderTest, OpensOnlyToReadAndSaysWhy)
{
    makeJournal();
    forbidWriting();
    EXPECT_TRUE(holdsForAnotherUser([&] {
        const auto journal = openJournalFile(path);
        return journal && journal->readOnlyBecause &&
               journal->readOnlyBecause->kind == ErrorKind::NotWritable &&
               journal->database->access() == Access::ReadImmutable &&
               rackNames(*journal->database) == std::vector<std::string>{"A"};
    }));
}

TEST_F(UnwritableFolderTest, TakesNoNewJournal)
{
    forbidWriting();
    EXPECT_TRUE(holdsForAnotherUser([&] {
        const auto created = createJournalFile(path);
        return !created && created.error().kind == ErrorKind::NotWritable;
    }));
    EXPECT_FALSE(fs::exists(path));
}

TEST_F(UnwritableFolderTest, IsNotWritableForAFileOfAnotherUserEither)
{
    makeJournal();
    fs::permissions(path, fs::perms(0444));
    fs::permissions(folder.path(), fs::perms(0777));
    if (::geteuid() != 0) {
        fs::permissions(folder.path(), fs::perms(0755));
    }
    EXPECT_TRUE(holdsForAnotherUser([&] {
        const auto journal = openJournalFile(path);
        return journal && journal->readOnlyBecause &&
               journal->readOnlyBecause->kind == ErrorKind::NotWritable;
    }));
}

TEST_F(UnwritableFolderTest, AFileThatMayNotBeReadIsUnreadable)
{
    makeJournal();
    fs::permissions(path, fs::perms(0));
    EXPECT_TRUE(holdsForAnotherUser([&] {
        const auto journal = openJournalFile(path);
        return !journal && journal.error().kind == ErrorKind::Unreadable;
    }));
}

} // namespace
} // namespace plumule
