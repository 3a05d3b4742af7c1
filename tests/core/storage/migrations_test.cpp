#include "tests/core/storage/scratch.h"

#include "core/storage/migrations.h"

#include <cstdlib>
#include <fmt/format.h>
#include <fstream>
#include <gmock/gmock.h>

// Of a new migration core/storage/schemas/<number>.txt, an empty file at first, is made by running
// this program with PLUMULE_WRITE_GOLDENS=1, and its golden journal by building and running it so
// once more. Once it is released they and the migration never change.
namespace plumule {
namespace {

using testing::ElementsAre;
namespace fs = std::filesystem;

bool writesGoldens()
{
    return std::getenv("PLUMULE_WRITE_GOLDENS") != nullptr;
}

fs::path reference(const std::string& name)
{
    return fs::path(PLUMULE_REFERENCES) / name;
}

std::string writtenSchema(int version)
{
    return migrations()[static_cast<std::size_t>(version - 1)].schema;
}

std::string schemaOf(Database& database)
{
    std::string schema;
    Statement statement = database.prepare(
        "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' "
        "ORDER BY type DESC, name");
    while (statement.step()) {
        schema += statement.get<std::string>(0) + ";\n";
    }
    return schema;
}

void makeGoldenJournal(const fs::path& path)
{
    fs::remove(path);
    const JournalFile journal = newJournal(path);
    const StoredRack rack = addRack(*journal.database, "A");
    renameRack(*journal.database, rack, "Window");
    recorded(*journal.database, "shelf.add", [&] {
        StoredShelf shelf;
        shelf.rack = rack.id;
        shelf.name = "1";
        shelf.lightMinutes = 960;
        insertRow(*journal.database, shelf);
    });
    addRack(*journal.database, "taken back");
    EXPECT_TRUE(History(*journal.database).undo());
}

class OldJournalTest : public testing::TestWithParam<int>
{
protected:
    void SetUp() override
    {
        const auto golden = reference("journal_schema_" + std::to_string(GetParam()) + ".sqlite");
        if (writesGoldens() && GetParam() == migrations().back().version) {
            makeGoldenJournal(golden);
        }
        ASSERT_TRUE(fs::exists(golden)) << golden;
        fs::copy_file(golden, path);
        fs::permissions(path, fs::perms(0644));
    }

    ScratchFolder folder;
    fs::path path = folder / "old.plumule";
};

TEST_P(OldJournalTest, OpensWithItsRowsAndIsBroughtToTheNewestSchema)
{
    const JournalFile journal = openedJournal(path);
    ASSERT_TRUE(journal.database);
    EXPECT_FALSE(journal.readOnlyBecause);
    Database& database = *journal.database;
    EXPECT_EQ(database.scalar("PRAGMA user_version"), migrations().back().version);
    EXPECT_THAT(rackNames(database), ElementsAre("Window"));
    const auto shelves = selectRows<StoredShelf>(database, "");
    ASSERT_EQ(shelves.size(), 1u);
    EXPECT_EQ(shelves[0].lightMinutes, 960);
    EXPECT_EQ(History(database).latest(10).size(), 4u);
    EXPECT_TRUE(findFaults(database).empty());
    ScratchFolder other;
    const JournalFile fresh = newJournal(other / "new.plumule");
    EXPECT_EQ(schemaOf(database), schemaOf(*fresh.database));
}

TEST_P(OldJournalTest, HoldsTheSchemaThatIsWrittenDownOfIt)
{
    Database database(path, Access::ReadOnly);
    EXPECT_EQ(database.scalar("PRAGMA user_version"), GetParam());
    EXPECT_EQ(schemaOf(database), writtenSchema(GetParam()));
}

TEST_P(OldJournalTest, TakesBackAndDoesAgainWhatWasRecordedUnderTheOldSchema)
{
    const JournalFile journal = openedJournal(path);
    Database& database = *journal.database;
    ASSERT_EQ(database.scalar("SELECT max(schema_version) FROM history"), GetParam());
    History history(database);
    ASSERT_TRUE(history.undo());
    EXPECT_EQ(database.scalar("SELECT count(*) FROM shelf"), 0);
    ASSERT_TRUE(history.undo());
    EXPECT_THAT(rackNames(database), ElementsAre("A"));
    ASSERT_TRUE(history.undo());
    EXPECT_THAT(rackNames(database), testing::IsEmpty());
    for (int i = 0; i < 3; ++i) {
        ASSERT_TRUE(history.redo());
    }
    EXPECT_THAT(rackNames(database), ElementsAre("Window"));
    EXPECT_EQ(database.scalar("SELECT light_minutes FROM shelf"), 960);
    EXPECT_TRUE(findFaults(database).empty());
}

TEST_P(OldJournalTest, KeepsABackupOfTheOldSchemaWhenItIsBroughtForward)
{
    openedJournal(path);
    const bool isOld = GetParam() != migrations().back().version;
    const fs::path kept = path.string() + ".schema" + std::to_string(GetParam()) + ".backup";
    EXPECT_EQ(fs::exists(kept), isOld);
}

TEST_P(OldJournalTest, DoesAgainWhatWasUndoneUnderTheOldSchema)
{
    const JournalFile journal = openedJournal(path);
    History history(*journal.database);
    ASSERT_TRUE(history.redo());
    EXPECT_THAT(rackNames(*journal.database), ElementsAre("Window", "taken back"));
    EXPECT_EQ(history.redo().error().kind, ErrorKind::NothingThere);
}

TEST_P(OldJournalTest, GoesOnCounting)
{
    const JournalFile journal = openedJournal(path);
    const auto newest = journal.database->scalar("SELECT max(id) FROM history");
    EXPECT_GT(addRack(*journal.database, "B").id.value, newest);
    EXPECT_TRUE(History(*journal.database).undo());
}

INSTANTIATE_TEST_SUITE_P(Schema, OldJournalTest,
                         testing::Range(1, migrations().back().version + 1));

// Schema 2 did again the lowest id first; a journal that stands between two redos goes on so.
TEST(Migrations, KeepTheOrderOfRedoOfASchemaThatStoredNone)
{
    const ScratchFolder folder;
    const fs::path path = folder / "old.plumule";
    fs::copy_file(reference("journal_schema_2.sqlite"), path);
    fs::permissions(path, fs::perms(0644));
    std::vector<std::int64_t> ids;
    {
        Database old(path, Access::ReadWrite);
        old.execute("UPDATE history SET state = 'undone'");
        Statement statement = old.prepare("SELECT id FROM history ORDER BY id DESC");
        while (statement.step()) {
            ids.push_back(statement.get<std::int64_t>(0));
        }
    }
    const JournalFile journal = openedJournal(path);
    Statement statement = journal.database->prepare("SELECT id FROM history ORDER BY undone_order");
    std::vector<std::int64_t> byOrder;
    while (statement.step()) {
        byOrder.push_back(statement.get<std::int64_t>(0));
    }
    EXPECT_EQ(byOrder.size(), 4u);
    EXPECT_EQ(byOrder, ids);
    EXPECT_EQ(History(*journal.database).nextRedo()->id.value, ids.back());
}

TEST(Migrations, AreNumberedFromOneWithoutAGap)
{
    ASSERT_FALSE(migrations().empty());
    for (std::size_t i = 0; i < migrations().size(); ++i) {
        EXPECT_EQ(migrations()[i].version, static_cast<int>(i) + 1);
    }
}

TEST(Migrations, MakeTheSchemasThatAreWrittenDown)
{
    Database database({}, Access::ReadWrite, OpenAs::New);
    for (const Migration& migration : migrations()) {
        database.execute(migration.sql);
        const bool isNewest = migration.version == migrations().back().version;
        if (writesGoldens() && isNewest) {
            std::ofstream(fmt::format("{}/{:04}.txt", PLUMULE_SCHEMAS, migration.version),
                          std::ios::binary)
                << schemaOf(database);
            GTEST_SKIP() << "written; it is in the next build";
        }
        EXPECT_EQ(schemaOf(database), writtenSchema(migration.version)) << migration.version;
    }
}

// A changeset names columns by their place: a table that was altered would take another one's.
TEST(Migrations, LeaveTheTablesAloneThatRecordedWorkIsTakenBackIn)
{
    const ScratchFolder folder;
    const JournalFile journal = newJournal(folder / "room.plumule");
    const std::string newest = schemaOf(*journal.database);
    for (int version = kOldestAlikeSchema; version <= migrations().back().version; ++version) {
        const std::string old = writtenSchema(version);
        int tables = 0;
        for (auto at = old.find("CREATE TABLE"); at != std::string::npos;
             at = old.find("CREATE TABLE", at + 1)) {
            const std::string table = old.substr(at, old.find(';', at) - at + 1);
            if (table.starts_with("CREATE TABLE history ")) {
                continue; // is not part of what is undone
            }
            EXPECT_THAT(newest, testing::HasSubstr(table)) << "of schema " << version;
            ++tables;
        }
        EXPECT_GT(tables, 20) << version;
    }
}

// What undo rests on: see GROUND's changesets.
TEST(Migrations, MakeNoTableThatUndoCannotFollow)
{
    const ScratchFolder folder;
    const JournalFile journal = newJournal(folder / "room.plumule");
    Database& database = *journal.database;
    EXPECT_EQ(database.scalar("SELECT count(*) FROM sqlite_schema WHERE type = 'trigger'"), 0);
    EXPECT_GT(database.scalar("SELECT count(*) FROM sqlite_schema WHERE type = 'table'"), 20);
    Statement tables = database.prepare(
        "SELECT name, sql FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'");
    while (tables.step()) {
        const auto name = tables.get<std::string>(0);
        const auto sql = tables.get<std::string>(1);
        EXPECT_THAT(sql, testing::HasSubstr("id INTEGER PRIMARY KEY")) << name;
        EXPECT_THAT(sql, testing::HasSubstr("STRICT")) << name;
        EXPECT_THAT(sql, testing::Not(testing::HasSubstr("CASCADE"))) << name;
        EXPECT_THAT(sql, testing::Not(testing::HasSubstr("GENERATED"))) << name;
    }
}

} // namespace
} // namespace plumule
