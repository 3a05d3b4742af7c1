#include "core/storage/changeset.h"

#include "core/storage/changeset_bytes.h"
#include "core/storage/changeset_check.h"
#include "core/storage/checksum.h"
#include "tests/core/storage/scratch.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <random>
#include <sqlite3.h>

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

std::string asSqliteWrote(const std::string& stored)
{
    ChangesetReader reader(stored);
    std::vector<char> piece(10'000);
    std::string bytes;
    while (const std::size_t size = reader.read(piece.data(), piece.size())) {
        bytes.append(piece.data(), size);
    }
    EXPECT_FALSE(reader.isFaulty());
    return bytes;
}

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

// Against the bytes that SQLite gives in one piece.
TEST_F(ChangesetTest, OfManyMegabytesIsPackedAndComesBackByteByByte)
{
    sqlite3_session* session = nullptr;
    ASSERT_EQ(sqlite3session_create(database().handle(), "main", &session), SQLITE_OK);
    ASSERT_EQ(sqlite3session_attach(session, "rack"), SQLITE_OK);
    addMegabytes(database(), 3);
    int size = 0;
    void* bytes = nullptr;
    ASSERT_EQ(sqlite3session_changeset(session, &size, &bytes), SQLITE_OK);
    const std::string expected(static_cast<const char*>(bytes), static_cast<std::size_t>(size));
    sqlite3_free(bytes);
    sqlite3session_delete(session);

    const std::string stored = latestBytes();
    EXPECT_TRUE(isPackedChangeset(stored));
    EXPECT_LT(stored.size(), 100'000U) << "of one letter";
    EXPECT_EQ(asSqliteWrote(stored), expected);
    EXPECT_TRUE(findFaults(database()).empty());
    EXPECT_EQ(History(database()).latest(1).front().rowCount, 3'000);
    int rows = 0;
    EXPECT_TRUE(walkChangeset(
        stored, [&](const RowChange& change) { rows += change.kind == ChangeKind::Insert; }));
    EXPECT_EQ(rows, 3'000);
}

TEST_F(ChangesetTest, ThatIsPackedAndCutShortAlteredOrLengthenedIsNone)
{
    std::mt19937 lot(20'261'129); // of one letter only, another way back would say the same
    recorded(database(), "rack.many", [&] {
        for (int i = 0; i < 1'500; ++i) {
            StoredRack rack;
            std::generate_n(std::back_inserter(rack.name), 1'000,
                            [&] { return static_cast<char>('a' + lot() % 26); });
            insertRow(database(), rack);
        }
    });
    const std::string packed = latestBytes();
    ASSERT_TRUE(isPackedChangeset(packed));
    const auto isWhole = [](const std::string& bytes) {
        return walkChangeset(bytes, [](const RowChange&) {});
    };
    ASSERT_TRUE(isWhole(packed));
    for (std::size_t size = 0; size < packed.size(); size += 1 + packed.size() / 40) {
        EXPECT_EQ(isWhole(packed.substr(0, size)), size == 0) << size; // no bytes, no change
        std::string altered = packed;
        altered[size] = static_cast<char>(altered[size] ^ 0x55);
        EXPECT_FALSE(isWhole(altered)) << size;
    }
    EXPECT_FALSE(isWhole(packed + packed));
    EXPECT_FALSE(isWhole(packed + '\0'));
    plant(packed.substr(0, packed.size() - 1));
    EXPECT_EQ(History(database()).undo().error().kind, ErrorKind::Damaged);
}

// A few bytes may unpack into more than a machine has.
TEST_F(ChangesetTest, ThatUnpacksIntoTooMuchIsRefused)
{
    ChangesetPacker packer;
    for (int i = 0; i < 64; ++i) {
        packer.add(std::string(1 << 20, '\0'));
    }
    const std::string packed = packer.stored();
    EXPECT_LT(packed.size(), 400'000U);
    EXPECT_EQ(asSqliteWrote(packed).size(), std::size_t{64} << 20);
    ChangesetReader reader(packed, 5'000'000);
    std::vector<char> piece(100'000);
    std::size_t given = 0;
    while (const std::size_t size = reader.read(piece.data(), piece.size())) {
        given += size;
    }
    EXPECT_TRUE(reader.isFaulty());
    EXPECT_EQ(given, 5'000'000U);
    EXPECT_FALSE(walkChangeset(packed, [](const RowChange&) {}));
}

TEST_F(ChangesetTest, InPiecesCutAnywhereTellsTheSameRows)
{
    const StoredRack rack = rackMade();
    recorded(database(), "change", [&] {
        StoredRack renamed = rack;
        renamed.name = "South wall";
        updateRow(database(), renamed);
        for (const char* name : {"top", "middle", "bottom"}) {
            StoredShelf shelf;
            shelf.rack = rack.id;
            shelf.name = name;
            insertRow(database(), shelf);
        }
    });
    const std::string bytes = latestBytes();
    const auto rowOf = [](const RowChange& change) {
        return std::string(change.table) + ' ' + std::to_string(change.id()) + ' ' +
               std::to_string(change.before.size()) + ' ' + std::to_string(change.after.size());
    };
    std::vector<std::string> atOnce;
    ASSERT_TRUE(
        walkChangeset(bytes, [&](const RowChange& change) { atOnce.push_back(rowOf(change)); }));
    ASSERT_EQ(atOnce.size(), 4U);
    for (std::size_t size = 1; size <= bytes.size(); ++size) {
        std::vector<std::string> rows;
        ChangesetWalk walk([&](const RowChange& change) { rows.push_back(rowOf(change)); });
        for (std::size_t at = 0; at < bytes.size(); at += size) {
            EXPECT_TRUE(walk.feed(std::string_view(bytes).substr(at, size)));
        }
        EXPECT_TRUE(walk.isWhole()) << size;
        EXPECT_EQ(rows, atOnce) << size;
    }
    ChangesetWalk cut([](const RowChange&) {});
    cut.feed(std::string_view(bytes).substr(0, bytes.size() - 1));
    EXPECT_FALSE(cut.isWhole());
}

TEST_F(ChangesetTest, OfManyMegabytesIsTakenBackAndDoneAgain)
{
    addMegabytes(database(), 2);
    const auto racks = rackNames(database());
    ASSERT_EQ(racks.size(), 2'000U);
    ASSERT_TRUE(History(database()).undo());
    EXPECT_TRUE(rackNames(database()).empty());
    ASSERT_TRUE(History(database()).redo());
    EXPECT_EQ(rackNames(database()), racks);
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

TEST_F(ChangesetTest, OfManyMegabytesWithACellBeyondBoundsIsNeverRecorded)
{
    std::int64_t wrong = 0;
    const auto writeMany = [&] {
        for (int i = 0; i < 2'000; ++i) {
            StoredRack rack;
            rack.name = std::string(i == 1'900 ? 1'001 : 1'000, 'x');
            insertRow(database(), rack);
            wrong = i == 1'900 ? rack.id.value : wrong;
        }
    };
    try {
        recorded(database(), "make", writeMany);
        FAIL() << "it was recorded";
    } catch (const StorageFailure& failure) {
        EXPECT_TRUE(failure.error().is(BoundsReason::TextLength));
        ASSERT_TRUE(failure.error().row);
        EXPECT_EQ(failure.error().row->number, wrong);
    }
    EXPECT_TRUE(rackNames(database()).empty());
    EXPECT_TRUE(History(database()).latest(1).empty());
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
