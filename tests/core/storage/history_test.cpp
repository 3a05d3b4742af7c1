#include "tests/core/storage/scratch.h"

#include "core/storage/migrations.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

class HistoryTest : public testing::Test
{
protected:
    Database& database() { return *journal.database; }
    History history() { return History(database()); }
    std::vector<std::string> names() { return rackNames(database()); }
    void reopen()
    {
        journal = JournalFile();
        journal = openedJournal(path);
    }
    // What stands between an entry and its undo; the test fails when it is taken back.
    Error refusal(HistoryId id = {})
    {
        const auto undone = history().undo(id);
        EXPECT_FALSE(undone);
        return undone ? Error() : undone.error();
    }
    HistoryId newest() { return history().latest(1).at(0).id; }

    ScratchFolder folder;
    std::filesystem::path path = folder / "room.plumule";
    JournalFile journal = newJournal(path);
};

TEST_F(HistoryTest, WritesOneEntryAnIntention)
{
    const auto rows = recorded(database(), "rack.add_two", [&] {
        StoredRack rack;
        insertRow(database(), rack);
        rack.id = {};
        insertRow(database(), rack);
    });
    ASSERT_EQ(rows.size(), 1u);
    EXPECT_EQ(rows[0].table, "rack");
    EXPECT_EQ(rows[0].ids.size(), 2u);
    const auto entries = history().latest(10);
    ASSERT_EQ(entries.size(), 1u);
    EXPECT_EQ(entries[0].intention, "rack.add_two");
    EXPECT_EQ(entries[0].subject, "subject");
    EXPECT_EQ(entries[0].rowCount, 2);
    EXPECT_EQ(entries[0].atUtcMs, 1'000);
    EXPECT_EQ(entries[0].state, HistoryState::Standing);
}

TEST_F(HistoryTest, AnEntryThatCannotBeReadKeepsItsPlaceAndCostsNoOther)
{
    for (const char* what : {"rack.first", "rack.second", "rack.third"}) {
        (void)recorded(database(), what, [&] {
            StoredRack rack;
            insertRow(database(), rack);
        });
    }
    const HistoryId second = history().latest(2).at(1).id;
    database().execute("PRAGMA ignore_check_constraints=ON");
    database().execute("UPDATE history SET state = 'limbo' WHERE intention = 'rack.second'");
    const auto entries = history().latest(10);
    ASSERT_EQ(entries.size(), 3u);
    EXPECT_EQ(entries[0].intention, "rack.third");
    EXPECT_EQ(entries[1].id, second);
    EXPECT_EQ(entries[1].intention, "");
    EXPECT_EQ(entries[2].intention, "rack.first");
}

TEST_F(HistoryTest, WritesNoEntryWhereNothingChanged)
{
    EXPECT_THAT(recorded(database(), "nothing", [] {}), IsEmpty());
    EXPECT_THAT(history().latest(10), IsEmpty());
    EXPECT_EQ(refusal().kind, ErrorKind::NothingThere);
    EXPECT_EQ(history().redo().error().kind, ErrorKind::NothingThere);
}

TEST_F(HistoryTest, GoesBackAndForthAcrossRestarts)
{
    const StoredRack rack = addRack(database(), "A");
    renameRack(database(), rack, "B");
    addRack(database(), "C");
    reopen();
    ASSERT_TRUE(history().undo());
    EXPECT_THAT(names(), ElementsAre("B"));
    reopen();
    ASSERT_TRUE(history().undo());
    EXPECT_THAT(names(), ElementsAre("A"));
    ASSERT_TRUE(history().undo());
    EXPECT_THAT(names(), IsEmpty());
    reopen();
    ASSERT_TRUE(history().redo());
    ASSERT_TRUE(history().redo());
    EXPECT_THAT(names(), ElementsAre("B"));
    reopen();
    ASSERT_TRUE(history().redo());
    EXPECT_THAT(names(), ElementsAre("B", "C"));
    EXPECT_FALSE(history().nextRedo());
}

TEST_F(HistoryTest, TellsWhichRowsAnUndoTouched)
{
    const StoredRack rack = addRack(database(), "A");
    const auto undone = history().undo();
    ASSERT_TRUE(undone);
    ASSERT_EQ(undone->rows.size(), 1u);
    EXPECT_EQ(undone->rows[0].table, "rack");
    EXPECT_EQ(undone->rows[0].ids.front(), rack.id.value);
    EXPECT_EQ(undone->entry.state, HistoryState::Undone);
}

TEST_F(HistoryTest, ANewIntentionDropsWhatCouldBeRedone)
{
    addRack(database(), "A");
    ASSERT_TRUE(history().undo());
    addRack(database(), "B");
    EXPECT_FALSE(history().nextRedo());
    EXPECT_EQ(history().redo().error().kind, ErrorKind::NothingThere);
    const auto entries = history().latest(10);
    ASSERT_EQ(entries.size(), 2u);
    EXPECT_EQ(entries[1].state, HistoryState::Dropped);
    EXPECT_EQ(refusal(entries[1].id).kind, ErrorKind::NothingThere);
}

TEST_F(HistoryTest, TakesBackAnOlderEntryWhoseRowsNobodyTouchedSince)
{
    addRack(database(), "A");
    const HistoryId first = newest();
    addRack(database(), "B");
    ASSERT_TRUE(history().undo(first));
    EXPECT_THAT(names(), ElementsAre("B"));
}

TEST_F(HistoryTest, DoesAgainWhatWasUndoneLast)
{
    addRack(database(), "A");
    const HistoryId first = newest();
    addRack(database(), "B");
    addRack(database(), "C");
    const HistoryId third = newest();
    ASSERT_TRUE(history().undo(first));
    ASSERT_TRUE(history().undo(third));
    reopen();
    EXPECT_EQ(history().nextRedo()->id, third);
    ASSERT_TRUE(history().redo());
    EXPECT_THAT(names(), ElementsAre("B", "C"));
    ASSERT_TRUE(history().redo());
    EXPECT_THAT(names(), ElementsAre("A", "B", "C"));
    EXPECT_FALSE(history().nextRedo());
}

TEST_F(HistoryTest, LooksForUndoneEntriesByAnIndex)
{
    for (const char* sql : {"SELECT id FROM history WHERE state = 'undone' ORDER BY undone_order "
                            "DESC LIMIT 1",
                            "UPDATE history SET state = 'dropped', undone_order = NULL WHERE "
                            "state = 'undone'"}) {
        Statement plan = database().prepare(std::string("EXPLAIN QUERY PLAN ") + sql);
        ASSERT_TRUE(plan.step()) << sql;
        EXPECT_THAT(plan.get<std::string>(3), testing::HasSubstr("INDEX history_undone")) << sql;
    }
}

TEST_F(HistoryTest, AnEntryWhoseStateIsNoneIsDamage)
{
    addRack(database(), "A");
    database().execute("PRAGMA ignore_check_constraints=ON");
    database().execute("UPDATE history SET state = 'torn'");
    const HistoryId torn = newest();
    EXPECT_EQ(failureOf([&] { (void)history().undo(torn); }), ErrorKind::Damaged);
}

TEST_F(HistoryTest, RefusesToOverwriteLaterWorkAndNamesTheRow)
{
    const StoredRack rack = addRack(database(), "A");
    const HistoryId added = newest();
    renameRack(database(), rack, "B");
    const HistoryId renamed = newest();
    renameRack(database(), rack, "C");
    for (const HistoryId entry : {added, renamed}) {
        const Error error = refusal(entry);
        EXPECT_EQ(error.kind, ErrorKind::ChangedSince);
        EXPECT_EQ(error.row, (RowAt{"rack", rack.id.value}));
    }
    EXPECT_THAT(names(), ElementsAre("C"));
    EXPECT_FALSE(database().isInTransaction());
}

TEST_F(HistoryTest, RefusesToBringBackARowThatWasRemovedSince)
{
    const StoredRack rack = addRack(database(), "A");
    renameRack(database(), rack, "B");
    const HistoryId renamed = newest();
    recorded(database(), "rack.remove", [&] { deleteRow<StoredRack>(database(), rack.id); });
    const Error error = refusal(renamed);
    EXPECT_EQ(error.kind, ErrorKind::ChangedSince);
    EXPECT_EQ(error.row, (RowAt{"rack", rack.id.value}));
}

TEST_F(HistoryTest, RefusesToTakeAwayWhatLaterRowsStandOn)
{
    const StoredRack rack = addRack(database(), "A");
    const HistoryId added = newest();
    recorded(database(), "shelf.add", [&] {
        StoredShelf shelf;
        shelf.rack = rack.id;
        insertRow(database(), shelf);
    });
    EXPECT_TRUE(refusal(added).is(StorageReason::StoodOnSince));
    EXPECT_THAT(names(), ElementsAre("A"));
    EXPECT_EQ(selectRows<StoredShelf>(database(), "").size(), 1u);
}

TEST_F(HistoryTest, RefusesAChangesetThatIsNotWhatWasWritten)
{
    addRack(database(), "A");
    const struct
    {
        const char* how;
        const char* sql;
    } damages[] = {
        {"a flipped byte", "changeset = CAST(substr(changeset, 1, 5) || x'ff' || "
                           "substr(changeset, 7) AS BLOB)"},
        {"cut short", "changeset = substr(changeset, 1, length(changeset) - 1)"},
        {"another length", "changeset_bytes = changeset_bytes + 1"},
    };
    for (const auto& damage : damages) {
        database().execute("SAVEPOINT damage");
        database().execute(std::string("UPDATE history SET ") + damage.sql);
        EXPECT_EQ(refusal().kind, ErrorKind::Damaged) << damage.how;
        const auto faults = findFaults(database());
        ASSERT_THAT(faults, testing::SizeIs(1)) << damage.how;
        EXPECT_EQ(faults.front().row, (RowAt{"history", newest().value})) << damage.how;
        database().execute("ROLLBACK TO damage; RELEASE damage");
    }
    EXPECT_THAT(names(), ElementsAre("A"));
    EXPECT_THAT(findFaults(database()), IsEmpty());
    EXPECT_TRUE(history().undo());
}

TEST_F(HistoryTest, RefusesAnEntryOfASchemaWithOtherTables)
{
    addRack(database(), "A");
    for (const int schema : {kOldestAlikeSchema - 1, migrations().back().version + 1}) {
        database().execute("UPDATE history SET schema_version = " + std::to_string(schema));
        EXPECT_EQ(refusal().kind, ErrorKind::NewerVersion) << schema;
    }
}

TEST_F(HistoryTest, NeverGivesTheIdOfARowThatWasTakenBack)
{
    const StoredRack first = addRack(database(), "A");
    ASSERT_TRUE(history().undo());
    reopen();
    EXPECT_GT(addRack(database(), "B").id, first.id);
}

TEST_F(HistoryTest, UndoesManyRowsAsOne)
{
    recorded(database(), "rack.many", [&] {
        for (int i = 0; i < 2000; ++i) {
            StoredRack rack;
            rack.position = i;
            insertRow(database(), rack);
        }
    });
    ASSERT_TRUE(history().undo());
    EXPECT_THAT(names(), IsEmpty());
    ASSERT_TRUE(history().redo());
    EXPECT_EQ(names().size(), 2000u);
}

} // namespace
} // namespace plumule
