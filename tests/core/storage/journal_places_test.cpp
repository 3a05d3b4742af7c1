#include "core/storage/journal_log.h"
#include "core/storage/storage_reason.h"
#include "tests/core/storage/scratch.h"
#include "tests/core/storage/told_file_system.h"

#include <csignal>
#include <gmock/gmock.h>
#include <sqlite3.h>
#include <sys/resource.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::UnorderedElementsAre;
namespace fs = std::filesystem;

constexpr std::uint32_t kNfs = 0x6969; // statfs(2)
constexpr std::uint32_t kFuse = 0x65735546;

std::string textOf(Database& database, const char* pragma)
{
    Statement statement = database.prepare(pragma);
    return statement.step() ? statement.get<std::string>(0) : "";
}

// Where a journal lies, and what stands beside it.
class JournalPlacesTest : public testing::Test
{
protected:
    std::vector<std::string> files(const fs::path& where) const
    {
        std::vector<std::string> names;
        for (const auto& entry : fs::directory_iterator(where)) {
            names.push_back(entry.path().filename());
        }
        return names;
    }
    std::vector<std::string> files() const { return files(folder.path()); }

    // "A" stands in the file; "B" was acknowledged, and stands in the log of a program that was
    // killed.
    void makeJournalWithLog(const fs::path& name)
    {
        EXPECT_TRUE(doneByAProgramThatEnds([&] {
            const JournalFile journal = newJournal(name);
            addRack(*journal.database, "A");
            return true;
        }));
        addByAKilledProgram(name, "B");
        ASSERT_TRUE(hasLogBeside(name));
    }
    static void addByAKilledProgram(const fs::path& name, const std::string& rack)
    {
        EXPECT_TRUE(doneByAProgramThatEnds([&] {
            auto* journal = new JournalFile(openedJournal(name)); // never closed
            addRack(*journal->database, rack);
            return true;
        }));
    }

    ScratchFolder folder;
    fs::path path = folder / "room.plumule";
};

// Wherever it lies a second hand writes under the same lock, and the first one sees it.
TEST_F(JournalPlacesTest, AnotherHandWritesBesideTheFirst)
{
    for (const std::uint32_t number : {0U, kNfs}) {
        const std::optional<ToldFileSystem> told =
            number == 0 ? std::optional<ToldFileSystem>()
                        : std::optional<ToldFileSystem>(std::in_place, number);
        const fs::path name = folder / ("room" + std::to_string(number) + ".plumule");
        auto first = std::make_unique<JournalFile>(newJournal(name));
        addRack(*first->database, "A");
        auto beside = openBeside(*first);
        ASSERT_TRUE(beside) << number;
        addRack(*beside->database, "B");
        addRack(*first->database, "C");
        EXPECT_THAT(rackNames(*first->database), ElementsAre("A", "B", "C")) << number;
        EXPECT_THAT(rackNames(*beside->database), ElementsAre("A", "B", "C")) << number;
        first.reset();
        EXPECT_TRUE(isLocked(name)) << "until both are closed";
        addRack(*beside->database, "D");
        beside = fail(ErrorKind::NotFound, StorageReason::FileMissing);
        EXPECT_FALSE(isLocked(name));
        EXPECT_THAT(rackNames(*openedJournal(name, Access::ReadOnly).database),
                    ElementsAre("A", "B", "C", "D"));
    }
}

// Much more than fits the cache, in a folder where readers and the writer keep each other out.
TEST_F(JournalPlacesTest, WhatAnotherHandWritesFarAwayIsReadRoundUntilItIsCommitted)
{
    const ToldFileSystem told(kNfs);
    const JournalFile first = newJournal(path);
    addRack(*first.database, "A");
    const auto beside = openBeside(first);
    ASSERT_TRUE(beside);
    Transaction much(*beside->database);
    beside->database->execute("CREATE TABLE much (words TEXT) STRICT");
    beside->database->execute(
        "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n "
        "WHERE i < 40000) INSERT INTO much SELECT hex(randomblob(400)) FROM n");
    EXPECT_THAT(rackNames(*first.database), ElementsAre("A"));
    much.rollback();
}

TEST_F(JournalPlacesTest, NoHandWritesBesideOneThatOnlyReads)
{
    addRack(*newJournal(path).database, "A");
    const auto beside = openBeside(openedJournal(path, Access::ReadOnly));
    ASSERT_FALSE(beside);
    EXPECT_EQ(beside.error().kind, ErrorKind::ReadOnly);
}

TEST_F(JournalPlacesTest, ReadingLeavesNothingBehind)
{
    addRack(*newJournal(path).database, "A");
    EXPECT_THAT(rackNames(*openedJournal(path, Access::ReadOnly).database), ElementsAre("A"));
    EXPECT_THAT(files(), ElementsAre("room.plumule"));
    addByAKilledProgram(path, "B");
    EXPECT_THAT(rackNames(*openedJournal(path, Access::ReadOnly).database), ElementsAre("A", "B"));
    EXPECT_THAT(files(), ElementsAre("room.plumule"));
    EXPECT_THAT(rackNames(*openedJournal(path).database), ElementsAre("A", "B"));
}

TEST_F(JournalPlacesTest, ReadingTakesNoLogFromTheOneWhoWrites)
{
    const JournalFile writer = newJournal(path);
    addRack(*writer.database, "A");
    openedJournal(path, Access::ReadOnly);
    EXPECT_THAT(files(),
                UnorderedElementsAre("room.plumule", "room.plumule-wal", "room.plumule-shm"));
    addRack(*writer.database, "B");
    EXPECT_THAT(rackNames(*openedJournal(path, Access::ReadOnly).database), ElementsAre("A", "B"));
}

// Two that write in turn, as where a lock was lost.
TEST_F(JournalPlacesTest, NoIdIsGivenTwice)
{
    const JournalFile one = newJournal(path);
    Database other(path, Access::ReadWrite);
    const auto first = addRack(*one.database, "A").id;
    const auto second = addRack(other, "B").id;
    const auto third = addRack(*one.database, "C").id;
    EXPECT_LT(first, second);
    EXPECT_LT(second, third);
    EXPECT_THAT(rackNames(other), ElementsAre("A", "B", "C"));
}

TEST_F(JournalPlacesTest, FindsTheLogBesideAnotherNameOfItsFolder)
{
    addRack(*newJournal(path).database, "A");
    const fs::path hard = folder / "hard.plumule";
    fs::create_hard_link(path, hard);
    addByAKilledProgram(hard, "B");
    ASSERT_TRUE(hasLogBeside(hard));
    EXPECT_EQ(nameWithLog(path), behindLinks(hard));
    {
        const JournalFile journal = openedJournal(path);
        EXPECT_FALSE(journal.readOnlyBecause);
        EXPECT_EQ(journal.path, path);
        EXPECT_THAT(rackNames(*journal.database), ElementsAre("A", "B"));
        addRack(*journal.database, "C");
    }
    EXPECT_THAT(files(), UnorderedElementsAre("room.plumule", "hard.plumule"));
    EXPECT_THAT(rackNames(*openedJournal(hard).database), ElementsAre("A", "B", "C"));
}

// Read by another user in a folder where nobody may write. True where `look` liked what it saw, and
// neither the folder nor the one for passing files holds more than before.
template <class Look>
bool isReadByAnotherUser(const fs::path& path, const fs::path& passing, Look look)
{
    const auto countOf = [](const fs::path& where) {
        return std::distance(fs::directory_iterator(where), fs::directory_iterator());
    };
    fs::create_directory(passing);
    fs::permissions(passing, fs::perms::all);
    for (const auto& entry : fs::directory_iterator(path.parent_path())) {
        fs::permissions(entry.path(), fs::perms(0444));
    }
    fs::permissions(path.parent_path(), fs::perms(0555));
    const auto before = countOf(path.parent_path());
    const bool isRight = holdsForAnotherUser([&] {
        ::setenv("TMPDIR", passing.c_str(), 1);
        return look();
    });
    const bool isClean = countOf(path.parent_path()) == before && countOf(passing) == 0;
    fs::permissions(path.parent_path(), fs::perms(0755));
    return isRight && isClean;
}

TEST_F(JournalPlacesTest, ShowsAllThatWasAcknowledgedWhereNothingCanBeWritten)
{
    fs::create_directory(folder / "stick");
    const fs::path there = folder / "stick/room.plumule";
    makeJournalWithLog(there);
    for (const Access access : {Access::ReadWrite, Access::ReadOnly}) {
        EXPECT_TRUE(isReadByAnotherUser(there, folder / "passing", [&] {
            const auto journal = openJournalFile(there, access);
            return journal && journal->readOnlyBecause &&
                   journal->readOnlyBecause->is(StorageReason::ShownAsCopy) &&
                   journal->path == there && journal->database->path() != there &&
                   rackNames(*journal->database) == std::vector<std::string>{"A", "B"} &&
                   failureOf([&] { addRack(*journal->database, "C"); }) == ErrorKind::NotWritable;
        }));
    }
    EXPECT_THAT(rackNames(*openedJournal(there).database), ElementsAre("A", "B"));
}

// A rollback journal that stands there means that the file is half written.
TEST_F(JournalPlacesTest, RollsBackAHalfWrittenFileInACopy)
{
    fs::create_directory(folder / "stick");
    const fs::path there = folder / "stick/room.plumule";
    addRack(*newJournal(path).database, "A");
    EXPECT_TRUE(doneByAProgramThatEnds([&] {
        sqlite3* handle = nullptr;
        sqlite3_open(path.c_str(), &handle);
        return sqlite3_exec(handle,
                            "PRAGMA journal_mode=DELETE; PRAGMA cache_size=1; BEGIN;"
                            "UPDATE rack SET name = 'half';"
                            "WITH RECURSIVE n(i) AS (VALUES(9000) UNION ALL SELECT i+1 FROM n "
                            "WHERE i < 9400) INSERT INTO rack (id, name, position) "
                            "SELECT i, hex(zeroblob(500)), 1 FROM n",
                            nullptr, nullptr, nullptr) == SQLITE_OK;
    }));
    ASSERT_TRUE(hasLogBeside(path));
    fs::copy_file(path, there);
    fs::copy_file(path.string() + "-journal", there.string() + "-journal");
    EXPECT_TRUE(isReadByAnotherUser(there, folder / "passing", [&] {
        const auto journal = openJournalFile(there);
        return journal && rackNames(*journal->database) == std::vector<std::string>{"A"};
    }));
}

class FarFolderTest : public JournalPlacesTest, public testing::WithParamInterface<std::uint32_t>
{
protected:
    // One file alone, each commit on the disk with its folder.
    void expectSafe(Database& database)
    {
        EXPECT_EQ(textOf(database, "PRAGMA journal_mode"), "delete");
        EXPECT_EQ(textOf(database, "PRAGMA locking_mode"), "normal");
        EXPECT_EQ(database.scalar("PRAGMA synchronous"), 3);
        EXPECT_THAT(files(), ElementsAre("room.plumule"));
    }
};

TEST_P(FarFolderTest, KeepsAJournalInOneFile)
{
    const ToldFileSystem told(GetParam());
    const JournalFile journal = newJournal(path);
    EXPECT_NE(journal.folder, FolderKind::Local);
    addRack(*journal.database, "A");
    expectSafe(*journal.database);
    // Our own connections read beside it, and nobody else writes.
    const JournalFile reader = openedJournal(path, Access::ReadOnly);
    EXPECT_THAT(rackNames(*reader.database), ElementsAre("A"));
    addRack(*journal.database, "B");
    EXPECT_THAT(rackNames(*reader.database), ElementsAre("A", "B"));
    EXPECT_EQ(openedJournal(path).readOnlyBecause->kind, ErrorKind::AlreadyOpen);
    expectSafe(*journal.database);
}

TEST_P(FarFolderTest, TakesInWhatStandsInALog)
{
    makeJournalWithLog(path);
    const ToldFileSystem told(GetParam());
    const JournalFile journal = openedJournal(path);
    EXPECT_FALSE(journal.readOnlyBecause);
    EXPECT_THAT(rackNames(*journal.database), ElementsAre("A", "B"));
    fs::remove(path.string() + "-shm"); // of the killed program; not in use any more
    expectSafe(*journal.database);
}

TEST_P(FarFolderTest, ReadsALogThroughACopyAndLeavesItThere)
{
    makeJournalWithLog(path);
    const auto before = files();
    const ToldFileSystem told(GetParam());
    const JournalFile journal = openedJournal(path, Access::ReadOnly);
    ASSERT_TRUE(journal.readOnlyBecause);
    EXPECT_TRUE(journal.readOnlyBecause->is(StorageReason::ShownAsCopy));
    EXPECT_THAT(rackNames(*journal.database), ElementsAre("A", "B"));
    EXPECT_EQ(files(), before);
}

TEST_P(FarFolderTest, IsLeftForALocalOneWithALogAgain)
{
    {
        const ToldFileSystem told(GetParam());
        addRack(*newJournal(path).database, "A");
    }
    const JournalFile journal = openedJournal(path);
    EXPECT_EQ(journal.folder, FolderKind::Local);
    EXPECT_EQ(textOf(*journal.database, "PRAGMA journal_mode"), "wal");
    EXPECT_THAT(rackNames(*journal.database), ElementsAre("A"));
}

INSTANTIATE_TEST_SUITE_P(FileSystems, FarFolderTest, testing::Values(kNfs, kFuse),
                         [](const auto& number) {
                             return number.param == kNfs ? "Network" : "Bridged";
                         });

// SQLite calls only one of the system's ways to say so by its name.
TEST_F(JournalPlacesTest, AFileThatMayNotGrowIsCalledAFullDisk)
{
    addRack(*newJournal(path).database, "A");
    EXPECT_TRUE(doneByAProgramThatEnds([&] {
        std::signal(SIGXFSZ, SIG_IGN);
        const JournalFile journal = openedJournal(path);
        const rlimit limit = {1'000'000, 1'000'000};
        return ::setrlimit(RLIMIT_FSIZE, &limit) == 0 &&
               failureOf([&] { addMegabytes(*journal.database, 3); }) == ErrorKind::DiskFull &&
               rackNames(*journal.database) == std::vector<std::string>{"A"};
    }));
    EXPECT_THAT(rackNames(*openedJournal(path).database), ElementsAre("A"));
}

} // namespace
} // namespace plumule
