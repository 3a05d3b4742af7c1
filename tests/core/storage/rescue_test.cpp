#include "core/storage/rescue.h"

#include "core/storage/checksum.h"
#include "core/storage/journal_lock.h"
#include "tests/core/storage/scratch.h"

#include <algorithm>
#include <gmock/gmock.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;
using testing::Contains;
using testing::IsEmpty;
using testing::SizeIs;

// Nothing is known of the tables, and nothing stands in for a row.
RescueKnowledge nothing()
{
    return {[](const std::string&, const std::vector<DeclaredColumn>&, const std::vector<Cell>&) {
                return std::optional<std::size_t>();
            },
            [](const std::string&, std::int64_t) {
                return std::optional<std::map<std::string, Cell>>();
            }};
}

class RescueTest : public testing::Test
{
protected:
    static constexpr std::size_t kPage = 4096;
    static constexpr int kRacks = 600;

    void SetUp() override
    {
        auto file = newJournal(old);
        addRack(*file.database, "First");
        recorded(*file.database, "rack.many", [&] {
            for (int i = 0; i < kRacks; ++i) {
                StoredRack rack;
                rack.name = "Rack " + std::to_string(i) + ' ' + std::string(40, 'x');
                insertRow(*file.database, rack);
                StoredShelf shelf;
                shelf.rack = {rack.id.value};
                shelf.name = "Shelf " + std::to_string(i);
                insertRow(*file.database, shelf);
            }
        });
        // A starter that no step of the history wrote.
        Transaction transaction(*file.database);
        for (int i = 0; i < kRacks; ++i) {
            StoredRack rack;
            rack.name = "Bare " + std::to_string(i) + ' ' + std::string(40, 'y');
            insertRow(*file.database, rack);
        }
        transaction.commit();
    }

    Result<RescueReport> rescued()
    {
        fs::remove(fresh);
        return rescueFile(old, fresh, nothing());
    }
    void alter(const std::string& sql) { runOutside(old, sql); }
    // The pages that hold a text, by number from 1.
    std::vector<std::size_t> pagesWith(const std::string& text)
    {
        const std::string bytes = bytesOf(old);
        std::vector<std::size_t> pages;
        for (std::size_t page = 0; page * kPage < bytes.size(); ++page) {
            if (bytes.substr(page * kPage, kPage).find(text) != std::string::npos) {
                pages.push_back(page + 1);
            }
        }
        return pages;
    }
    void overwritePage(std::size_t page)
    {
        std::string bytes = bytesOf(old);
        bytes.replace((page - 1) * kPage, kPage, std::string(kPage, '\x55'));
        writeBytes(old, bytes);
    }
    std::vector<std::string> names()
    {
        const JournalFile file = openedJournal(fresh, Access::ReadOnly);
        EXPECT_THAT(findFaults(*file.database), IsEmpty());
        return rackNames(*file.database);
    }
    static bool says(const RescueReport& report, RescueReason reason)
    {
        return std::any_of(report.said.begin(), report.said.end(),
                           [&](const Error& each) { return each.is(reason); });
    }
    std::vector<std::string> filesThere()
    {
        std::vector<std::string> files;
        for (const auto& entry : fs::directory_iterator(folder.path())) {
            files.push_back(entry.path().filename());
        }
        std::sort(files.begin(), files.end());
        return files;
    }

    ScratchFolder folder;
    fs::path old = folder / "old.plumule";
    fs::path fresh = folder / "new.plumule";
};

TEST_F(RescueTest, OfASoundJournalSavesAllOfIt)
{
    const std::string before = bytesOf(old);
    const auto report = rescued();
    ASSERT_TRUE(report) << told(report.error());
    EXPECT_THAT(report->said, IsEmpty());
    EXPECT_EQ(report->entries, 1 + 3 * kRacks);
    EXPECT_EQ(report->steps, 2);
    EXPECT_EQ(bytesOf(old), before);
    EXPECT_EQ(filesThere(), (std::vector<std::string>{"new.plumule", "old.plumule"}));
    EXPECT_THAT(names(), SizeIs(1 + 2 * kRacks));
    // Its history goes on.
    auto file = openedJournal(fresh);
    EXPECT_TRUE(History(*file.database).undo());
    EXPECT_EQ(file.database->scalar("SELECT count(*) FROM shelf"), 0);
    const auto last = file.database->scalar("SELECT max(id) FROM rack");
    EXPECT_GT(addRack(*file.database, "After").id.value, last);
}

TEST_F(RescueTest, KeepsALongStepThatIsPacked)
{
    {
        const JournalFile file = openedJournal(old);
        addMegabytes(*file.database, 2);
    }
    const auto report = rescued();
    ASSERT_TRUE(report) << told(report.error());
    EXPECT_EQ(report->steps, 3);
    EXPECT_THAT(names(), SizeIs(1 + 2 * kRacks + 2'000));
    auto file = openedJournal(fresh);
    EXPECT_TRUE(findFaults(*file.database).empty());
    EXPECT_TRUE(History(*file.database).undo());
    EXPECT_THAT(rackNames(*file.database), SizeIs(1 + 2 * kRacks));
}

TEST_F(RescueTest, NeverWritesOverAFileAndLeavesNone)
{
    writeBytes(fresh, "mine");
    const auto refused = rescueFile(old, fresh, nothing());
    ASSERT_FALSE(refused);
    EXPECT_TRUE(refused.error().is(StorageReason::FileExists));
    EXPECT_EQ(bytesOf(fresh), "mine");
    fs::remove(fresh);
    EXPECT_TRUE(
        rescueFile(folder / "none", fresh, nothing()).error().is(StorageReason::FileMissing));
    writeBytes(old, "no journal at all");
    EXPECT_TRUE(rescueFile(old, fresh, nothing()).error().is(RescueReason::NothingReadable));
    EXPECT_EQ(filesThere(), std::vector<std::string>{"old.plumule"});
}

TEST_F(RescueTest, RefusesAJournalThatIsOpenAndAStopLeavesNothing)
{
    {
        const auto open = openedJournal(old);
        EXPECT_TRUE(rescueFile(old, fresh, nothing()).error().is(StorageReason::OpenElsewhere));
    }
    std::stop_source stop;
    stop.request_stop();
    const auto stopped = rescueFile(old, fresh, nothing(), Progress({}, stop.get_token()));
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error().kind, ErrorKind::Cancelled);
    EXPECT_EQ(filesThere(), std::vector<std::string>{"old.plumule"});
}

TEST_F(RescueTest, RestoresRowsOfALostPageFromTheHistory)
{
    const auto pages = pagesWith("Rack 300 ");
    ASSERT_FALSE(pages.empty());
    overwritePage(pages.front()); // the table's: the history lies behind it
    const auto report = rescued();
    ASSERT_TRUE(report) << told(report.error());
    EXPECT_TRUE(says(*report, RescueReason::FromHistory) || says(*report, RescueReason::StepLost));
    EXPECT_THAT(names(), Contains("Rack 300 " + std::string(40, 'x')));
}

TEST_F(RescueTest, SavesTheRestOfATableAndSaysWhereRowsMayBeMissing)
{
    const auto pages = pagesWith("Bare 300 ");
    ASSERT_THAT(pages, SizeIs(1));
    overwritePage(pages.front());
    const auto report = rescued();
    ASSERT_TRUE(report) << told(report.error());
    EXPECT_TRUE(says(*report, RescueReason::RowsUnreadable));
    const auto saved = names();
    EXPECT_GT(saved.size(), 1 + 2 * kRacks - kPage / 40);
    EXPECT_LT(saved.size(), std::size_t{1 + 2 * kRacks});
    EXPECT_THAT(saved, Contains("Bare 0 " + std::string(40, 'y')));
    EXPECT_THAT(saved, Contains("Bare 599 " + std::string(40, 'y')));
}

TEST_F(RescueTest, SavesRowsBetweenTwoLostPages)
{
    overwritePage(pagesWith("Bare 100 ").front());
    overwritePage(pagesWith("Bare 500 ").front());
    ASSERT_TRUE(rescued());
    EXPECT_THAT(names(), Contains("Bare 300 " + std::string(40, 'y')));
}

TEST_F(RescueTest, LeavesOutWhatBelongsToALostRowAndNamesIt)
{
    alter("PRAGMA foreign_keys=OFF; INSERT INTO shelf (id, rack_id, name, position) VALUES (17, "
          "99, 'x', 1); UPDATE rack SET position = 2000000000 WHERE name = 'First'");
    const auto report = rescued();
    ASSERT_TRUE(report);
    EXPECT_THAT(report->said, Contains(foundAt("shelf", 17, RescueReason::OwnerLost, "rack")));
    // The history has it as it was.
    EXPECT_TRUE(says(*report, RescueReason::FromHistory));
    EXPECT_THAT(names(), Contains("First"));
}

TEST_F(RescueTest, LeavesStepsOutThatAreNotWholeOrMakeNoSense)
{
    const std::string bytes = "no changeset";
    alter("UPDATE history SET changeset_crc = 1 WHERE id = (SELECT min(id) FROM history); "
          "UPDATE history SET changeset = CAST('" +
          bytes + "' AS BLOB), changeset_bytes = " + std::to_string(bytes.size()) +
          ", changeset_crc = " + std::to_string(checksumOf(bytes)) +
          " WHERE id = (SELECT max(id) FROM history)");
    const auto report = rescued();
    ASSERT_TRUE(report);
    EXPECT_EQ(report->steps, 0);
    EXPECT_EQ(std::count_if(report->said.begin(), report->said.end(),
                            [](const Error& each) { return each.is(RescueReason::StepLost); }),
              2);
    EXPECT_THAT(names(), SizeIs(1 + 2 * kRacks));
}

TEST_F(RescueTest, MakesALostHeadAnew)
{
    std::string bytes = bytesOf(old);
    bytes.replace(0, 100, std::string(100, '\x55'));
    writeBytes(old, bytes);
    const auto report = rescued();
    ASSERT_TRUE(report) << told(report.error());
    EXPECT_TRUE(says(*report, RescueReason::HeadRebuilt));
    EXPECT_THAT(names(), SizeIs(1 + 2 * kRacks));
}

TEST_F(RescueTest, SavesWhatIsLeftOfAFileThatWasCutShort)
{
    const std::string bytes = bytesOf(old);
    writeBytes(old, bytes.substr(0, bytes.size() - 20 * kPage + 100));
    const auto report = rescued();
    ASSERT_TRUE(report) << told(report.error());
    EXPECT_FALSE(report->said.empty());
    EXPECT_GT(report->entries, 100);
    (void)names();
}

TEST_F(RescueTest, ReadsWhatStandsInTheLogAlone)
{
    const auto kept = folder / "kept.plumule";
    {
        auto file = openedJournal(old);
        addRack(*file.database, "In the log");
        fs::copy_file(old, kept);
        fs::copy_file(old.string() + "-wal", kept.string() + "-wal");
    }
    const auto report = rescueFile(kept, fresh, nothing());
    ASSERT_TRUE(report) << told(report.error());
    EXPECT_THAT(report->said, IsEmpty());
    EXPECT_THAT(names(), Contains("In the log"));
}

TEST_F(RescueTest, CopiesPhotographsAndNoFileFromElsewhere)
{
    alter("PRAGMA foreign_keys=OFF; INSERT INTO variety VALUES (1, 'v', 'V', NULL, '', '', 0); "
          "INSERT INTO medium VALUES (2, 'm', 'mat', 0, 0, NULL, NULL, NULL, 0, '', '', 0); "
          "INSERT INTO tray (id, code, variety_id, medium_id, sown_on, sown_minute, state) VALUES "
          "(3, 'V1', 1, 2, '2026-03-01', 480, 'growing'); "
          "INSERT INTO photo VALUES (4, 3, '2026-03-02', 0, 'a.jpg', ''), (5, 3, '2026-03-02', 0, "
          "'../old.plumule', ''), (6, 3, '2026-03-02', 0, 'gone.jpg', '')");
    fs::create_directories(photoFolderOf(old));
    writeBytes(photoFolderOf(old) / "a.jpg", "a picture");
    const auto report = rescued();
    ASSERT_TRUE(report);
    EXPECT_EQ(report->photos, 1);
    EXPECT_EQ(bytesOf(photoFolderOf(fresh) / "a.jpg"), "a picture");
    EXPECT_EQ(std::count_if(report->said.begin(), report->said.end(),
                            [](const Error& each) { return each.is(RescueReason::PhotoLost); }),
              2);
}

// Bytes overwritten anywhere: no crash, no hang, nothing written to the old file, and what is saved
// is sound.
TEST_F(RescueTest, OfAFileDamagedAnywhereGivesASoundJournalOrAReason)
{
    const std::string whole = bytesOf(old);
    int saved = 0;
    std::int64_t entries = 0;
    constexpr int kMutants = 120;
    for (int i = 0; i < kMutants; ++i) {
        SCOPED_TRACE(i);
        std::mt19937 lot(static_cast<unsigned>(i));
        std::string bytes = whole;
        const std::size_t length = i % 3 == 0 ? 1 : i % 3 == 1 ? 64 : kPage;
        for (int hit = 0; hit < 1 + i % 8; ++hit) {
            std::size_t at = lot() % bytes.size();
            at = i % 3 == 2 ? at / kPage * kPage : at;
            for (std::size_t k = at; k < at + length && k < bytes.size(); ++k) {
                bytes[k] = static_cast<char>(lot());
            }
        }
        writeBytes(old, bytes);
        const auto report = rescued();
        EXPECT_EQ(bytesOf(old), bytes);
        if (!report) {
            EXPECT_FALSE(fs::exists(fresh));
            EXPECT_EQ(report.error().kind == ErrorKind::Damaged ||
                          report.error().kind == ErrorKind::NotAJournal ||
                          report.error().kind == ErrorKind::NewerVersion,
                      true)
                << told(report.error());
            continue;
        }
        ++saved;
        entries += report->entries;
        (void)names();
    }
    std::printf("%d of %d damaged files saved, %.1f %% of their entries\n", saved, kMutants,
                100.0 * double(entries) / double(saved) / (1 + 3 * kRacks));
    // The list of tables, without which nothing is found, is an eighth of this small file.
    EXPECT_GE(saved, kMutants * 3 / 4);
}

} // namespace
} // namespace plumule
