#include "core/journal/check/journal_check.h"

#include "core/journal/check/check_reason.h"
#include "core/journal/check/stored_words.h"
#include "core/storage/cell_bounds.h"
#include "core/storage/fault_reason.h"
#include "core/storage/faults.h"
#include "tests/core/journal/ledger/full_journal.h"
#include "tests/support/enumerators.h"

#include <gmock/gmock.h>
#include <set>
#include <sqlite3.h>

namespace plumule {
namespace {

// One fault of a kind, planted by another program.
struct Planted
{
    Reason reason;
    const char* table; // of the row that is named; empty: none is
    const char* sql;
};

const Planted kPlanted[] = {
    {FaultReason::Dangling, "bowl",
     "UPDATE bowl SET harvest_id = 424242 WHERE id = (SELECT max(id) FROM bowl)"},
    {FaultReason::CellValue, "harvest", "UPDATE harvest SET net_mg = -1"},
    {FaultReason::CellValue, "medium", "UPDATE medium SET marker = 24"},
    {FaultReason::CellWord, "tray_stage", "UPDATE tray_stage SET stage = 'limbo'"},
    {FaultReason::CellWord, "season", "INSERT INTO season VALUES (1, 'x', '2026-01-01', 3, 'joy')"},
    {FaultReason::ChangesetDamaged, "history", "UPDATE history SET changeset_crc = 1"},
    {FaultReason::IdsRunOut, "copy", "UPDATE copy SET next_counter = 2"},
    {CheckReason::TwoTraysOnAPlace, "",
     "UPDATE stay SET place_id = (SELECT max(place_id) FROM stay WHERE to_on IS NULL) WHERE id = "
     "(SELECT min(id) FROM stay WHERE to_on IS NULL)"},
    {CheckReason::TrayAtTwoPlaces, "",
     "INSERT INTO stay SELECT 1, tray_id, (SELECT min(id) FROM place WHERE id NOT IN (SELECT "
     "place_id FROM stay WHERE to_on IS NULL)), from_on, from_minute, NULL, NULL FROM stay WHERE "
     "to_on IS NULL LIMIT 1"},
    {CheckReason::EndedTrayStands, "",
     "UPDATE tray SET state = 'discarded', ended_on = '2026-03-12' WHERE id = (SELECT tray_id FROM "
     "stay WHERE to_on IS NULL LIMIT 1)"},
    {CheckReason::TwoTraysOnAPiece, "",
     "UPDATE tray SET state = 'growing', ended_on = NULL, piece_id = (SELECT min(id) FROM piece)"},
    {CheckReason::RetiredPieceInUse, "",
     "UPDATE piece SET retired_on = '2026-03-03' WHERE id IN (SELECT piece_id FROM tray WHERE "
     "state "
     "= 'growing')"},
    {CheckReason::PieceNotSanitised, "",
     "UPDATE tray SET state = 'growing', ended_on = NULL, piece_id = (SELECT piece_id FROM tray "
     "WHERE piece_id IS NOT NULL AND state = 'harvested' LIMIT 1) WHERE id = (SELECT id FROM tray "
     "WHERE state = 'growing' LIMIT 1); DELETE FROM sanitising"},
    {CheckReason::NameTwice, "", "UPDATE rack SET name = 'A'"},
    {CheckReason::NumberTwice, "", "UPDATE place SET number = 1"},
    {CheckReason::GrowsAfterLastCut, "",
     "UPDATE tray SET state = 'growing', ended_on = NULL WHERE state = 'harvested'"},
    {CheckReason::NoLastCut, "", "UPDATE harvest SET is_last = 0"},
    {CheckReason::StagesOutOfOrder, "",
     "UPDATE tray_stage SET started_on = NULL WHERE position = "
     "(SELECT min(position) FROM tray_stage)"},
    {CheckReason::TickedTwice, "",
     "INSERT INTO watering SELECT 1, tray_id, on_date, slot, minute, method, water, amount_ul FROM "
     "watering WHERE id NOT IN (SELECT watering_id FROM watering_between) LIMIT 1"},
    {CheckReason::PriceTwice, "",
     "INSERT INTO price SELECT 1, item, medium_id, from_date, amount FROM price LIMIT 1"},
    {CheckReason::StayEndsBeforeIt, "stay",
     "UPDATE stay SET to_on = '2026-01-01', to_minute = 0 WHERE id = (SELECT max(id) FROM stay)"},
    {CheckReason::BeforeSowing, "harvest", "UPDATE harvest SET on_date = '2026-01-01'"},
    {CheckReason::BeforeSowing, "residue", "UPDATE residue SET on_date = '2026-01-01'"},
    {CheckReason::BeforeSowing, "tray",
     "UPDATE tray SET ended_on = '2026-01-01' WHERE ended_on IS NOT NULL"},
    {CheckReason::EndUnknown, "tray", "UPDATE tray SET ended_on = NULL"},
    {CheckReason::GrowsThoughEnded, "tray", "UPDATE tray SET ended_on = '2026-03-30'"},
    {CheckReason::PieceOfOtherMedium, "tray",
     "UPDATE piece SET medium_id = (SELECT min(id) FROM medium WHERE id NOT IN (SELECT medium_id "
     "FROM piece))"},
    {CheckReason::LotOfOtherVariety, "tray",
     "UPDATE seed_lot SET variety_id = (SELECT min(id) FROM variety)"},
    {CheckReason::ServingOfOtherTasting, "serving",
     "UPDATE serving SET taster_id = (SELECT min(id) FROM taster)"},
    {CheckReason::ScoreOfOtherTasting, "score",
     "UPDATE score SET attribute_id = (SELECT min(id) FROM panel_attribute)"},
    {CheckReason::NetIsNotItsBowls, "harvest", "UPDATE harvest SET net_mg = net_mg + 1"},
    {CheckReason::NoRoom, "room", "DELETE FROM room"},
};

// Texts that a grower writes as he likes.
const std::set<std::string> kWritten = {"name",
                                        "currency",
                                        "code_prefix",
                                        "source",
                                        "note",
                                        "lot_number",
                                        "supplier",
                                        "reason",
                                        "cue",
                                        "code",
                                        "question",
                                        "text",
                                        "file_name",
                                        "caption",
                                        "concentrate",
                                        "discard_reason",
                                        "set_aside_reason",
                                        "sown_by",
                                        "done_by",
                                        "customer",
                                        "table_name"};

class JournalCheckTest : public FullJournalTest
{
protected:
    // On a copy of the journal.
    std::vector<Error> faultsWith(const std::string& sql)
    {
        const auto copy = folder.path() / "planted.plumule";
        std::filesystem::copy_file(path(), copy, std::filesystem::copy_options::overwrite_existing);
        sqlite3* other = nullptr;
        EXPECT_EQ(sqlite3_open(copy.c_str(), &other), SQLITE_OK);
        EXPECT_EQ(sqlite3_exec(other, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
            << sql << ": " << sqlite3_errmsg(other);
        sqlite3_close(other);
        auto opened = Journal::open(copy, clock, Access::ReadOnly);
        EXPECT_TRUE(opened) << told(opened.error());
        return (*opened)->faults().value();
    }
};

TEST_F(JournalCheckTest, FindsEachPlantedFaultAndNothingBefore)
{
    EXPECT_THAT(journal->faults().value(), testing::IsEmpty());
    journal.reset(); // one whole file
    for (const Planted& planted : kPlanted) {
        SCOPED_TRACE(planted.sql);
        const auto found = faultsWith(planted.sql);
        const auto as = std::find_if(found.begin(), found.end(), [&](const Error& fault) {
            return fault.reason == planted.reason &&
                   (fault.row ? fault.row->table : std::string()) == planted.table;
        });
        ASSERT_NE(as, found.end()) << found.size() << " others were found";
        EXPECT_EQ(as->kind, ErrorKind::Damaged);
        EXPECT_FALSE(as->values.empty() && !as->row) << "it names nothing";
    }
}

TEST_F(JournalCheckTest, HasAPlantedFaultOfEachKind)
{
    std::set<int> planted;
    for (const Planted& each : kPlanted) {
        if (const auto reason = each.reason.as<CheckReason>()) {
            planted.insert(static_cast<int>(*reason));
        }
    }
    EXPECT_EQ(planted.size(), enumeratorsOf<CheckReason>().size());
}

TEST_F(JournalCheckTest, NamesAPairOfTraysOnce)
{
    journal.reset();
    const auto found = faultsWith(kPlanted[7].sql);
    EXPECT_EQ(
        std::count_if(found.begin(), found.end(),
                      [](const Error& fault) { return fault.is(CheckReason::TwoTraysOnAPlace); }),
        1);
}

// A column with words of its own that is not in the list would never be checked.
TEST_F(JournalCheckTest, KnowsEveryColumnThatHoldsOneOfAFewWords)
{
    Database database(path(), Access::ReadOnly);
    for (const std::string& table : trackedTablesOf(database)) {
        for (const DeclaredColumn& column : declaredColumnsOf(database, table)) {
            const std::string& name = column.info.name;
            const bool isDay = boundsFault(name, std::string("no day")) == BoundsReason::Day;
            const bool isFree =
                kWritten.contains(name) || (table == "sanitising" && name == "method");
            if (column.info.type != "TEXT" || isDay || isFree) {
                continue;
            }
            EXPECT_TRUE(std::any_of(
                wordColumns().begin(), wordColumns().end(),
                [&](const WordColumn& each) { return each.table == table && each.column == name; }))
                << table << "." << name;
        }
    }
    for (const WordColumn& each : wordColumns()) {
        EXPECT_TRUE(each.isWord(each.first)) << each.table << "." << each.column;
        EXPECT_FALSE(each.isWord("no such word")) << each.table << "." << each.column;
    }
}

} // namespace
} // namespace plumule
