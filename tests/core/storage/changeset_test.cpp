#include "core/storage/changeset.h"

#include "core/storage/changeset_check.h"
#include "core/storage/checksum.h"
#include "tests/core/storage/scratch.h"

#include <gmock/gmock.h>
#include <random>

namespace plumule {
namespace {

using testing::ElementsAre;

class ChangesetTest : public testing::Test
{
protected:
    Database& database() { return *journal.database; }

    // The bytes that SQLite wrote of the latest intention.
    std::string latestBytes()
    {
        Statement statement =
            database().prepare("SELECT changeset FROM history ORDER BY id DESC LIMIT 1");
        EXPECT_TRUE(statement.step());
        return statement.get<std::string>(0);
    }

    // A rack that is made, renamed and removed: three entries.
    StoredRack rackMade()
    {
        StoredRack rack;
        rack.name = "Nord\u2009wand";
        recorded(database(), "make", [&] { insertRow(database(), rack); });
        return rack;
    }

    // As a file from elsewhere would have it: with a length and a checksum that fit.
    void plant(const std::string& bytes)
    {
        database()
            .prepare("UPDATE history SET changeset = CAST(?1 AS BLOB), changeset_bytes = ?2, "
                     "changeset_crc = ?3 WHERE id = (SELECT max(id) FROM history)")
            .bind(bytes, static_cast<std::int64_t>(bytes.size()), checksumOf(bytes))
            .run();
    }

    ScratchFolder folder;
    JournalFile journal = newJournal(folder / "room.plumule");
};

std::string replaced(std::string text, const std::string& part, const std::string& by)
{
    const std::size_t at = text.find(part);
    EXPECT_NE(at, std::string::npos) << part;
    return at == std::string::npos ? text : text.replace(at, part.size(), by);
}

TEST_F(ChangesetTest, IsReadAsSqliteWroteIt)
{
    StoredRack rack = rackMade();
    const std::string made = latestBytes();
    rack.name = "South wall";
    recorded(database(), "rename", [&] { updateRow(database(), rack); });
    const std::string renamed = latestBytes();
    recorded(database(), "remove", [&] { deleteRow<StoredRack>(database(), rack.id); });
    const std::string removed = latestBytes();

    std::vector<ChangeKind> kinds;
    for (const std::string& bytes : {made, renamed, removed}) {
        ASSERT_TRUE(walkChangeset(bytes, [&](const RowChange& change) {
            kinds.push_back(change.kind);
            EXPECT_EQ(change.table, "rack");
            EXPECT_EQ(change.id(), rack.id.value);
            const auto& columns = database().columnsOf("rack");
            EXPECT_EQ(change.before.size(), change.kind == ChangeKind::Insert ? 0 : columns.size());
            EXPECT_EQ(change.after.size(), change.kind == ChangeKind::Delete ? 0 : columns.size());
            if (change.kind == ChangeKind::Update) {
                EXPECT_EQ(change.before.at(1), Cell(std::string("Nord\u2009wand")));
                EXPECT_EQ(change.after.at(1), Cell(std::string("South wall")));
                EXPECT_FALSE(change.after.at(2)) << "its position was left alone";
            }
        }));
    }
    EXPECT_THAT(kinds, ElementsAre(ChangeKind::Insert, ChangeKind::Update, ChangeKind::Delete));
}

TEST_F(ChangesetTest, ThatIsCutShortOrLengthenedIsNone)
{
    rackMade();
    const std::string bytes = latestBytes();
    ASSERT_TRUE(walkChangeset(bytes, [](const RowChange&) {}));
    // Cut right behind the table's head it names a table without a change, which is whole.
    int whole = 0;
    for (std::size_t size = 1; size < bytes.size(); ++size) {
        whole += walkChangeset(std::string_view(bytes).substr(0, size), [](const RowChange&) {});
    }
    EXPECT_EQ(whole, 1);
    EXPECT_FALSE(walkChangeset(bytes + '\x01', [](const RowChange&) {}));
    EXPECT_FALSE(walkChangeset("T\xFF\xFF\xFF\xFF\xFF\xFF\xFF\xFF\xFF", [](const RowChange&) {}));
}

// Whatever the bytes, undo refuses in words or does what they say: no crash, no hang. Under the
// sanitizers this is where a read beyond the end would show.
TEST_F(ChangesetTest, WithAnyByteAlteredIsRefusedOrApplied)
{
    rackMade();
    const std::string bytes = latestBytes();
    std::mt19937 lot(20'261'128);
    int refused = 0;
    for (int round = 0; round < 300; ++round) {
        std::string altered = bytes;
        for (unsigned change = 0; change <= lot() % 3; ++change) {
            altered[lot() % altered.size()] = static_cast<char>(lot() % 256);
        }
        plant(altered);
        const auto undone = History(database()).undo();
        if (undone) {
            ASSERT_TRUE(History(database()).redo()) << round;
        } else {
            ++refused;
        }
    }
    EXPECT_GT(refused, 250);
    plant(bytes);
    EXPECT_TRUE(findFaults(database()).empty());
}

TEST_F(ChangesetTest, IsRefusedForATableThatIsNotTracked)
{
    rackMade();
    const std::string bytes = latestBytes();
    plant(replaced(bytes, "rack", "copy"));
    const auto undone = History(database()).undo();
    ASSERT_FALSE(undone);
    EXPECT_EQ(undone.error().kind, ErrorKind::Damaged);
    plant(replaced(bytes, "rack", "nick"));
    EXPECT_EQ(History(database()).undo().error().kind, ErrorKind::Damaged);
}

TEST_F(ChangesetTest, IsRefusedForACellThatNoJournalHolds)
{
    StoredRack rack = rackMade();
    rack.name = "South wall";
    recorded(database(), "rename", [&] { updateRow(database(), rack); });
    plant(replaced(latestBytes(), "Nord\u2009wand", std::string("Nord\xFF\xFE\xFDwand")));
    EXPECT_EQ(History(database()).undo().error().kind, ErrorKind::Damaged);
    EXPECT_THAT(rackNames(database()), ElementsAre("South wall"));
}

// An update leaves out what it did not change; a row that came or went has all its cells.
TEST_F(ChangesetTest, IsRefusedForARowThatLacksACell)
{
    rackMade();
    const std::string bytes = latestBytes();
    const std::string name = "Nord\u2009wand";
    const std::string held = "\x03" + std::string(1, static_cast<char>(name.size())) + name;
    plant(replaced(bytes, held, std::string(1, '\0')));
    const auto undone = History(database()).undo();
    ASSERT_FALSE(undone);
    EXPECT_EQ(undone.error().kind, ErrorKind::Damaged);
}

TEST_F(ChangesetTest, IsRefusedForAnUpdateThatDoesNotSayOfWhichRow)
{
    StoredRack rack = rackMade();
    rack.name = "South wall";
    recorded(database(), "rename", [&] { updateRow(database(), rack); });
    const std::string bytes = latestBytes();
    std::string key = std::string(1, '\x01');
    for (int shift = 56; shift >= 0; shift -= 8) {
        key += static_cast<char>(rack.id.value >> shift & 0xFF);
    }
    plant(replaced(bytes, key, std::string(1, '\0')));
    EXPECT_EQ(History(database()).undo().error().kind, ErrorKind::Damaged);
    const std::string name = "South wall";
    const std::string held = "\x03" + std::string(1, static_cast<char>(name.size())) + name;
    plant(replaced(bytes, held, std::string(1, '\0')));
    EXPECT_EQ(History(database()).undo().error().kind, ErrorKind::Damaged) << "was, and not is";
    EXPECT_THAT(rackNames(database()), ElementsAre("South wall"));
}

TEST_F(ChangesetTest, OfAnIntentionThatWritesBeyondBoundsIsNeverRecorded)
{
    StoredRack rack;
    rack.name = std::string(1'001, 'x');
    try {
        recorded(database(), "make", [&] { insertRow(database(), rack); });
        FAIL() << "it was recorded";
    } catch (const StorageFailure& failure) {
        EXPECT_EQ(failure.error().kind, ErrorKind::Invalid);
        EXPECT_TRUE(failure.error().is(BoundsReason::TextLength));
        EXPECT_EQ(failure.error().values.at(2), "1000");
        ASSERT_TRUE(failure.error().row);
        EXPECT_EQ(failure.error().row->table, "rack");
        EXPECT_EQ(failure.error().row->number, rack.id.value);
    }
    EXPECT_TRUE(rackNames(database()).empty());
    EXPECT_TRUE(History(database()).latest(1).empty());
}

} // namespace
} // namespace plumule
