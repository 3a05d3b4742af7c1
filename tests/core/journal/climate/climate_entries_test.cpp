#include "core/base/bounds_reason.h"
#include "core/climate/climate_sums.h"
#include "core/journal/climate/climate_entries.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/ledger/journal_reason.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/room/room_reason.h"
#include "tests/core/journal/journal_fixture.h"
#include "tests/support/season_asks.h"

#include <algorithm>
#include <fstream>
#include <gmock/gmock.h>

namespace plumule {
namespace {

using testing::ElementsAre;

// A logger that writes every half hour. The clock of JournalTest stands at 2026-03-02 07:30.
class ClimateEntriesTest : public JournalTest
{
protected:
    // The half hours of whole days from the 1st of February on.
    static CsvTable halfHours(int firstDay, int days, double celsius = 20, double ppfd = -1)
    {
        std::string text = ppfd < 0 ? "time,temp,rh\n" : "time,temp,rh,ppfd\n";
        for (int day = 0; day < days; ++day) {
            for (int minute = 0; minute < kMinutesPerDay; minute += 30) {
                text += fmt::format("{} {},{},60", toIso(date(2026, 2, 1) + (firstDay + day - 1)),
                                    toClockText(minute), celsius);
                text += ppfd < 0 ? "\n" : fmt::format(",{}\n", minute < 720 ? ppfd : 0);
            }
        }
        return csvFrom(text).value();
    }

    ClimateEntries& climate() { return journal->climate(); }
    [[nodiscard]] LoggerReadings readingsIn(const CsvTable& table) const
    {
        return readingsOf(table, proposedColumns(table), zone, clock.now()).value();
    }
    Result<HourMerge> foresee(const CsvTable& table, const ClimateLogger& at)
    {
        return climate().foresee(readingsIn(table), proposedColumns(table), at);
    }
    Result<LoggerOutcome> bring(const CsvTable& table, const ClimateLogger& at,
                                FaultyLines faulty = FaultyLines::Refuse)
    {
        return climate().bringIn(readingsIn(table), proposedColumns(table), at, faulty, "log.csv");
    }
    static ClimateLogger named(const std::string& name) { return {{}, name, {}, {}, {}}; }
    ClimateLogger onFirstShelf(const std::string& name)
    {
        ClimateLogger logger = named(name);
        logger.shelf = journal->room().layout()->shelves.front().id;
        return logger;
    }

    SystemZone zone;
};

TEST_F(ClimateEntriesTest, BringsAFileInAsOneActThatCanBeTakenBack)
{
    expectUndoable([&] { return bring(halfHours(1, 3), named("door")); });
    const auto entry = journal->nextUndo();
    ASSERT_TRUE(entry);
    EXPECT_EQ(entry->intention, "climate.bring_in");
    EXPECT_EQ(entry->subject, "log.csv");
    EXPECT_THAT(entry->details, ElementsAre("door", "72"));
    const auto days = climate().days(date(2026, 2, 1), date(2026, 2, 9)).value();
    ASSERT_EQ(days.size(), 1U);
    EXPECT_EQ(days[0].logger.name, "door");
    ASSERT_EQ(days[0].days.size(), 3U);
    EXPECT_EQ(days[0].days[2].temperature, (DayMean{20, 20, 20}));
    EXPECT_NEAR(*days[0].days[2].vpd, vapourPressureDeficit(20, 60), 1e-12);
    EXPECT_TRUE(journal->faults()->empty());
}

TEST_F(ClimateEntriesTest, FindsWhatAnOverlappingFileSaysAgain)
{
    ASSERT_TRUE(bring(halfHours(1, 3), named("door")));
    const HourMerge seen = foresee(halfHours(2, 4), named("door")).value();
    EXPECT_EQ(seen.same, 48);
    EXPECT_EQ(seen.added.size(), 48U);
    expectUndoable([&] { return bring(halfHours(2, 4), named("door")); });
    EXPECT_EQ(climate().days(date(2026, 2, 1), date(2026, 2, 9))->at(0).days.size(), 5U);
    expectRefused(ErrorKind::NothingThere, ClimateReason::NothingNew,
                  [&] { return bring(halfHours(1, 5), named(" door ")); });
}

TEST_F(ClimateEntriesTest, LeavesHoursThatAnotherFileTellsOtherwise)
{
    ASSERT_TRUE(bring(halfHours(1, 2), named("door")));
    const auto outcome = bring(halfHours(2, 2, 23), named("door"));
    ASSERT_TRUE(outcome);
    EXPECT_EQ(outcome->unlike, 24);
    EXPECT_EQ(outcome->added, 24);
    const auto days = climate().days(date(2026, 2, 2), date(2026, 2, 3))->at(0).days;
    EXPECT_EQ(days[0].temperature->mean, 20);
    EXPECT_EQ(days[1].temperature->mean, 23);
}

TEST_F(ClimateEntriesTest, KeepsAnEarlierFileThatALaterOneRestsOn)
{
    ASSERT_TRUE(bring(halfHours(1, 2), named("door")));
    const HistoryId first = journal->nextUndo()->id;
    ASSERT_TRUE(bring(halfHours(3, 2), named("door")));
    const std::string before = dump();
    EXPECT_FALSE(journal->undo(first)); // the logger is the later file's too
    EXPECT_EQ(before, dump());
    ASSERT_TRUE(journal->undo());
    EXPECT_TRUE(journal->undo(first));
}

TEST_F(ClimateEntriesTest, TakesALoggerAtAnotherPlaceForAnother)
{
    ASSERT_TRUE(bring(halfHours(1, 1), named("door")));
    ASSERT_TRUE(bring(halfHours(1, 1, 22), onFirstShelf("door")));
    const auto loggers = climate().loggers().value();
    ASSERT_EQ(loggers.size(), 2U);
    EXPECT_EQ(loggers[0].name, "door");
    EXPECT_EQ(loggers[1].name, "door");
    EXPECT_NE(loggers[0].shelf, loggers[1].shelf);
}

TEST_F(ClimateEntriesTest, RefusesWhatHasNoNameNoPlaceOrAnotherLight)
{
    const auto table = halfHours(1, 1, 20, 200);
    expectRefused(ErrorKind::Missing, ClimateReason::NameMissing,
                  [&] { return bring(table, named(" ")); });
    ClimateLogger nowhere = named("door");
    nowhere.shelf = ShelfId{99};
    expectRefused(ErrorKind::NotFound, ClimateReason::PlaceUnknown,
                  [&] { return bring(table, nowhere); });
    ASSERT_TRUE(bring(table, named("door")));
    LoggerColumns columns = proposedColumns(table);
    columns.lightUnit = LightUnit::Lux;
    EXPECT_TRUE(climate()
                    .foresee(readingsIn(table), columns, named("door"))
                    .error()
                    .is(ClimateReason::LightUnlike));
    // A name beyond the bounds of a journal's texts.
    expectRefused(ErrorKind::Invalid, BoundsReason::TextLength,
                  [&] { return bring(table, named(std::string(1001, 'n'))); });
}

TEST_F(ClimateEntriesTest, LeavesLinesOutOnlyWhereThatIsAgreed)
{
    CsvTable table = halfHours(1, 1);
    table.rows[4][1] = "warm";
    expectRefused(ErrorKind::Conflict, ClimateReason::LinesLeftOut,
                  [&] { return bring(table, named("door")); });
    ASSERT_TRUE(bring(table, named("door"), FaultyLines::LeaveOut));
    EXPECT_EQ(climate().days(date(2026, 2, 1), date(2026, 2, 1))->at(0).days.at(0).hours, 24);
}

TEST_F(ClimateEntriesTest, KeepsAShelfThatWasMeasured)
{
    const ShelfId shelf = journal->room().layout()->shelves.front().id;
    ASSERT_TRUE(bring(halfHours(1, 1), onFirstShelf("one")));
    EXPECT_TRUE(journal->room().removeShelf(shelf).error().is(RoomReason::ShelfInUse));
}

TEST_F(ClimateEntriesTest, MeasuresTheLightUnderAShelfsLamps)
{
    const ShelfId shelf = journal->room().layout()->shelves.front().id;
    expectUndoable([&] { return climate().setLampLight({{shelf, 180.5}}); });
    EXPECT_THAT(climate().lampLight().value(), ElementsAre(std::pair(shelf, 180.5)));
    ASSERT_TRUE(climate().setLampLight({{shelf, std::nullopt}}));
    EXPECT_TRUE(climate().lampLight()->empty());
    for (const double beyond : {-1.0, 5001.0}) {
        expectRefused(ErrorKind::Invalid, ClimateReason::PpfdBeyond, [&] {
            return climate().setLampLight({{shelf, beyond}});
        });
    }
    expectRefused(ErrorKind::NotFound, ClimateReason::PlaceUnknown, [&] {
        return climate().setLampLight({{ShelfId{99}, 10}});
    });
}

// A tray sown on the 1st of February on the first shelf, in light from the 3rd on.
class GrownClimate : public ClimateEntriesTest
{
protected:
    TrayId grow(PlaceId place)
    {
        clock.set({date(2026, 2, 1), 480});
        SowingDraft draft;
        draft.variety = journal->varieties().all().value().front().id;
        const auto media = journal->media().all().value();
        for (const Medium& medium : media) {
            draft.medium = medium.isReusable ? draft.medium : medium.id;
        }
        draft.at = clock.now();
        draft.places = {place};
        const TrayId tray = journal->trays().sow(draft).value().at(0);
        clock.set({date(2026, 2, 3), 480});
        while (true) {
            const TraySheet sheet = journal->trays().sheet(tray).value();
            if (sheet.plan.current && sheet.plan.spans[*sheet.plan.current].stage == Stage::Light) {
                break;
            }
            EXPECT_TRUE(journal->trays().moveOn(tray, clock.now()));
        }
        clock.set({date(2026, 3, 2), 450});
        return tray;
    }
    PlaceId firstPlace() { return journal->room().freeSpots()->front().place; }
};

TEST_F(GrownClimate, IsToldBesideATraysDays)
{
    const TrayId tray = grow(firstPlace());
    ASSERT_TRUE(bring(halfHours(1, 20, 20, 200), onFirstShelf("shelf")));
    ASSERT_TRUE(bring(halfHours(1, 28, 18), named("room")));
    const TrayClimate told = climate().ofTray(tray).value();
    ASSERT_EQ(told.days.size(), 30U); // to the 2nd of March
    EXPECT_FALSE(told.isEmpty());
    EXPECT_THAT(told.loggers, ElementsAre("shelf", "room"));
    EXPECT_EQ(told.days[0].temperature->mean, 20);
    EXPECT_EQ(told.days[25].temperature->mean, 18);
    EXPECT_FALSE(told.days[29].temperature);
    EXPECT_FALSE(told.days[2].dli); // came into light in the course of it
    EXPECT_NEAR(*told.days[3].dli, dailyLight(200, 12), 1e-9);
    EXPECT_NEAR(*told.growth.temperature, (20 * 20 + 8 * 18) / 28.0, 1e-9);
    EXPECT_FALSE(climate().ofTray(TrayId{99}));
}

TEST_F(GrownClimate, KnowsNothingOfARoomWithoutLoggers)
{
    const TrayClimate told = climate().ofTray(grow(firstPlace())).value();
    EXPECT_TRUE(told.isEmpty());
    EXPECT_EQ(told.growth, GrowthClimate{});
    EXPECT_TRUE(climate().ofTrial(TrialId{99})->isEmpty());
}

// Two media on a shelf each, at 20 °C the one and at 25 °C the other.
TEST_F(GrownClimate, IsHeldAgainstMediaThatGrewInAnother)
{
    std::string text = "code,variety,medium,sown,seed_g,harvested,net_g,rack,shelf,place\n";
    for (int tray = 0; tray < 6; ++tray) {
        text += fmt::format("K{},Cress,{},2026-02-02,10,2026-02-12,{},A,{},{}\n", tray,
                            tray < 3 ? "cool" : "warm", 100 + tray, tray < 3 ? 1 : 2, tray % 3 + 1);
    }
    std::ofstream(folder.path() / "trays.csv") << text;
    const auto trays = journal->exchange().preview(folder.path() / "trays.csv").value();
    ASSERT_TRUE(journal->exchange().importTrays(trays, "trays.csv"));
    const RoomLayout layout = journal->room().layout().value();
    for (const auto& [shelf, celsius] : {std::pair(0, 20.0), std::pair(1, 25.0)}) {
        ClimateLogger logger = named("clip");
        logger.shelf = layout.shelves[static_cast<std::size_t>(shelf)].id;
        ASSERT_TRUE(bring(halfHours(1, 20, celsius), logger));
    }
    SeasonFilter filter;
    filter.from = date(2026, 2, 1);
    filter.to = date(2026, 2, 28);
    const SeasonComparison answer = comparisonIn(*journal, filter).value();
    const auto warmth =
        std::find_if(answer.fairness.begin(), answer.fairness.end(),
                     [](const Finding& finding) { return finding.aspect == Aspect::Temperature; });
    ASSERT_NE(warmth, answer.fairness.end());
    EXPECT_EQ(warmth->confounding, Confounding::Fully);
    EXPECT_EQ(warmth->media.at(0).numbers, (AspectNumbers{20, 20, 20}));
    EXPECT_EQ(warmth->media.at(1).numbers, (AspectNumbers{25, 25, 25}));
}

} // namespace
} // namespace plumule
