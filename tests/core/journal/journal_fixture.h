#pragma once

#include "core/journal/journal.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/storage/database.h"
#include "tests/support/told.h"

#include <filesystem>
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <random>

namespace plumule {

// A folder of its own for one test, removed afterwards.
class TemporaryFolder
{
public:
    TemporaryFolder()
        : m_path(std::filesystem::temp_directory_path() /
                 ("plumule-test-" + std::to_string(std::random_device{}()) + "-" +
                  std::to_string(std::random_device{}())))
    {
        std::filesystem::create_directories(m_path);
    }
    ~TemporaryFolder()
    {
        std::error_code ignored;
        std::filesystem::remove_all(m_path, ignored);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }

private:
    std::filesystem::path m_path;
};

// Every table but history and the id counter, row by row, as text: what undo and redo must bring
// back exactly.
inline std::string dumpOf(Database& database)
{
    std::vector<std::string> tables;
    {
        Statement statement = database.prepare(
            "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND "
            "name NOT IN ('history', 'copy') ORDER BY name");
        while (statement.step()) {
            tables.push_back(statement.get<std::string>(0));
        }
    }
    std::string dump;
    for (const std::string& table : tables) {
        std::string quoted;
        Statement columns = database.prepare("SELECT name FROM pragma_table_info(?1)");
        columns.bind(table);
        while (columns.step()) {
            quoted += (quoted.empty() ? "quote(" : " || ',' || quote(") +
                      columns.get<std::string>(0) + ")";
        }
        Statement rows = database.prepare("SELECT " + quoted + " FROM " + table + " ORDER BY id");
        while (rows.step()) {
            dump += table + ": " + rows.get<std::string>(0) + "\n";
        }
    }
    return dump;
}

inline std::string dumpOf(const std::filesystem::path& journal)
{
    Database database(journal, Access::ReadOnly);
    return dumpOf(database);
}

// A new journal in a folder of its own: one rack of `plan()`, the starter library, and a clock that
// stands at 2026-03-02 07:30.
class JournalTest : public ::testing::Test
{
protected:
    void SetUp() override { createJournal(smallRoom()); }

    static RoomPlan smallRoom()
    {
        RoomPlan plan;
        plan.room.name = "Test room";
        plan.racks = 2;
        plan.shelvesPerRack = 2;
        plan.placesPerShelf = 3;
        return plan;
    }

    void createJournal(const RoomPlan& plan)
    {
        auto created = Journal::create(path(), plan, clock);
        ASSERT_TRUE(created) << told(created.error());
        journal = std::move(*created);
    }

    // Closes the journal and opens it again, as a restart does.
    void reopen()
    {
        journal.reset();
        auto opened = Journal::open(path(), clock);
        ASSERT_TRUE(opened) << told(opened.error());
        journal = std::move(*opened);
    }

    [[nodiscard]] std::filesystem::path path() const { return folder.path() / "room.plumule"; }
    [[nodiscard]] std::string dump() const { return dumpOf(path()); }

    // The starter library's; the test fails where it has none of that name.
    VarietyId varietyNamed(const std::string& name)
    {
        return idNamed<VarietyId>(journal->varieties().all().value(), name);
    }
    MediumId mediumNamed(const std::string& name)
    {
        return idNamed<MediumId>(journal->media().all().value(), name);
    }

    // Runs `intention`, which must succeed and change the journal, then takes it back and does it
    // again, also across a restart, and compares the tables each time.
    template <class Act>
    void expectUndoable(Act intention)
    {
        const std::string before = dump();
        const auto answer = intention();
        ASSERT_TRUE(answer) << told(answer.error());
        const std::string after = dump();
        EXPECT_NE(before, after) << "the intention changed nothing";
        ASSERT_TRUE(journal->undo());
        EXPECT_EQ(before, dump());
        reopen();
        ASSERT_TRUE(journal->redo());
        EXPECT_EQ(after, dump());
        ASSERT_TRUE(journal->undo());
        EXPECT_EQ(before, dump());
        ASSERT_TRUE(journal->redo());
        EXPECT_EQ(after, dump());
    }

    // For an intention that must be refused and leave the tables alone.
    template <class Act>
    void expectRefused(ErrorKind kind, Reason reason, Act intention)
    {
        const std::string before = dump();
        const auto answer = intention();
        ASSERT_FALSE(answer) << "it was not refused";
        EXPECT_EQ(static_cast<int>(answer.error().kind), static_cast<int>(kind));
        EXPECT_EQ(answer.error().reason, reason) << told(answer.error());
        EXPECT_EQ(before, dump());
    }

    TemporaryFolder folder;
    FixedClock clock{{date(2026, 3, 2), 7 * 60 + 30}};
    std::unique_ptr<Journal> journal;

private:
    template <class Key, class Rows>
    static Key idNamed(const Rows& rows, const std::string& name)
    {
        for (const auto& row : rows) {
            if (row.name == name) {
                return row.id;
            }
        }
        ADD_FAILURE() << "the starter library has no " << name;
        return {};
    }
};

} // namespace plumule
