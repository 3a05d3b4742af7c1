#include "tests/core/storage/scratch.h"

#include <gmock/gmock.h>
#include <set>

namespace plumule {
namespace {

using testing::ElementsAre;

std::string settingOf(Database& database, const std::string& pragma)
{
    Statement statement = database.prepare("PRAGMA " + pragma);
    if (!statement.step()) {
        return "";
    }
    const Cell cell = statement.cellAt(0);
    const auto* text = std::get_if<std::string>(&cell);
    return text != nullptr ? *text : std::to_string(std::get<std::int64_t>(cell));
}

TEST(Database, HasTheJournalsSettings)
{
    const ScratchFolder folder;
    const JournalFile journal = newJournal(folder / "room.plumule");
    const std::pair<const char*, const char*> expected[] = {
        {"journal_mode", "wal"},
        {"synchronous", "2"},
        {"foreign_keys", "1"},
        {"cache_size", "-16000"},
        {"busy_timeout", "3000"},
        {"trusted_schema", "0"},
        {"cell_size_check", "1"},
        {"journal_size_limit", "8388608"},
        {"application_id", "1347177804"},
    };
    for (const auto& [pragma, value] : expected) {
        EXPECT_EQ(settingOf(*journal.database, pragma), value) << pragma;
    }
}

TEST(Database, TakesDoubleQuotesForNamesOnly)
{
    Database database({}, Access::ReadWrite, OpenAs::New);
    EXPECT_TRUE(failureOf([&] { (void)database.prepare("SELECT \"no such column\""); }));
}

TEST(Database, LetsNobodyWriteTheSchemaByHand)
{
    const ScratchFolder folder;
    const JournalFile journal = newJournal(folder / "room.plumule");
    journal.database->execute("PRAGMA writable_schema=ON");
    EXPECT_TRUE(failureOf([&] { journal.database->execute("DELETE FROM sqlite_schema"); }));
}

TEST(Database, OpensNamesThatLookLikeOptions)
{
    const ScratchFolder folder;
    for (const char* name : {"a?mode=memory", "50 % #1", "käse & brot.plumule"}) {
        newJournal(folder / name);
        EXPECT_TRUE(std::filesystem::is_regular_file(folder / name)) << name;
    }
}

TEST(Database, CountsIdsOnFromItsCopyNumber)
{
    const ScratchFolder folder;
    const auto path = folder / "room.plumule";
    {
        const JournalFile journal = newJournal(path, 5);
        EXPECT_EQ(addRack(*journal.database, "A").id.value, (std::int64_t{5} << 40) | 1);
    }
    const JournalFile journal = openedJournal(path);
    const auto next = addRack(*journal.database, "B").id.value;
    // The history's own entry took an id between the two.
    EXPECT_EQ(next, (std::int64_t{5} << 40) | 3);
}

TEST(Database, TwoCopiesNeverGiveTheSameId)
{
    const ScratchFolder folder;
    const JournalFile one = newJournal(folder / "one.plumule", 1);
    const JournalFile two = newJournal(folder / "two.plumule", 2);
    std::set<std::int64_t> ids;
    for (int i = 0; i < 50; ++i) {
        ids.insert(addRack(*one.database, "A").id.value);
        ids.insert(addRack(*two.database, "A").id.value);
    }
    EXPECT_EQ(ids.size(), 100u);
}

TEST(Database, GivesIdsOfARolledBackTransactionAgain)
{
    const ScratchFolder folder;
    const JournalFile journal = newJournal(folder / "room.plumule");
    Database& database = *journal.database;
    std::int64_t lost = 0;
    {
        Transaction transaction(database);
        lost = database.nextId();
    }
    Transaction transaction(database);
    EXPECT_EQ(database.nextId(), lost);
}

TEST(Database, RollsBackWhatWasNotCommitted)
{
    const ScratchFolder folder;
    const JournalFile journal = newJournal(folder / "room.plumule");
    {
        Transaction transaction(*journal.database);
        StoredRack rack;
        rack.name = "A";
        insertRow(*journal.database, rack);
    }
    EXPECT_TRUE(rackNames(*journal.database).empty());
    EXPECT_FALSE(journal.database->isInTransaction());
}

TEST(Database, SaysDiskFullAndLosesNothing)
{
    const ScratchFolder folder;
    const auto path = folder / "room.plumule";
    {
        const JournalFile journal = newJournal(path);
        Database& database = *journal.database;
        addRack(database, "kept");
        const auto pages = database.scalar("PRAGMA page_count");
        database.execute("PRAGMA max_page_count=" + std::to_string(pages + 2));
        EXPECT_EQ(failureOf([&] {
                      for (int i = 0; i < 1000; ++i) {
                          addRack(database, std::string(1000, 'x'));
                      }
                  }),
                  ErrorKind::DiskFull);
        EXPECT_FALSE(database.isInTransaction());
        EXPECT_EQ(rackNames(database).front(), "kept");
        database.execute("PRAGMA max_page_count=100000");
        addRack(database, "later");
    }
    const JournalFile journal = openedJournal(path);
    EXPECT_EQ(rackNames(*journal.database).front(), "kept");
    EXPECT_EQ(rackNames(*journal.database).back(), "later");
    EXPECT_TRUE(findFaults(*journal.database).empty());
}

TEST(Database, NoticesThatItsFileIsGone)
{
    const ScratchFolder folder;
    const auto path = folder / "room.plumule";
    const JournalFile journal = newJournal(path);
    addRack(*journal.database, "A");
    std::filesystem::rename(path, folder / "elsewhere.plumule");
    EXPECT_EQ(failureOf([&] { addRack(*journal.database, "B"); }), ErrorKind::FileGone);
    std::filesystem::copy_file(folder / "elsewhere.plumule", path);
    EXPECT_EQ(failureOf([&] { addRack(*journal.database, "B"); }), ErrorKind::FileGone);
    EXPECT_EQ(rackNames(*journal.database).size(), 1u);
}

TEST(Database, CommitsNothingIntoAFileThatWentDuringTheTransaction)
{
    const ScratchFolder folder;
    const auto path = folder / "room.plumule";
    const JournalFile journal = newJournal(path);
    EXPECT_EQ(failureOf([&] {
                  Transaction transaction(*journal.database);
                  StoredRack rack;
                  insertRow(*journal.database, rack);
                  std::filesystem::rename(path, folder / "elsewhere.plumule");
                  transaction.commit();
              }),
              ErrorKind::FileGone);
    std::filesystem::rename(folder / "elsewhere.plumule", path);
    EXPECT_TRUE(rackNames(*journal.database).empty());
    addRack(*journal.database, "A");
    EXPECT_THAT(rackNames(*journal.database), ElementsAre("A"));
}

TEST(Database, RefusesARowThatPointsAtNothing)
{
    const ScratchFolder folder;
    const JournalFile journal = newJournal(folder / "room.plumule");
    EXPECT_EQ(failureOf([&] {
                  Transaction transaction(*journal.database);
                  StoredShelf shelf;
                  shelf.rack = {12345};
                  insertRow(*journal.database, shelf);
                  transaction.commit();
              }),
              ErrorKind::Conflict);
}

class TableTest : public testing::Test
{
protected:
    TableTest() { rack = addRack(database(), "A"); }
    Database& database() { return *journal.database; }

    ScratchFolder folder;
    JournalFile journal = newJournal(folder / "room.plumule");
    StoredRack rack;
};

TEST_F(TableTest, ReadsBackWhatItWrote)
{
    StoredShelf shelf;
    shelf.rack = rack.id;
    shelf.name = "it's \"1\"; --";
    shelf.position = 3;
    shelf.lightMinutes = 960;
    recorded(database(), "shelf.add", [&] { insertRow(database(), shelf); });
    EXPECT_EQ(findRow<StoredShelf>(database(), shelf.id), shelf);
    shelf.lightMinutes.reset();
    recorded(database(), "shelf.change", [&] { updateRow(database(), shelf); });
    EXPECT_EQ(findRow<StoredShelf>(database(), shelf.id), shelf);
    EXPECT_EQ(selectRow<StoredShelf>(database(), "WHERE light_minutes IS ?1", std::optional<int>()),
              shelf);
    recorded(database(), "shelf.remove", [&] { deleteRow<StoredShelf>(database(), shelf.id); });
    EXPECT_EQ(findRow<StoredShelf>(database(), shelf.id), std::nullopt);
}

TEST_F(TableTest, TellsADayThatIsNoneFromDamage)
{
    const auto dayOf = [&](const char* text) {
        Statement statement = database().prepare("SELECT ?1");
        statement.bind(std::string(text)).step();
        return statement.get<Date>(0);
    };
    EXPECT_EQ(dayOf("2026-03-02"), date(2026, 3, 2));
    EXPECT_EQ(failureOf([&] { (void)dayOf("2026-02-30"); }), ErrorKind::Damaged);
}

TEST_F(TableTest, KeepsStatementsApartThatAreOpenTogether)
{
    addRack(database(), "B");
    Statement outer = database().prepare("SELECT name FROM rack ORDER BY id");
    std::vector<std::string> seen;
    while (outer.step()) {
        Statement inner = database().prepare("SELECT name FROM rack ORDER BY id");
        inner.step();
        seen.push_back(outer.get<std::string>(0) + inner.get<std::string>(0));
    }
    EXPECT_THAT(seen, ElementsAre("AA", "BA"));
}

} // namespace
} // namespace plumule
