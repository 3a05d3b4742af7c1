#include "tests/core/storage/scratch.h"

#include "core/storage/checksum.h"
#include "tests/core/storage/fault_vfs.h"

#include <fstream>
#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

class BackupTest : public testing::Test
{
protected:
    BackupTest() { addRack(database(), "A"); }
    Database& database() { return *journal.database; }

    void flip(std::streamoff position, char mask = '\x10')
    {
        std::fstream file(target, std::ios::binary | std::ios::in | std::ios::out);
        file.seekg(position);
        const auto byte = static_cast<char>(file.get());
        file.seekp(position);
        file.put(static_cast<char>(byte ^ mask));
    }

    ScratchFolder folder;
    JournalFile journal = newJournal(folder / "room.plumule");
    std::filesystem::path target = folder / "kept.plumule";
};

TEST_F(BackupTest, OfAnOpenJournalIsWholeAndOpens)
{
    addRack(database(), "B");
    ASSERT_TRUE(backUp(database(), target, {}));
    EXPECT_TRUE(verifyBackup(target));
    addRack(database(), "C");
    const JournalFile copy = openedJournal(target);
    EXPECT_THAT(rackNames(*copy.database), ElementsAre("A", "B"));
    EXPECT_TRUE(History(*copy.database).undo());
}

TEST_F(BackupTest, LeavesNothingBesideItselfAndItsChecksum)
{
    ASSERT_TRUE(backUp(database(), target, {}));
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder.path())) {
        if (entry.path().filename().string().starts_with("kept")) {
            files.push_back(entry.path().filename());
        }
    }
    EXPECT_THAT(files, testing::UnorderedElementsAre("kept.plumule", "kept.plumule.crc"));
}

TEST_F(BackupTest, TakesThePlaceOfAnOlderOne)
{
    ASSERT_TRUE(backUp(database(), target, {}));
    addRack(database(), "B");
    ASSERT_TRUE(backUp(database(), target, {}));
    EXPECT_TRUE(verifyBackup(target));
    EXPECT_EQ(rackNames(*openedJournal(target, Access::ReadOnly).database).size(), 2u);
}

TEST_F(BackupTest, EveryFlippedByteIsFoundByItsChecksum)
{
    ASSERT_TRUE(backUp(database(), target, {}));
    const auto size = static_cast<std::streamoff>(std::filesystem::file_size(target));
    for (std::streamoff position = 0; position < size; position += size / 97) {
        flip(position);
        const auto verified = verifyBackup(target);
        EXPECT_FALSE(verified) << position;
        EXPECT_EQ(verified ? ErrorKind::Missing : verified.error().kind, ErrorKind::Damaged);
        flip(position);
    }
    EXPECT_TRUE(verifyBackup(target));
}

TEST_F(BackupTest, WithoutItsChecksumIsNotTakenForSound)
{
    ASSERT_TRUE(backUp(database(), target, {}));
    std::filesystem::remove(target.string() + ".crc");
    EXPECT_EQ(verifyBackup(target).error().kind, ErrorKind::Unreadable);
}

TEST_F(BackupTest, ThatIsStoppedLeavesTheOlderOneAlone)
{
    ASSERT_TRUE(backUp(database(), target, {}));
    addRack(database(), "B");
    std::stop_source stop;
    stop.request_stop();
    const auto done = backUp(database(), target, Progress({}, stop.get_token()));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().kind, ErrorKind::Cancelled);
    EXPECT_TRUE(verifyBackup(target));
    EXPECT_FALSE(std::filesystem::exists(target.string() + ".part"));
    EXPECT_EQ(rackNames(*openedJournal(target, Access::ReadOnly).database).size(), 1u);
}

TEST_F(BackupTest, TellsHowFarItIs)
{
    addMegabytes(database(), 3);
    std::vector<double> reported;
    const Progress progress([&](double fraction) { reported.push_back(fraction); }, {});
    ASSERT_TRUE(backUp(database(), target, progress));
    ASSERT_GT(reported.size(), 2u);
    EXPECT_TRUE(std::is_sorted(reported.begin(), reported.end()));
    EXPECT_DOUBLE_EQ(reported.back(), 1.0);
}

TEST_F(BackupTest, StopsInTheMiddleOfItsCheckToo)
{
    addMegabytes(database(), 6);
    for (const double from : {kCopyOfBackup, 0.6, 0.8}) {
        std::stop_source stop;
        double furthest = 0;
        const Progress progress(
            [&](double fraction) {
                furthest = fraction;
                if (fraction >= from) {
                    stop.request_stop();
                }
            },
            stop.get_token());
        const auto done = backUp(database(), target, progress);
        ASSERT_FALSE(done) << from;
        EXPECT_TRUE(done.error().is(StorageReason::BackupStopped));
        EXPECT_LT(furthest, 1) << from;
        EXPECT_FALSE(std::filesystem::exists(target));
    }
    EXPECT_TRUE(backUp(database(), target, {})) << "and can be made later";
}

TEST_F(BackupTest, OfADamagedJournalIsRefused)
{
    database().execute("UPDATE history SET changeset_crc = changeset_crc + 1");
    const auto done = backUp(database(), target, {});
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().kind, ErrorKind::Damaged);
    EXPECT_FALSE(std::filesystem::exists(target));
}

TEST_F(BackupTest, NeverAimsAtTheJournalItself)
{
    namespace fs = std::filesystem;
    const fs::path room = folder / "room.plumule";
    fs::create_symlink("room.plumule", folder / "link.plumule");
    fs::create_hard_link(room, folder / "hard.plumule");
    fs::create_directory(folder / "room photos");
    for (const fs::path& aim :
         {room, folder / "link.plumule", folder / "hard.plumule", folder / "room.plumule-wal",
          folder / "room.plumule-shm", folder / "room photos/kept.plumule"}) {
        const auto done = backUp(database(), aim, {});
        ASSERT_FALSE(done) << aim;
        EXPECT_EQ(done.error().kind, ErrorKind::Conflict) << aim;
        EXPECT_FALSE(fs::exists(aim.string() + ".crc"));
    }
    addRack(database(), "B");
    EXPECT_THAT(rackNames(database()), ElementsAre("A", "B"));
    EXPECT_THAT(findFaults(database()), IsEmpty());
}

TEST_F(BackupTest, NeverAimsAtAnotherJournalThatIsOpen)
{
    const JournalFile other = newJournal(folder / "other.plumule");
    EXPECT_EQ(backUp(database(), folder / "other.plumule", {}).error().kind, ErrorKind::Conflict);
    EXPECT_THAT(rackNames(*other.database), IsEmpty());
}

// Each write of the copy fails in turn: what stood there stays whole.
TEST_F(BackupTest, ThatFailsLeavesTheOlderOneAlone)
{
    ASSERT_TRUE(backUp(database(), target, {}));
    addRack(database(), "B");
    FaultVfs vfs;
    const JournalFile reader = openedJournal(folder / "room.plumule", Access::ReadOnly);
    int faults = 0;
    std::size_t kept = 1;
    for (bool isDone = false; !isDone; ++faults) {
        vfs.arm(faults + 1, FaultVfs::Lasting::Once);
        const auto done = backUp(*reader.database, target, {});
        isDone = !vfs.hasFailed();
        vfs.disarm();
        EXPECT_TRUE(done || !isDone);
        EXPECT_TRUE(verifyBackup(target)) << faults;
        const auto racks = rackNames(*openedJournal(target, Access::ReadOnly).database).size();
        kept = done ? 2 : kept;
        EXPECT_EQ(racks, kept) << faults;
        ASSERT_LT(faults, 1000);
    }
    EXPECT_GT(faults, 5);
    for (const auto& entry : std::filesystem::directory_iterator(folder.path())) {
        EXPECT_FALSE(entry.path().filename().string().starts_with(".plumule"))
            << entry.path() << " was left behind";
    }
}

TEST_F(BackupTest, IsOfOneStateThoughTheJournalIsWrittenMeanwhile)
{
    addMegabytes(database(), 5);
    const JournalFile reader = openedJournal(folder / "room.plumule", Access::ReadOnly);
    int steps = 0;
    std::stop_source stop;
    const Progress progress(
        [&](double) {
            addRack(database(), "step " + std::to_string(++steps));
            if (steps > 100) {
                stop.request_stop(); // it began anew at each write
            }
        },
        stop.get_token());
    ASSERT_TRUE(backUp(*reader.database, target, progress));
    EXPECT_GT(steps, 2);
    const JournalFile copy = openedJournal(target, Access::ReadOnly);
    EXPECT_EQ(rackNames(*copy.database).size(), 5001u);
    EXPECT_EQ(rackNames(database()).size(), 5001u + static_cast<unsigned>(steps));
}

TEST_F(BackupTest, IntoAFolderThatIsNotThereIsRefused)
{
    const auto done = backUp(database(), folder / "nowhere/kept.plumule", {});
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().kind, ErrorKind::NotWritable);
}

TEST_F(BackupTest, FaultsOfASoundJournalAreNone)
{
    EXPECT_THAT(findFaults(database()), IsEmpty());
}

TEST_F(BackupTest, RowsThatPointAtNothingAreFaults)
{
    database().execute("PRAGMA foreign_keys=OFF");
    database().execute("INSERT INTO place (id, shelf_id, number) VALUES (1, 999, 1)");
    EXPECT_THAT(findFaults(database()),
                ElementsAre(foundAt("place", 1, FaultReason::Dangling, "shelf")));
}

TEST(Checksum, IsTheEcmaOne)
{
    // The check value of CRC-64/ECMA-182 for "123456789", from memory.
    EXPECT_EQ(static_cast<std::uint64_t>(checksumOf("123456789")), 0x6C40DF5F0B497347u);
    EXPECT_EQ(checksumOf(""), 0);
}

TEST(Checksum, OfAFileIsThatOfItsBytes)
{
    const ScratchFolder folder;
    const auto path = folder / "bytes";
    std::string bytes;
    for (int i = 0; i < 200'000; ++i) {
        bytes += static_cast<char>(i * 7);
    }
    std::ofstream(path, std::ios::binary) << bytes;
    EXPECT_EQ(checksumOfFile(path), checksumOf(bytes));
    EXPECT_EQ(failureOf([&] { (void)checksumOfFile(folder / "nothing"); }), ErrorKind::Unreadable);
}

} // namespace
} // namespace plumule
