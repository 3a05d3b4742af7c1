#include "core/backup/backup_store.h"

#include "core/backup/photo_list.h"
#include "tests/core/storage/scratch.h"

#include <fstream>
#include <gmock/gmock.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;
using testing::IsEmpty;
using testing::SizeIs;

void write(const fs::path& path, const std::string& bytes)
{
    std::ofstream(path, std::ios::binary) << bytes;
}

std::string bytesOf(const fs::path& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

int filesIn(const fs::path& folder)
{
    std::error_code failed;
    return static_cast<int>(std::distance(fs::directory_iterator(folder, failed), {}));
}

class BackupStoreTest : public testing::Test
{
protected:
    // A tray with a photograph; rows as other rooms would store them.
    void SetUp() override
    {
        fs::create_directory(photos);
        recorded(database(), "sow", [&] {
            database().execute(
                "INSERT INTO variety VALUES (1, 'Radish', 'RD', NULL, '', '', 0);"
                "INSERT INTO medium VALUES (2, 'Jute', 'mat', 0, 0, NULL, NULL, NULL, 1, '', '', "
                "0);"
                "INSERT INTO tray (id, code, variety_id, medium_id, sown_on, sown_minute, state) "
                "VALUES (3, 'RD001', 1, 2, '2026-11-20', 480, 'growing')");
        });
        addPhoto(4, "RD001 2026-11-21 1.jpg", "leaves");
    }

    void addPhoto(std::int64_t id, const std::string& name, const std::string& bytes)
    {
        recorded(database(), "photo", [&] {
            database()
                .prepare("INSERT INTO photo VALUES (?1, 3, '2026-11-21', 500, ?2, '')")
                .bind(id, name)
                .run();
        });
        if (name.find('/') == std::string::npos) {
            write(photos / name, bytes);
        }
    }

    BackupMade added(Moment at)
    {
        auto made = store.add(database(), photos, at, {});
        EXPECT_TRUE(made);
        return made.value_or(BackupMade());
    }

    Database& database() { return *journal.database; }

    ScratchFolder folder;
    fs::path path = folder / "room.plumule";
    fs::path photos = folder / "room photos";
    JournalFile journal = newJournal(path);
    BackupStore store = BackupStore::of(path);
    Moment morning{date(2026, 11, 28), 425};
};

TEST_F(BackupStoreTest, AddsACopyWithItsPhotographsAndSaysWhatItHolds)
{
    const BackupMade made = added(morning);
    EXPECT_EQ(made.backup.file, folder / "room backups" / "room 2026-11-28 0705.plumule");
    EXPECT_EQ(made.photosCopied, 1);
    EXPECT_EQ(made.photosMissing, 0);
    EXPECT_THAT(store.list(), SizeIs(1));
    EXPECT_EQ(store.list().front(), made.backup);
    const auto content = store.look(made.backup);
    ASSERT_TRUE(content);
    EXPECT_EQ(content->trays, 1);
    EXPECT_EQ(content->photos, 1);
    EXPECT_EQ(content->lastEntryUtc, "1970-01-01 00:00"); // the tests' entries are made at 1 s
}

TEST_F(BackupStoreTest, CopiesAPhotographOnce)
{
    added(morning);
    addPhoto(5, "RD001 2026-11-22 1.jpg", "roots");
    const BackupMade second = added(morning + 1440);
    EXPECT_EQ(second.photosCopied, 1);
    EXPECT_EQ(filesIn(store.folder() / "photos"), 2);
    EXPECT_EQ(added(morning + 1440).photosCopied, 0) << "a second one of that minute";
    EXPECT_THAT(store.list(), SizeIs(3));
}

TEST_F(BackupStoreTest, TheNewestOfAMinuteComesFirst)
{
    for (int i = 0; i < 12; ++i) {
        added(morning);
    }
    const auto backups = store.list();
    ASSERT_THAT(backups, SizeIs(12));
    EXPECT_EQ(backups.front().number, 12) << "as numbers, not as letters";
    EXPECT_EQ(backups.back().file.filename(), "room 2026-11-28 0705.plumule");
}

TEST_F(BackupStoreTest, BringsBackTheJournalAndItsPhotographs)
{
    const BackupMade made = added(morning);
    addRack(database(), "later");
    fs::remove(photos / "RD001 2026-11-21 1.jpg");
    const fs::path target = folder / "brought back.plumule";
    ASSERT_TRUE(store.bringBack(made.backup, target, {}));
    const JournalFile again = openedJournal(target);
    EXPECT_EQ(again.database->scalar("SELECT count(*) FROM tray"), 1);
    EXPECT_THAT(rackNames(*again.database), IsEmpty());
    EXPECT_EQ(bytesOf(folder / "brought back photos" / "RD001 2026-11-21 1.jpg"), "leaves");
}

TEST_F(BackupStoreTest, NeverBringsBackOverWhatIsThere)
{
    const BackupMade made = added(morning);
    const std::string before = bytesOf(path);
    const Done over = store.bringBack(made.backup, path, {});
    ASSERT_FALSE(over);
    EXPECT_TRUE(over.error().is(BackupReason::TargetTaken));
    fs::create_directory(folder / "other photos");
    EXPECT_FALSE(store.bringBack(made.backup, folder / "other.plumule", {}));
    EXPECT_EQ(bytesOf(path), before);
}

TEST_F(BackupStoreTest, BringsBackNothingOfWhatWasAltered)
{
    const BackupMade made = added(morning);
    const fs::path target = folder / "again.plumule";
    const fs::path kept = fs::directory_iterator(store.folder() / "photos")->path();
    write(kept, "other leaves");
    const Done photo = store.bringBack(made.backup, target, {});
    ASSERT_FALSE(photo);
    EXPECT_TRUE(photo.error().is(BackupReason::PhotoAltered));
    EXPECT_FALSE(fs::exists(target));
    EXPECT_FALSE(fs::exists(folder / "again photos")) << "half of it was left";

    std::string bytes = bytesOf(made.backup.file);
    bytes[bytes.size() / 2] = static_cast<char>(bytes[bytes.size() / 2] ^ 1);
    write(made.backup.file, bytes);
    EXPECT_TRUE(store.look(made.backup).error().is(BackupReason::Altered));
    EXPECT_TRUE(store.bringBack(made.backup, target, {}).error().is(BackupReason::Altered));
}

TEST_F(BackupStoreTest, CountsPhotographsThatAreMissingAndNeverLeavesItsFolder)
{
    write(folder / "secret.txt", "not a photograph");
    addPhoto(5, "../secret.txt", "");
    fs::remove(photos / "RD001 2026-11-21 1.jpg");
    const BackupMade made = added(morning);
    EXPECT_EQ(made.photosMissing, 2);
    EXPECT_EQ(filesIn(store.folder() / "photos"), 0);
    EXPECT_FALSE(store.bringBack(made.backup, folder / "again.plumule", {}))
        << "a list with a name that is none is not followed";
}

TEST_F(BackupStoreTest, LetsGoByTheRotaWithThePhotographsOfNone)
{
    added({morning.date - 400, morning.minute});
    fs::remove(photos / "RD001 2026-11-21 1.jpg");
    recorded(database(), "photo", [&] { database().execute("DELETE FROM photo"); });
    for (int day = 30; day >= 0; --day) {
        added({morning.date - day, morning.minute});
    }
    ASSERT_TRUE(store.prune());
    // 28 to 15 Nov; the weeks to 8 and 1 Nov; October's last of these and the one of 2025.
    EXPECT_THAT(store.list(), SizeIs(14 + 2 + 1 + 1));
    EXPECT_EQ(filesIn(store.folder() / "photos"), 1) << "the oldest backup still holds it";
    for (const Backup& backup : store.list()) {
        EXPECT_TRUE(store.look(backup)) << backup.file;
    }
}

TEST_F(BackupStoreTest, LetsNothingGoWhileTheNewestIsNotSound)
{
    for (int minute = 0; minute < 3; ++minute) {
        added(morning + minute);
    }
    write(store.list().front().file, "torn");
    EXPECT_FALSE(store.prune());
    EXPECT_THAT(store.list(), SizeIs(3));
}

TEST_F(BackupStoreTest, SaysThatItsFolderIsGone)
{
    const BackupStore onStick = BackupStore::of(path, folder / "stick" / "backups");
    const auto made = onStick.add(database(), photos, morning, {});
    ASSERT_FALSE(made);
    EXPECT_TRUE(made.error().is(BackupReason::FolderGone));
    EXPECT_FALSE(fs::exists(folder / "stick")) << "it is not made up on this disk";
    EXPECT_THAT(onStick.list(), IsEmpty());
}

TEST_F(BackupStoreTest, IsBlindForOtherFiles)
{
    added(morning);
    for (const char* name :
         {"room.plumule", "room 2026-13-28 0705.plumule", "room 2026-11-28.plumule",
          "other 2026-11-28 0705.plumule", "room 2026-11-28 2565.plumule"}) {
        write(store.folder() / name, "x");
    }
    EXPECT_THAT(store.list(), SizeIs(1));
}

TEST(PhotoList, IsReadAsItIsWritten)
{
    const std::vector<KeptPhoto> photos = {{"RD001 2026-11-21 1.jpg", "00f100f100f100f1-52.jpg"},
                                           {"lost.png", ""}};
    EXPECT_EQ(photoListFrom(photoListText(photos)), photos);
    EXPECT_TRUE(photoListFrom("")->empty());
    for (const char* text : {"nothing", "- ../up.jpg", "../00f100f100f1-52 a.jpg", "- ",
                             "- a/b.jpg", "00f100f100f100f1-../x a.jpg"}) {
        EXPECT_FALSE(photoListFrom(text)) << text;
    }
}

} // namespace
} // namespace plumule
