#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include "core/tray/tray_reason.h"
#include "core/watering/watering_reason.h"

#include <chrono>
#include <map>

namespace plumule {
namespace {

class WateringEntriesTest : public JournalTest
{
protected:
    void SetUp() override
    {
        RoomPlan plan = smallRoom();
        plan.placesPerShelf = 12;
        createJournal(plan);
    }

    std::vector<TrayId> sow(int count, Moment at)
    {
        SowingDraft draft;
        draft.variety = varietyNamed("Broccoli");
        draft.medium = mediumNamed("Coir mix");
        draft.count = count;
        draft.at = at;
        const auto spots = journal->room().freeSpots().value();
        for (const Spot& spot : spots) {
            if (draft.places.size() < static_cast<std::size_t>(count)) {
                draft.places.push_back(spot.place);
            }
        }
        return journal->trays().sow(draft).value();
    }
    // Sown the day before, so that this morning's round asks for them.
    std::vector<TrayId> sowYesterday(int count)
    {
        return sow(count, clock.now() + -kMinutesPerDay);
    }

    Round now() { return journal->watering().roundNow().value(); }
};

TEST_F(WateringEntriesTest, TheRoundThatIsWalkedFollowsTheClock)
{
    sowYesterday(2);
    EXPECT_EQ(now().slot, Slot::Morning);
    EXPECT_EQ(now().trays.size(), 2u);
    clock.set({clock.today(), 17 * 60});
    EXPECT_EQ(now().slot, Slot::Evening);
    EXPECT_EQ(now().date, clock.today());
}

TEST_F(WateringEntriesTest, TicksATrayOnceWithWhatItAsksFor)
{
    const TrayId tray = sowYesterday(1).front();
    const auto tick = [&] { return journal->watering().tick(tray, clock.today(), Slot::Morning); };
    expectUndoable(tick);
    const Round round = now();
    ASSERT_EQ(round.trays.size(), 1u);
    ASSERT_TRUE(round.trays[0].given);
    EXPECT_EQ(round.trays[0].given->method, WateringMethod::Mist);
    EXPECT_EQ(round.trays[0].given->minute, clock.now().minute);
    EXPECT_EQ(round.doneCount(), 1);
    expectRefused(ErrorKind::Conflict, WateringReason::TickedAlready, tick);
    EXPECT_EQ(journal->nextUndo()->intention, "watering.tick");
    EXPECT_EQ(journal->nextUndo()->subject, "BR001");
}

TEST_F(WateringEntriesTest, RefusesATickThatIsNotAskedForOrStillAhead)
{
    const TrayId tray = sow(1, clock.now()).front();
    expectRefused(ErrorKind::Conflict, WateringReason::NotAsked,
                  [&] { return journal->watering().tick(tray, clock.today(), Slot::Morning); });
    expectRefused(ErrorKind::Conflict, WateringReason::RoundAhead,
                  [&] { return journal->watering().tick(tray, clock.today() + 1, Slot::Morning); });
    expectRefused(ErrorKind::NotFound, TrayReason::Unknown, [&] {
        return journal->watering().tick(TrayId{99}, clock.today(), Slot::Morning);
    });
}

TEST_F(WateringEntriesTest, TicksAShelfAsOneIntention)
{
    const auto trays = sowYesterday(6);
    ASSERT_TRUE(journal->watering().tick(trays[1], clock.today(), Slot::Morning));
    expectUndoable(
        [&] { return journal->watering().tickAll(trays, clock.today(), Slot::Morning); });
    EXPECT_EQ(now().doneCount(), 6);
    EXPECT_EQ(journal->nextUndo()->subject, "5");
    const auto again = journal->watering().tickAll(trays, clock.today(), Slot::Morning);
    EXPECT_TRUE(again.value().empty());
}

TEST_F(WateringEntriesTest, TakesATickOff)
{
    const TrayId tray = sowYesterday(1).front();
    expectRefused(ErrorKind::NotFound, WateringReason::NotTicked,
                  [&] { return journal->watering().untick(tray, clock.today(), Slot::Morning); });
    ASSERT_TRUE(journal->watering().tick(tray, clock.today(), Slot::Morning));
    expectUndoable([&] { return journal->watering().untick(tray, clock.today(), Slot::Morning); });
    EXPECT_EQ(now().doneCount(), 0);
}

TEST_F(WateringEntriesTest, WritesInAPastRoundAtItsOwnTime)
{
    const TrayId tray = sow(1, clock.now() + -3 * kMinutesPerDay).front();
    const auto given = journal->watering().tick(tray, clock.today() - 1, Slot::Evening).value();
    EXPECT_EQ(given.minute, 18 * 60);
    EXPECT_EQ(given.on, clock.today() - 1);
}

TEST_F(WateringEntriesTest, GivesSeveralTraysWaterBetweenRoundsAsOneActThatIsNoTick)
{
    const auto trays = sowYesterday(6);
    clock.set({clock.today(), 11 * 60 + 20});
    const BetweenDraft draft{{trays[0], trays[3]},
                             WateringMethod::Below,
                             WaterKind::PhSet,
                             millilitres(150),
                             clock.now()};
    expectUndoable([&] { return journal->watering().giveBetween(draft); });
    EXPECT_EQ(journal->nextUndo()->intention, "watering.between");
    EXPECT_EQ(now().doneCount(), 0);
    ASSERT_EQ(now().trays.at(0).between.size(), 1u);
    EXPECT_EQ(now().trays[0].between[0].amount, millilitres(150));
    EXPECT_EQ(now().trays[0].between[0].minute, 11 * 60 + 20);
    ASSERT_TRUE(journal->watering().giveBetween(draft)) << "as often as one likes";
    EXPECT_EQ(now().trays[0].between.size(), 2u);
    ASSERT_TRUE(journal->watering().tick(trays[0], clock.today(), Slot::Morning));
    EXPECT_EQ(now().doneCount(), 1);
    EXPECT_EQ(journal->trays().sheet(trays[0]).value().waterings.size(), 3u);
    expectUndoable([&] { return journal->watering().remove(now().trays[0].between[0].id); });
    EXPECT_EQ(now().trays[0].between.size(), 1u);
    ASSERT_TRUE(journal->watering().untick(trays[0], clock.today(), Slot::Morning));
    EXPECT_EQ(now().trays[0].between.size(), 1u) << "the tick alone is taken off";
}

TEST_F(WateringEntriesTest, RefusesWaterBetweenRoundsThatCanNotHaveBeenGiven)
{
    const TrayId tray = sow(1, clock.now() + -2 * kMinutesPerDay).front();
    const BetweenDraft sound{{tray}, WateringMethod::Below, WaterKind::Plain, {}, clock.now()};
    const auto refused = [&](ErrorKind kind, Reason reason, auto change) {
        BetweenDraft draft = sound;
        change(draft);
        expectRefused(kind, reason, [&] { return journal->watering().giveBetween(draft); });
    };
    refused(ErrorKind::Missing, WateringReason::NoTrayChosen,
            [](BetweenDraft& d) { d.trays.clear(); });
    refused(ErrorKind::Invalid, WateringReason::Amount,
            [](BetweenDraft& d) { d.amount = millilitres(-1); });
    refused(ErrorKind::Invalid, WateringReason::MethodMissing,
            [](BetweenDraft& d) { d.method = WateringMethod::None; });
    refused(ErrorKind::Invalid, WateringReason::TimeAhead,
            [](BetweenDraft& d) { d.at = d.at + 1; });
    refused(ErrorKind::Invalid, WateringReason::BeforeSowing,
            [](BetweenDraft& d) { d.at = d.at + -3 * kMinutesPerDay; });
    ASSERT_TRUE(journal->trays().discard(tray, "mould", clock.now()));
    refused(ErrorKind::Conflict, TrayReason::NotGrowing, [](BetweenDraft&) {});
}

TEST_F(WateringEntriesTest, ATrayWateredAsNeededIsTickedOrFoundToNeedNothing)
{
    Protocol protocol = journal->varieties().protocol(varietyNamed("Broccoli")).value();
    for (ProtocolStage& stage : protocol.stages) {
        if (stage.stage == Stage::UnderWeight) {
            stage.wateringsPerDay = 0;
        }
    }
    ASSERT_TRUE(journal->varieties().save(protocol));
    const auto trays = sowYesterday(3);
    const Date today = clock.today();
    ASSERT_EQ(now().trays.size(), 3u);
    EXPECT_TRUE(now().trays[0].isAsNeeded);
    EXPECT_TRUE(journal->watering().tickAll(trays, today, Slot::Morning).value().empty())
        << "nobody looked at them yet";
    ASSERT_TRUE(journal->watering().tick(trays[0], today, Slot::Morning));
    expectUndoable([&] { return journal->watering().needNothing(trays, today, Slot::Morning); });
    EXPECT_EQ(now().doneCount(), 3);
    EXPECT_FALSE(now().trays[0].looked);
    EXPECT_TRUE(now().trays[1].looked);
    expectRefused(ErrorKind::Conflict, WateringReason::TickedAlready,
                  [&] { return journal->watering().tick(trays[1], today, Slot::Morning); });
    expectUndoable([&] { return journal->watering().untick(trays[1], today, Slot::Morning); });
    EXPECT_EQ(now().doneCount(), 2);
}

TEST_F(WateringEntriesTest, MovesSeveralTraysOnOrPutsThemOffAsOneActOrNone)
{
    const auto trays = sow(6, clock.now() + -3 * kMinutesPerDay);
    ASSERT_EQ(now().decisions.size(), 6u);
    expectUndoable([&] { return journal->trays().notYet({trays[0], trays[1]}, 11 * 60); });
    EXPECT_EQ(now().decisions.size(), 4u);
    EXPECT_EQ(journal->nextUndo()->intention, "tray.not_yet");
    expectUndoable([&] {
        return journal->trays().moveOn({trays[2], trays[3], trays[4], trays[5]}, clock.now());
    });
    EXPECT_TRUE(now().decisions.empty());
    ASSERT_TRUE(journal->trays().discard(trays[1], "mould", clock.now()));
    expectRefused(ErrorKind::Conflict, TrayReason::NotGrowing, [&] {
        return journal->trays().moveOn({trays[0], trays[1]}, clock.now());
    });
    EXPECT_EQ(journal->trays().sheet(trays[0]).value().plan.current, 0u) << "none of them";
}

TEST_F(WateringEntriesTest, ADiscardedTrayIsNoLongerMissed)
{
    const TrayId tray = sow(1, clock.now() + -3 * kMinutesPerDay).front();
    ASSERT_EQ(now().decisions.size(), 1u);
    ASSERT_TRUE(now().trays.at(0).drought);
    ASSERT_TRUE(journal->trays().discard(tray, "mould", clock.now()));
    EXPECT_TRUE(now().trays.empty());
    EXPECT_TRUE(now().decisions.empty());
    EXPECT_EQ(now().tomorrow.freePlaces, now().tomorrow.places);
    EXPECT_EQ(journal->watering().round(clock.today() - 1, Slot::Evening).value().trays.size(), 1u);
}

TEST_F(WateringEntriesTest, NotYetMovesADecisionToTheNextRound)
{
    const TrayId tray = sow(1, clock.now() + -3 * kMinutesPerDay).front();
    ASSERT_EQ(now().decisions.size(), 1u);
    ASSERT_TRUE(journal->trays().notYet(tray, 12 * 60));
    EXPECT_TRUE(now().decisions.empty());
    clock.set({clock.today(), 18 * 60 + 5});
    ASSERT_EQ(now().decisions.size(), 1u);
    ASSERT_TRUE(journal->trays().notYet(tray, 12 * 60));
    EXPECT_TRUE(now().decisions.empty());
    clock.set({clock.today() + 1, 7 * 60});
    EXPECT_EQ(now().decisions.size(), 1u);
    ASSERT_TRUE(journal->trays().moveOn(tray, clock.now()));
    EXPECT_TRUE(now().decisions.empty());
    EXPECT_EQ(now().trays.at(0).stage, Stage::Blackout);
}

TEST_F(WateringEntriesTest, ATrayThatIsCutAgainLaterIsWateredOn)
{
    const Moment sown = clock.now() + -12 * kMinutesPerDay;
    const TrayId tray = sow(1, sown).front();
    ASSERT_TRUE(journal->trays().moveOn(tray, sown + 3 * kMinutesPerDay));
    ASSERT_TRUE(journal->trays().moveOn(tray, sown + 4 * kMinutesPerDay));
    ASSERT_EQ(now().decisions.size(), 1u);
    EXPECT_TRUE(now().trays.empty());
    WeighingDraft weighing;
    weighing.tray = tray;
    weighing.bowls = {{grams(150), grams(0)}};
    weighing.at = clock.now();
    weighing.isLast = false;
    weighing.accepted = {Doubt::TareForgotten};
    ASSERT_TRUE(journal->harvests().record(weighing));
    EXPECT_TRUE(now().decisions.empty());
    ASSERT_EQ(now().trays.size(), 1u);
    EXPECT_EQ(now().trays[0].method, WateringMethod::Below);
    EXPECT_TRUE(journal->watering().tick(tray, clock.today(), Slot::Morning));
}

TEST_F(WateringEntriesTest, APastRoundShowsThePlacesOfThatTime)
{
    const TrayId tray = sow(1, clock.now() + -3 * kMinutesPerDay).front();
    const auto spots = journal->room().layout().value().spots();
    ASSERT_TRUE(journal->trays().moveTo(tray, spots[5].place, clock.now()));
    EXPECT_EQ(now().trays.at(0).spot, spots[5]);
    const Round before = journal->watering().round(clock.today() - 1, Slot::Evening).value();
    EXPECT_EQ(before.trays.at(0).spot, spots[0]);
    ASSERT_TRUE(journal->trays().moveTo(tray, std::nullopt, clock.now() + 5));
    EXPECT_FALSE(now().trays.at(0).spot);
}

TEST_F(WateringEntriesTest, NotesReadingsOfTheMixAndOfATray)
{
    const TrayId tray = sowYesterday(1).front();
    WaterReading reading;
    reading.on = clock.today();
    reading.minute = clock.now().minute;
    reading.water = WaterKind::Plain;
    expectRefused(ErrorKind::Missing, WateringReason::ReadingMissing,
                  [&] { return journal->watering().noteReading(reading); });
    reading.ph = 6.1;
    expectUndoable([&] { return journal->watering().noteReading(reading); });
    ASSERT_EQ(now().mix.size(), 1u);
    EXPECT_EQ(now().mix[0].lastReading->ph, 6.1);
    reading.tray = tray;
    reading.ph = 7;
    EXPECT_TRUE(journal->watering().noteReading(reading));
    EXPECT_EQ(now().mix[0].lastReading->ph, 6.1);
    reading.tray = TrayId{99};
    expectRefused(ErrorKind::NotFound, TrayReason::Unknown,
                  [&] { return journal->watering().noteReading(reading); });
}

TEST_F(WateringEntriesTest, ThereIsOneRecipeAKind)
{
    auto recipes = journal->watering().recipes().value();
    ASSERT_EQ(recipes.size(), 3u);
    WaterRecipe nutrient = recipes[2];
    EXPECT_EQ(nutrient.water, WaterKind::Nutrient);
    nutrient.dosePerLitre = millilitres(8);
    expectUndoable([&] { return journal->watering().changeRecipe(nutrient); });
    nutrient.id = {};
    nutrient.dosePerLitre = millilitres(9);
    ASSERT_TRUE(journal->watering().changeRecipe(nutrient));
    recipes = journal->watering().recipes().value();
    ASSERT_EQ(recipes.size(), 3u);
    EXPECT_EQ(recipes[2].dosePerLitre, millilitres(9));
    nutrient.phLow = 7;
    nutrient.phHigh = 6;
    expectRefused(ErrorKind::Invalid, WateringReason::RecipePh,
                  [&] { return journal->watering().changeRecipe(nutrient); });
}

// The whole way of a tray through the journal: common practice, no source.
TEST_F(WateringEntriesTest, BroccoliIsGivenSixteenLightWateringsInTwelveDays)
{
    const Moment sown{clock.today(), 7 * 60};
    const TrayId tray = sow(1, sown).front();
    for (int day = 0; day < 13; ++day) {
        for (const int minute : {7 * 60 + 5, 18 * 60 + 5}) {
            clock.set({sown.date + day, minute});
            if (!now().decisions.empty() && now().decisions[0].to) {
                ASSERT_TRUE(journal->trays().moveOn(tray, now().decisions[0].due));
            }
            for (const RoundTray& asked : now().trays) {
                ASSERT_TRUE(journal->watering().tick(asked.tray, now().date, now().slot));
            }
        }
    }
    EXPECT_EQ(now().decisions.at(0).to, std::nullopt);
    Volume nutrient;
    std::map<WateringMethod, int> times;
    const TraySheet sheet = journal->trays().sheet(tray).value();
    for (const Watering& given : sheet.waterings) {
        ++times[given.method];
        nutrient += given.water == WaterKind::Nutrient ? given.amount.value() : Volume();
    }
    EXPECT_EQ(times[WateringMethod::Mist], 8);
    EXPECT_EQ(times[WateringMethod::Below], 16);
    EXPECT_NEAR(inLitres(nutrient), 1.89, 0.005);
}

TEST_F(WateringEntriesTest, ADayOfFortyTraysIsTickedQuickly)
{
    const auto trays = sowYesterday(40);
    const auto begun = std::chrono::steady_clock::now();
    for (const auto& [slot, minute] :
         {std::pair(Slot::Morning, 450), std::pair(Slot::Evening, 1090)}) {
        clock.set({clock.today(), minute});
        for (const TrayId tray : trays) {
            ASSERT_TRUE(journal->watering().tick(tray, clock.today(), slot));
        }
        EXPECT_EQ(now().doneCount(), 40);
    }
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begun;
    RecordProperty("milliseconds_a_tick", std::to_string(took.count() / 80));
    // Far above what it takes, so that a busy machine does not fail it, and far below a person's
    // patience.
    EXPECT_LT(took.count() / 80, 50) << "ms a tick";
}

} // namespace
} // namespace plumule
