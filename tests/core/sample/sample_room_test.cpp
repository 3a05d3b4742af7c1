#include "core/journal/climate/climate_entries.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/season_asks.h"

#include "core/trial/draw.h"
#include "tests/support/told.h"

#include <ctime>
#include <fstream>
#include <gmock/gmock.h>

namespace plumule {
namespace {

using ::testing::Ge;
using ::testing::IsEmpty;
using ::testing::Le;

// The invented room of sample-data/, filled at noon unless said.
class SampleRoomTest : public JournalTest
{
protected:
    void fillAt(int minute)
    {
        clock.set({date(2026, 3, 12), minute});
        const Done filled = journal->exchange().fillWithSample(PLUMULE_SAMPLE_DATA);
        ASSERT_TRUE(filled) << told(filled.error());
    }
    std::vector<TrayListRow> trays(const TrayFilter& filter = {})
    {
        return journal->trays().list(filter).value();
    }
    int countIn(TrayState state)
    {
        TrayFilter filter;
        filter.state = state;
        return static_cast<int>(trays(filter).size());
    }
};

constexpr int kNoon = 12 * 60;
constexpr int kAfternoon = 15 * 60;

TEST_F(SampleRoomTest, HoldsTheRoomThatItPromises)
{
    fillAt(kNoon);
    const RoomLayout layout = journal->room().layout().value();
    EXPECT_EQ(layout.room.name, "Potter's Row grow room");
    EXPECT_EQ(layout.racks.size(), 2U);
    EXPECT_EQ(layout.shelves.size(), 8U);
    EXPECT_EQ(layout.places.size(), 32U);
    EXPECT_EQ(journal->varieties().all(Listed::All).value().size(), 5U);
    EXPECT_EQ(journal->media().all(Listed::All).value().size(), 4U);
    EXPECT_EQ(journal->trials().all().value().size(), 10U);
    EXPECT_NEAR(static_cast<double>(trays().size()), 300, 20);
    EXPECT_THAT(countIn(TrayState::Growing), testing::AllOf(Ge(24), Le(30)));
    EXPECT_EQ(countIn(TrayState::Discarded), 2);
    EXPECT_THAT(journal->faults().value(), IsEmpty());
}

TEST_F(SampleRoomTest, HasATrialPlannedAndOneGrowingWhereItWasDrawn)
{
    fillAt(kNoon);
    const auto rows = journal->trials().list().value();
    ASSERT_EQ(rows[0].trial.code, "T10");
    EXPECT_EQ(rows[0].state, TrialState::Planned);
    const TrialDraft planned = journal->trials().draft(rows[0].trial.id).value();
    EXPECT_TRUE(checkLayout(planned));
    EXPECT_FALSE(planned.isSown());
    EXPECT_EQ(journal->trials().draw(planned).value().size(), planned.trays.size());
    EXPECT_TRUE(journal->review().plan(planned)->outlook);
    ASSERT_EQ(rows[1].trial.code, "T9");
    EXPECT_EQ(rows[1].state, TrialState::Growing);
    const TrialProgress growing = journal->trials().progress(rows[1].trial.id).value();
    ASSERT_TRUE(growing.draft);
    EXPECT_TRUE(checkLayout(*growing.draft));
    // The number of its plan draws where its trays stand, from shelves A1 to A3 when they were
    // free.
    TrialDraft again = *growing.draft;
    std::vector<FreeShelf> shelves;
    const RoomLayout room = journal->room().layout().value();
    for (const Spot& spot : room.spots()) {
        if (shelves.empty() || shelves.back().shelf != spot.shelfId) {
            shelves.push_back({spot.shelfId, {}});
        }
        shelves.back().places.push_back({spot.place, spot.shelfId, spot.number});
    }
    again.trays = drawLayout(again, shelves).value();
    ASSERT_EQ(again.trays.size(), growing.draft->trays.size());
    for (std::size_t i = 0; i < again.trays.size(); ++i) {
        EXPECT_EQ(again.trays[i].treatment, growing.draft->trays[i].treatment) << i;
        EXPECT_EQ(again.trays[i].place, growing.draft->trays[i].place) << i;
    }
}

TEST_F(SampleRoomTest, HasClimateBesideItsTrays)
{
    fillAt(kNoon);
    const auto told = journal->climate().days(clock.today() - 200, clock.today()).value();
    ASSERT_EQ(told.size(), 2U);
    EXPECT_EQ(told[0].logger.name, "Clip");
    EXPECT_TRUE(told[0].logger.shelf);
    EXPECT_EQ(told[1].days.size(), 129U);
    EXPECT_EQ(told[1].days.back().hours, 12); // up to noon
    EXPECT_FALSE(told[1].days.back().temperature);
    const ClimateDay& yesterday = *(told[0].days.end() - 2);
    EXPECT_NEAR(*yesterday.dli, 178 * 14 * 0.0036, 0.5);
    EXPECT_NEAR(yesterday.temperature->mean, 21.9, 1.5);
    EXPECT_NEAR(*yesterday.vpd, 1.05, 0.3);
}

TEST_F(SampleRoomTest, LeavesSomethingToDoToday)
{
    fillAt(kNoon);
    const WeighIn scale = journal->harvests().weighIn(clock.today()).value();
    EXPECT_EQ(scale.due.size(), 4U);
    EXPECT_EQ(scale.done.size(), 4U);
    const TrayAtScale first = journal->harvests().atScale(scale.due.front().code).value();
    EXPECT_THAT(first.facts.lastTares,
                testing::AllOf(testing::Not(testing::IsEmpty()), testing::Each(grams(42))));
    const Round round = journal->watering().round(clock.today(), Slot::Morning).value();
    EXPECT_GE(round.decisions.size(), 4U);
    EXPECT_GT(round.doneCount(), 0);
    EXPECT_LT(round.doneCount(), static_cast<int>(round.trays.size()));
    EXPECT_GT(round.tomorrow.harvests, 0);
}

TEST_F(SampleRoomTest, TicksTheFirstShelfOfThePresentRoundAndAllOfTheRoundsBefore)
{
    fillAt(kAfternoon);
    const Round morning = journal->watering().round(clock.today(), Slot::Morning).value();
    // One miss of that morning is in the table; what was due to be cut is not watered.
    EXPECT_EQ(morning.doneCount(), static_cast<int>(morning.trays.size()) - 1);
    const Round evening = journal->watering().roundNow().value();
    EXPECT_EQ(evening.slot, Slot::Evening);
    std::set<ShelfId> ticked;
    for (const RoundTray& tray : evening.trays) {
        if (tray.isDone()) {
            ticked.insert(tray.spot.value().shelfId);
        }
    }
    ASSERT_EQ(ticked.size(), 1U);
    EXPECT_EQ(*ticked.begin(), evening.trays.front().spot.value().shelfId);
}

TEST_F(SampleRoomTest, PutsNothingLaterThanNow)
{
    fillAt(6 * 60 + 30);
    const Moment now = clock.now();
    for (const TrayListRow& row : trays()) {
        const TraySheet sheet = journal->trays().sheet(row.record.tray.id).value();
        for (const Watering& watering : sheet.waterings) {
            EXPECT_LE((Moment{watering.on, watering.minute}), now) << row.record.tray.code;
        }
        for (const Harvest& harvest : sheet.harvests) {
            EXPECT_LE((Moment{harvest.on, harvest.minute}), now) << row.record.tray.code;
        }
        for (const TrayStage& stage : sheet.record.stages) {
            EXPECT_LE(stage.started().value_or(now), now) << row.record.tray.code;
        }
    }
    EXPECT_GT(journal->watering().roundNow().value().doneCount(), 0);
}

TEST_F(SampleRoomTest, NeverPutsTwoTraysOnOnePlaceOrAPieceUnderTwo)
{
    fillAt(kNoon);
    std::map<PlaceId, std::vector<std::pair<Moment, Moment>>> onPlace;
    std::map<PieceId, std::vector<std::pair<Moment, Moment>>> onPiece;
    const Moment forever{date(2100, 1, 1), 0};
    for (const TrayListRow& row : trays()) {
        const Tray& tray = row.record.tray;
        const Moment end =
            tray.endedOn ? Moment{*tray.endedOn, tray.endedMinute.value_or(0)} : forever;
        if (row.record.place) {
            onPlace[*row.record.place].emplace_back(tray.sownAt(), end);
        }
        if (tray.piece) {
            onPiece[*tray.piece].emplace_back(tray.sownAt(), end);
        }
    }
    const auto expectApart = [](auto& spans) {
        for (auto& [id, list] : spans) {
            std::sort(list.begin(), list.end());
            for (std::size_t i = 1; i < list.size(); ++i) {
                EXPECT_LE(list[i - 1].second, list[i].first) << id.value;
            }
        }
    };
    EXPECT_EQ(onPlace.size(), 32U);
    EXPECT_GE(onPiece.size(), 8U);
    expectApart(onPlace);
    expectApart(onPiece);
}

TEST_F(SampleRoomTest, SowsNoMoreSeedThanWasBought)
{
    fillAt(kNoon);
    const auto lots = journal->varieties().lots(std::nullopt, Listed::All).value();
    EXPECT_GE(lots.size(), 10U);
    for (const SeedLotStock& stock : lots) {
        ASSERT_TRUE(stock.left) << stock.lot.lotNumber;
        EXPECT_GE(*stock.left, Mass{}) << stock.lot.lotNumber;
        EXPECT_GT(stock.sown, Mass{}) << stock.lot.lotNumber;
    }
}

TEST_F(SampleRoomTest, GivesTheScaleARangeAndTheSeasonAnAnswer)
{
    fillAt(kNoon);
    const WeighIn scale = journal->harvests().weighIn(clock.today()).value();
    ASSERT_THAT(scale.due, testing::Not(IsEmpty()));
    for (const DueRow& row : scale.due) {
        const ExpectedRange range = journal->harvests().atScale(row.code).value().facts.expected;
        EXPECT_GE(range.past.size(), 3U) << row.code;
        EXPECT_NE(range.from, RangeSource::Library) << row.code;
        EXPECT_GT(*range.low, grams(150)) << row.code;
        EXPECT_LT(*range.high, grams(450)) << row.code;
    }
    const auto season = reviewIn(*journal, journal->review().usualSeason());
    ASSERT_TRUE(season);
    EXPECT_EQ(season->media.size(), 4U);
    for (const MediumSeason& medium : season->media) {
        EXPECT_GE(medium.yield.n, 15) << medium.medium.name;
        EXPECT_TRUE(medium.costPerGram) << medium.medium.name;
        EXPECT_FALSE(medium.heights.empty()) << medium.medium.name;
    }
}

TEST_F(SampleRoomTest, IsTheSameEachTimeItIsFilled)
{
    fillAt(kNoon);
    const std::string first = dump();
    TemporaryFolder other;
    auto second = Journal::create(other.path() / "second.plumule", smallRoom(), clock);
    ASSERT_TRUE((*second)->exchange().fillWithSample(PLUMULE_SAMPLE_DATA));
    EXPECT_EQ((*second)->exchange().traysAsCsv().value(), journal->exchange().traysAsCsv().value());
    second->reset();
    const std::string again = dumpOf(other.path() / "second.plumule");
    EXPECT_EQ(std::count(again.begin(), again.end(), '\n'),
              std::count(first.begin(), first.end(), '\n'));
}

TEST_F(SampleRoomTest, IsTheBeginningAndNothingToTakeBack)
{
    fillAt(kNoon);
    EXPECT_FALSE(journal->nextUndo());
    const Done again = journal->exchange().fillWithSample(PLUMULE_SAMPLE_DATA);
    ASSERT_FALSE(again);
    EXPECT_EQ(again.error().kind, ErrorKind::Conflict);
}

// Of the processor, so that a busy machine does not decide it.
TEST_F(SampleRoomTest, IsFilledInLessThanTwoSeconds)
{
    const std::clock_t begin = std::clock();
    fillAt(kNoon);
    const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    RecordProperty("seconds", std::to_string(seconds));
    EXPECT_LT(seconds, 2.0);
}

TEST_F(SampleRoomTest, LeavesTheJournalAloneWhereATableIsWrong)
{
    const std::string before = dump();
    const auto broken = folder.path() / "tables";
    std::filesystem::copy(PLUMULE_SAMPLE_DATA, broken);
    EXPECT_EQ(journal->exchange().fillWithSample(folder.path() / "none").error().kind,
              ErrorKind::Unreadable);
    {
        std::ofstream file(broken / "harvests.csv", std::ios::app);
        file << "XX999,1,-3,09:00,300,42,yes,\n";
    }
    const Done filled = journal->exchange().fillWithSample(broken);
    ASSERT_FALSE(filled);
    EXPECT_EQ(filled.error().kind, ErrorKind::Invalid);
    ASSERT_TRUE(filled.error().row);
    EXPECT_EQ(filled.error().row->table, "harvests.csv");
    EXPECT_EQ(filled.error().values, (std::vector<std::string>{"code", "XX999"}));
    EXPECT_EQ(dump(), before);
}

} // namespace
} // namespace plumule
