#include "tests/core/storage/scratch.h"

#include "core/storage/checksum.h"

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
    recorded(database(), "rack.long", [&] {
        StoredRack rack;
        rack.name = std::string(3'000'000, 'x');
        insertRow(database(), rack);
    });
    std::vector<double> reported;
    const Progress progress([&](double fraction) { reported.push_back(fraction); }, {});
    ASSERT_TRUE(backUp(database(), target, progress));
    ASSERT_GT(reported.size(), 2u);
    EXPECT_TRUE(std::is_sorted(reported.begin(), reported.end()));
    EXPECT_DOUBLE_EQ(reported.back(), 1.0);
}

TEST_F(BackupTest, OfADamagedJournalIsRefused)
{
    database().execute("UPDATE history SET changeset_crc = changeset_crc + 1");
    const auto done = backUp(database(), target, {});
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().kind, ErrorKind::Damaged);
    EXPECT_FALSE(std::filesystem::exists(target));
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
    EXPECT_THAT(findFaults(database()), ElementsAre("foreign key in place"));
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
