#include "core/storage/schema_check.h"

#include "tests/core/storage/scratch.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

namespace plumule {
namespace {

class SchemaCheckTest : public testing::Test
{
protected:
    // Another program's connection, without our settings.
    void alter(const std::string& sql)
    {
        sqlite3* other = nullptr;
        ASSERT_EQ(sqlite3_open(path.c_str(), &other), SQLITE_OK);
        EXPECT_EQ(sqlite3_exec(other, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
            << sqlite3_errmsg(other);
        sqlite3_close(other);
    }
    void expectRefused(SchemaReason reason, const std::string& type, const std::string& name)
    {
        for (const Access access : {Access::ReadWrite, Access::ReadOnly}) {
            const auto opened = openJournalFile(path, access);
            ASSERT_FALSE(opened) << name;
            EXPECT_EQ(opened.error().kind, ErrorKind::Damaged);
            EXPECT_TRUE(opened.error().is(reason)) << opened.error().reason.code();
            EXPECT_EQ(opened.error().values, (std::vector{type, name}));
        }
    }

    ScratchFolder folder;
    std::filesystem::path path = folder / "room.plumule";

    void SetUp() override { newJournal(path); }
};

TEST_F(SchemaCheckTest, AJournalAsItIsMadeIsOpened)
{
    EXPECT_TRUE(openJournalFile(path));
    alter("ANALYZE"); // what SQLite keeps of its own is no harm
    EXPECT_TRUE(openJournalFile(path));
}

TEST_F(SchemaCheckTest, ATriggerIsRefusedByItsName)
{
    alter("CREATE TRIGGER greedy AFTER UPDATE ON rack BEGIN DELETE FROM tray; END");
    expectRefused(SchemaReason::Foreign, "trigger", "greedy");
}

TEST_F(SchemaCheckTest, AViewInATablesPlaceIsRefused)
{
    alter("ALTER TABLE photo RENAME TO hidden; CREATE VIEW photo AS SELECT * FROM hidden");
    expectRefused(SchemaReason::Foreign, "table", "hidden");
    alter("DROP VIEW photo; DROP TABLE hidden");
    alter("CREATE VIEW photo AS SELECT 1 AS id");
    expectRefused(SchemaReason::Altered, "view", "photo");
}

TEST_F(SchemaCheckTest, OtherTablesAndLooseOrGeneratedColumnsAreRefused)
{
    alter("CREATE TABLE zebra (id INTEGER PRIMARY KEY)");
    expectRefused(SchemaReason::Foreign, "table", "zebra");
    alter("DROP TABLE zebra");
    alter("ALTER TABLE photo ADD COLUMN twice INTEGER AS (2 * id)");
    expectRefused(SchemaReason::Altered, "table", "photo");
    alter("DROP TABLE photo");
    expectRefused(SchemaReason::Missing, "table", "photo");
}

TEST_F(SchemaCheckTest, ALostIndexIsMissed)
{
    alter("DROP INDEX tray_by_state");
    expectRefused(SchemaReason::Missing, "index", "tray_by_state");
}

// Before the schema is looked at, and on any connection of ours.
TEST_F(SchemaCheckTest, APlantedTriggerNeverRuns)
{
    alter("INSERT INTO rack (id, name, position) VALUES (7, 'A', 1);"
          "CREATE TRIGGER greedy AFTER UPDATE ON rack BEGIN DELETE FROM rack; END");
    Database database(path, Access::ReadWrite);
    database.execute("UPDATE rack SET name = 'B'");
    EXPECT_EQ(database.scalar("SELECT count(*) FROM rack"), 1);
}

} // namespace
} // namespace plumule
