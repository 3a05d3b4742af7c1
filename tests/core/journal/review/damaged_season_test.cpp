#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/season_asks.h"

#include <gmock/gmock.h>
#include <sqlite3.h>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

// Three trays of 300, 310 and 320 g; then a row of the second, RD002, holds what can't be read.
class DamagedSeasonTest : public JournalTest
{
protected:
    void SetUp() override
    {
        JournalTest::SetUp();
        SowingDraft draft;
        draft.variety = varietyNamed("Radish");
        draft.medium = mediumNamed("Coir mix");
        draft.at = {sown, 480};
        draft.count = 3;
        trays = journal->trays().sow(draft).value();
        ASSERT_TRUE(journal->trays().noteHeight(trays[1], millimetres(60), ReadFrom::Surface,
                                                {sown + 9, 540}));
        for (std::size_t i = 0; i < trays.size(); ++i) {
            weigh(trays[i], 300 + 10 * static_cast<double>(i));
        }
    }
    void weigh(TrayId tray, double net)
    {
        WeighingDraft draft;
        draft.tray = tray;
        draft.bowls = {{grams(net + 10), grams(10)}};
        draft.at = {sown + 10, 600};
        draft.isLast = true;
        draft.accepted = {Doubt::DecimalSlip,     Doubt::OutsideExpected, Doubt::AlreadyWeighed,
                          Doubt::UnstableReading, Doubt::TareForgotten,   Doubt::NotDueYet};
        ASSERT_TRUE(journal->harvests().record(draft));
    }

    // As another program would write it, then opened to read. “$” stands for the second tray.
    void damage(std::string sql)
    {
        journal.reset();
        sqlite3* other = nullptr;
        ASSERT_EQ(sqlite3_open(path().c_str(), &other), SQLITE_OK);
        sql.replace(sql.find('$'), 1, std::to_string(trays[1].value));
        EXPECT_EQ(sqlite3_exec(other, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
            << sqlite3_errmsg(other);
        sqlite3_close(other);
        journal = Journal::open(path(), clock, Access::ReadOnly).value();
    }
    [[nodiscard]] Result<SeasonReview> review()
    {
        SeasonFilter filter;
        filter.from = sown;
        filter.to = sown + 30;
        return reviewIn(*journal, filter);
    }
    void expectTheOthers()
    {
        const auto season = review();
        ASSERT_TRUE(season) << told(season.error());
        ASSERT_EQ(season->media.size(), 1U);
        std::vector<double> yields;
        for (const SeasonTray& tray : season->media.front().trays) {
            yields.push_back(tray.yieldGrams);
        }
        EXPECT_THAT(yields, ElementsAre(300, 320));
        ASSERT_EQ(season->leftOut.size(), 1U);
        EXPECT_EQ(season->leftOut.front().why, LeftOut::Damaged);
        EXPECT_EQ(season->leftOut.front().tray, trays[1]);
        EXPECT_EQ(season->leftOut.front().code, "RD002");
    }

    const Date sown = date(2026, 2, 1);
    std::vector<TrayId> trays;
};

TEST_F(DamagedSeasonTest, NothingIsLeftOutOfASoundJournal)
{
    const auto season = review();
    ASSERT_TRUE(season) << told(season.error());
    EXPECT_EQ(season->trays, 3);
    EXPECT_THAT(season->leftOut, IsEmpty());
}

TEST_F(DamagedSeasonTest, CostsItsTrayWhereTheTrayItselfIsWrong)
{
    damage("UPDATE tray SET sown_on = 'no day' WHERE id = $");
    expectTheOthers();
}

TEST_F(DamagedSeasonTest, CostsItsTrayWhereItsMediumIsGone)
{
    damage("PRAGMA foreign_keys=OFF; UPDATE tray SET medium_id = 424242 WHERE id = $");
    expectTheOthers();
}

TEST_F(DamagedSeasonTest, CostsItsTrayWhereACutIsWrong)
{
    damage("UPDATE harvest SET on_date = '2026-02-31' WHERE tray_id = $");
    expectTheOthers();
}

TEST_F(DamagedSeasonTest, CostsItsTrayWhereAHeightIsWrong)
{
    damage("UPDATE height SET read_from = 'afar' WHERE tray_id = $");
    expectTheOthers();
}

TEST_F(DamagedSeasonTest, CostsItsTrayWhereAStageIsWrong)
{
    damage("UPDATE tray_stage SET started_on = 'no day' WHERE tray_id = $ AND stage = 'light'");
    expectTheOthers();
}

} // namespace
} // namespace plumule
