#include "core/storage/faults.h"

#include "core/storage/checksum.h"
#include "tests/core/storage/scratch.h"

#include <fstream>
#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;

class FaultsTest : public testing::Test
{
protected:
    void SetUp() override
    {
        auto file = newJournal(path);
        rack = addRack(*file.database, "A");
        renameRack(*file.database, rack, "B");
    }
    void alter(const std::string& sql) { runOutside(path, sql); }
    std::vector<Error> faults()
    {
        Database database(path, Access::ReadOnly);
        return findFaults(database);
    }
    std::int64_t newestEntry()
    {
        Database database(path, Access::ReadOnly);
        return History(database).latest(1).at(0).id.value;
    }

    ScratchFolder folder;
    std::filesystem::path path = folder / "room.plumule";
    StoredRack rack;
};

TEST_F(FaultsTest, OfAJournalAsItIsWrittenAreNone)
{
    EXPECT_THAT(faults(), IsEmpty());
}

TEST_F(FaultsTest, NameTheRowThatPointsAtNothing)
{
    alter("INSERT INTO shelf (id, rack_id, name, position) VALUES (17, 99, 'x', 1)");
    EXPECT_THAT(faults(), ElementsAre(foundAt("shelf", 17, FaultReason::Dangling, "rack")));
}

TEST_F(FaultsTest, NameTheCellBeyondBounds)
{
    alter("UPDATE rack SET position = 2000000000");
    EXPECT_THAT(faults(), ElementsAre(foundAt("rack", rack.id.value, FaultReason::CellValue,
                                              "position", "2000000000")));
}

TEST_F(FaultsTest, NameTheCellOfAnotherTypeAndTheOneThatIsMissing)
{
    // As no strict table holds it: the schema is loosened and put back.
    const std::string begin = "PRAGMA writable_schema=ON; CREATE TABLE was AS SELECT sql FROM "
                              "sqlite_schema WHERE name = 'rack'; UPDATE sqlite_schema SET sql = "
                              "'CREATE TABLE rack (id INTEGER PRIMARY KEY, name, position)' WHERE "
                              "name = 'rack'; PRAGMA writable_schema=RESET; ";
    const std::string end = "; PRAGMA writable_schema=ON; UPDATE sqlite_schema SET sql = (SELECT "
                            "sql FROM was) WHERE name = 'rack'; DROP TABLE was; PRAGMA "
                            "writable_schema=RESET";
    alter(begin + "UPDATE rack SET position = 'second'" + end);
    EXPECT_THAT(faults(), ElementsAre(foundAt("rack", rack.id.value, FaultReason::CellValue,
                                              "position", "second")));
    alter(begin + "UPDATE rack SET position = 2, name = NULL" + end);
    EXPECT_THAT(faults(),
                ElementsAre(foundAt("rack", rack.id.value, FaultReason::CellValue, "name", "")));
}

TEST_F(FaultsTest, NameTheStepThatIsNotAsItWasWritten)
{
    alter("UPDATE history SET changeset = substr(changeset, 2)");
    EXPECT_THAT(faults(), Contains(foundAt("history", newestEntry(), FaultReason::ChangesetDamaged,
                                           newestEntry())));
}

TEST_F(FaultsTest, NameTheStepThatMakesNoSenseThoughItsChecksumFits)
{
    const std::string bytes = "no changeset";
    alter("UPDATE history SET changeset = CAST('" + bytes + "' AS BLOB), changeset_bytes = " +
          std::to_string(bytes.size()) + ", changeset_crc = " + std::to_string(checksumOf(bytes)) +
          " WHERE id = " + std::to_string(newestEntry()));
    EXPECT_THAT(faults(), ElementsAre(foundAt("history", newestEntry(),
                                              FaultReason::ChangesetSenseless, newestEntry())));
}

TEST_F(FaultsTest, FindACounterThatRunsBehindItsRows)
{
    alter("UPDATE copy SET next_counter = 1");
    EXPECT_THAT(faults(), ElementsAre(foundAt("copy", 1, FaultReason::IdsRunOut)));
    alter("DELETE FROM copy");
    EXPECT_THAT(faults(), ElementsAre(foundAt("copy", 1, FaultReason::IdsRunOut)));
}

TEST_F(FaultsTest, NameTheTableWhosePagesAreDamagedAndSearchTheRest)
{
    alter("UPDATE rack SET position = 2000000000");
    std::int64_t root = 0;
    {
        Database database(path, Access::ReadOnly);
        root = database.scalar("SELECT rootpage FROM sqlite_schema WHERE name = 'history'");
    }
    {
        std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
        file.seekp((root - 1) * 4096);
        file << std::string(4096, '\x55');
    }
    const auto found = faults();
    EXPECT_THAT(found, Contains(foundAt("history", 0, FaultReason::TablePages)));
    EXPECT_THAT(found, Contains(foundAt("rack", rack.id.value, FaultReason::CellValue, "position",
                                        "2000000000")));
}

} // namespace
} // namespace plumule
