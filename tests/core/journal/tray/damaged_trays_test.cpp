#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include <gmock/gmock.h>
#include <sqlite3.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::UnorderedElementsAre;

// Three trays of which the second, RD002, has a cell that can't be read.
class DamagedTraysTest : public JournalTest
{
protected:
    void SetUp() override
    {
        JournalTest::SetUp();
        SowingDraft draft;
        draft.variety = varietyNamed("Radish");
        draft.medium = mediumNamed("Coir mix");
        draft.at = clock.now();
        draft.count = 3;
        const auto free = journal->room().freeSpots().value();
        for (const Spot& spot : free) {
            if (draft.places.size() < 3) {
                draft.places.push_back(spot.place);
            }
        }
        const auto sown = journal->trays().sow(draft);
        ASSERT_TRUE(sown) << told(sown.error());
        trays = *sown;
        ASSERT_TRUE(journal->watering().giveBetween(
            {trays, WateringMethod::Mist, WaterKind::Plain, millilitres(50), clock.now()}));
    }

    // As another program would write it, then opened to read.
    void damage(const std::string& sql)
    {
        journal.reset();
        sqlite3* other = nullptr;
        ASSERT_EQ(sqlite3_open(path().c_str(), &other), SQLITE_OK);
        const std::string of = " = " + std::to_string(trays[1].value);
        std::string whole = sql;
        whole.replace(whole.find('$'), 1, of);
        EXPECT_EQ(sqlite3_exec(other, whole.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
            << sqlite3_errmsg(other);
        sqlite3_close(other);
        journal = Journal::open(path(), clock, Access::ReadOnly).value();
    }

    void expectTheOthersOnBothPages()
    {
        const auto listing = journal->trays().listing({});
        ASSERT_TRUE(listing) << told(listing.error());
        std::vector<std::string> codes;
        for (const TrayListRow& row : listing->rows) {
            codes.push_back(row.record.tray.code);
        }
        EXPECT_THAT(codes, UnorderedElementsAre("RD001", "RD003"));
        EXPECT_THAT(listing->damaged, ElementsAre(DamagedTray{trays[1], "RD002"}));
        const auto round = journal->watering().roundNow();
        ASSERT_TRUE(round) << told(round.error());
        EXPECT_THAT(round->damaged, ElementsAre(DamagedTray{trays[1], "RD002"}));
    }

    std::vector<TrayId> trays;
};

TEST_F(DamagedTraysTest, AreNoneInASoundJournal)
{
    EXPECT_THAT(journal->trays().listing({})->damaged, IsEmpty());
    EXPECT_EQ(journal->trays().listing({})->rows.size(), 3U);
    EXPECT_THAT(journal->watering().roundNow()->damaged, IsEmpty());
}

TEST_F(DamagedTraysTest, CostTheirOwnLineWhereTheTrayItselfIsWrong)
{
    damage("UPDATE tray SET sown_on = 'no day' WHERE id $");
    expectTheOthersOnBothPages();
}

TEST_F(DamagedTraysTest, CostTheirOwnLineWhereAStageIsWrong)
{
    damage("UPDATE tray_stage SET stage = 'limbo' WHERE tray_id $");
    expectTheOthersOnBothPages();
    // What is asked of that tray alone is refused, with its row.
    const auto sheet = journal->trays().sheet(trays[1]);
    ASSERT_FALSE(sheet);
    EXPECT_EQ(sheet.error().row->table, "tray_stage");
    EXPECT_TRUE(journal->trays().sheet(trays[0]));
}

TEST_F(DamagedTraysTest, CostTheirOwnLineWhereAStayIsWrong)
{
    damage("UPDATE stay SET from_on = 'no day' WHERE tray_id $");
    expectTheOthersOnBothPages();
}

TEST_F(DamagedTraysTest, AreLeftOutOfTheRoundWhereAWateringIsWrong)
{
    damage("UPDATE watering SET method = 'pour' WHERE tray_id $");
    const auto round = journal->watering().roundNow();
    ASSERT_TRUE(round) << told(round.error());
    EXPECT_THAT(round->damaged, ElementsAre(DamagedTray{trays[1], "RD002"}));
    EXPECT_EQ(journal->trays().listing({})->rows.size(), 3U); // which asks for no watering
}

TEST_F(DamagedTraysTest, AreTheirsWhoseMediumIsGone)
{
    damage("PRAGMA foreign_keys=OFF; UPDATE tray SET medium_id = 424242 WHERE id $");
    expectTheOthersOnBothPages();
}

} // namespace
} // namespace plumule
