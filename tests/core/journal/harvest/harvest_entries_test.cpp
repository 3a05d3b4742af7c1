#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "tests/core/journal/harvest/harvest_fixture.h"

#include "core/harvest/harvest_reason.h"
#include "core/tray/tray_reason.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

using HarvestEntriesTest = HarvestTest;

TEST_F(HarvestEntriesTest, EndsTheTrayAndFreesItsPlaceWithTheLastCut)
{
    const TrayId tray = sowTillDue(1).front();
    const std::size_t free = journal->room().freeSpots()->size();
    const auto harvest = harvests().record(weighing(tray, 289.5));
    ASSERT_TRUE(harvest);
    EXPECT_EQ(harvest->net, grams(289.5));
    EXPECT_EQ(harvest->cut, 1);
    const TraySheet after = sheet(tray);
    EXPECT_EQ(after.record.tray.state, TrayState::Harvested);
    EXPECT_EQ(after.record.tray.endedOn, clock.today());
    EXPECT_EQ(after.record.tray.endedMinute, clock.now().minute);
    ASSERT_EQ(after.stays.size(), 1U);
    EXPECT_EQ(after.stays.front().toOn, clock.today());
    EXPECT_EQ(after.stays.front().toMinute, clock.now().minute);
    EXPECT_EQ(journal->room().freeSpots()->size(), free + 1);
}

TEST_F(HarvestEntriesTest, TakesBackAndRepeatsEachIntention)
{
    const std::vector<TrayId> trays = sowTillDue(2);
    expectUndoable([&] { return harvests().record(weighing(trays[0], 280)); });
    const HarvestId cut = sheet(trays[0]).harvests.front().id;
    expectUndoable([&] {
        return harvests().correct(
            {cut, {{grams(200), grams(42)}, {grams(150), grams(42)}}, true, {}});
    });
    expectUndoable([&] { return harvests().correct({cut, {{grams(200), grams(42)}}, false, {}}); });
    expectUndoable([&] { return harvests().recordResidue(weighing(trays[1], 900, 240)); });
}

TEST_F(HarvestEntriesTest, GrowsOnAfterACutThatIsNotTheLast)
{
    const TrayId tray = sowTillDue(1).front();
    WeighingDraft first = weighing(tray, 200);
    first.isLast = false;
    ASSERT_TRUE(harvests().record(first));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Growing);
    EXPECT_THAT(codesDue(clock.today()), IsEmpty());
    EXPECT_THAT(codesDue(clock.today() + 1), IsEmpty());

    ASSERT_TRUE(journal->trays().notYet(tray, 5 * kMinutesPerDay));
    EXPECT_THAT(codesDue(clock.today() + 4), IsEmpty());
    EXPECT_THAT(codesDue(clock.today() + 5), ElementsAre("QC001"));

    clock.set(clock.now() + 5 * kMinutesPerDay);
    const auto second = harvests().record(weighing(tray, 90));
    ASSERT_TRUE(second);
    EXPECT_EQ(second->cut, 2);
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Harvested);
    EXPECT_EQ(journal->trays().list({}).value().front().yield, grams(290));
}

TEST_F(HarvestEntriesTest, PutsTheTrayBackWhereItStoodWhenItsCutIsNotTheLastAfterAll)
{
    const TrayId tray = sowTillDue(1).front();
    const auto place = sheet(tray).record.place;
    const HarvestId cut = harvests().record(weighing(tray, 280)).value().id;
    ASSERT_TRUE(harvests().correct({cut, {{grams(322), grams(42)}}, false, {}}));
    const TraySheet after = sheet(tray);
    EXPECT_EQ(after.record.tray.state, TrayState::Growing);
    EXPECT_FALSE(after.record.tray.endedOn);
    EXPECT_EQ(after.spot->place, place);
    EXPECT_FALSE(after.harvests.front().isLast);
}

TEST_F(HarvestEntriesTest, LeavesTheNewTrayAloneWhereThePlaceWasTakenSince)
{
    const TrayId tray = sowTillDue(1).front();
    const HarvestId cut = harvests().record(weighing(tray, 280)).value().id;
    const TrayId next = sow(1).front();
    ASSERT_EQ(sheet(next).spot->place, sheet(tray).record.place);
    ASSERT_TRUE(harvests().correct({cut, {{grams(322), grams(42)}}, false, {}}));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Growing);
    EXPECT_FALSE(sheet(tray).spot);
    EXPECT_TRUE(sheet(next).spot);
}

TEST_F(HarvestEntriesTest, CorrectsTheBowlsAndTheNet)
{
    const TrayId tray = sowTillDue(1).front();
    const HarvestId cut = harvests().record(weighing(tray, 280)).value().id;
    const auto corrected =
        harvests().correct({cut, {{grams(200), grams(42)}, {grams(150.5), grams(42)}}, true, {}});
    ASSERT_TRUE(corrected);
    EXPECT_EQ(corrected->net, grams(266.5));
    const auto bowls = harvests().cutAtScale(cut).value().bowls;
    ASSERT_EQ(bowls.size(), 2U);
    EXPECT_EQ(bowls[0].net() + bowls[1].net(), grams(266.5));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Harvested);

    ASSERT_TRUE(harvests().correct({cut, {{grams(200), grams(42)}}, false, {}}));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Growing);
    ASSERT_TRUE(harvests().correct({cut, {{grams(200), grams(42)}}, true, {}}));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Harvested);
}

TEST_F(HarvestEntriesTest, RefusesWhatCannotBeAWeight)
{
    const std::vector<TrayId> trays = sowTillDue(2);
    ASSERT_TRUE(journal->trays().discard(trays[1], "mould", clock.now()));
    WeighingDraft draft = weighing(trays[0], 280);
    draft.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::TareForgotten};

    WeighingDraft empty = draft;
    empty.bowls.clear();
    expectRefused(ErrorKind::Missing, HarvestReason::NoBowls,
                  [&] { return harvests().record(empty); });
    WeighingDraft nothing = draft;
    nothing.bowls = {{grams(42), grams(42)}};
    expectRefused(ErrorKind::Invalid, HarvestReason::NothingNet,
                  [&] { return harvests().record(nothing); });
    WeighingDraft unknown = draft;
    unknown.tray = {12345};
    expectRefused(ErrorKind::NotFound, TrayReason::Unknown,
                  [&] { return harvests().record(unknown); });
    WeighingDraft discarded = draft;
    discarded.tray = trays[1];
    expectRefused(ErrorKind::Conflict, HarvestReason::TrayDiscarded,
                  [&] { return harvests().record(discarded); });
    WeighingDraft early = draft;
    early.at = clock.now() + -30 * kMinutesPerDay;
    expectRefused(ErrorKind::Invalid, HarvestReason::BeforeSowing,
                  [&] { return harvests().record(early); });
    WeighingDraft ahead = draft;
    ahead.at = clock.now() + kMinutesPerDay;
    expectRefused(ErrorKind::Invalid, HarvestReason::Ahead,
                  [&] { return harvests().record(ahead); });

    const HarvestId cut = harvests().record(draft).value().id;
    expectRefused(ErrorKind::Missing, HarvestReason::NoBowls, [&] {
        return harvests().correct({cut, {}, true, {}});
    });
    expectRefused(ErrorKind::NotFound, HarvestReason::Unknown, [&] {
        return harvests().correct({{12345}, {{grams(200), grams(42)}}, true, {}});
    });
}

// A copy merged from random acts held a stay that ended before it began.
TEST_F(HarvestEntriesTest, MakesNoCutTheLastOneOfATrayThatWasMovedAfterIt)
{
    const TrayId tray = sowTillDue(1).front();
    WeighingDraft draft = weighing(tray, 300);
    draft.isLast = false;
    const Harvest cut = harvests().record(draft).value();
    clock.set(clock.now() + kMinutesPerDay);
    const auto free = journal->room().freeSpots().value();
    ASSERT_TRUE(journal->trays().moveTo(tray, free.back().place, clock.now()));
    expectRefused(ErrorKind::Invalid, TrayReason::EndBeforeStay, [&] {
        return harvests().correct({cut.id, {{grams(342), grams(42)}}, true, {}});
    });
}

TEST_F(HarvestEntriesTest, AsksBeforeItKeepsWhatIsOddAndKeepsItWhenAccepted)
{
    const std::vector<TrayId> trays = sowTillDue(5);
    for (int i = 0; i < 4; ++i) {
        ASSERT_TRUE(harvests().record(weighing(trays[static_cast<std::size_t>(i)], 280.0 + 2 * i)));
    }
    WeighingDraft slip = weighing(trays[4], 98.5, 0);
    slip.bowls.front().isStable = false;
    EXPECT_THAT(doubtsNow("QC005", slip),
                ElementsAre(Doubt::OutsideExpected, Doubt::UnstableReading, Doubt::TareForgotten));
    expectRefused(ErrorKind::Conflict, HarvestReason::DoubtOpen,
                  [&] { return harvests().record(slip); });
    EXPECT_EQ(harvests().record(slip).error().values, std::vector<std::string>{"outside_expected"});
    slip.accepted = {Doubt::OutsideExpected, Doubt::UnstableReading, Doubt::TareForgotten};
    EXPECT_TRUE(harvests().record(slip));
}

TEST_F(HarvestEntriesTest, DoubtsATenfoldOfTheVeryFirstTray)
{
    const std::vector<TrayId> trays = sowTillDue(1);
    WeighingDraft slip = weighing(trays[0], 0);
    slip.bowls = {{grams(3250), grams(38.5)}};
    EXPECT_THAT(doubtsNow("QC001", slip), ElementsAre(Doubt::DecimalSlip));
    expectRefused(ErrorKind::Conflict, HarvestReason::DoubtOpen,
                  [&] { return harvests().record(slip); });
    EXPECT_EQ(harvests().record(slip).error().values, std::vector<std::string>{"decimal_slip"});
    slip.accepted = {Doubt::DecimalSlip};
    EXPECT_EQ(harvests().record(slip).value().net, grams(3211.5));
}

TEST_F(HarvestEntriesTest, DoubtsATrayThatIsWeighedAgainAndAddsToItWhenAccepted)
{
    const TrayId tray = sowTillDue(1).front();
    const HarvestId first = harvests().record(weighing(tray, 200)).value().id;
    WeighingDraft again = weighing(tray, 80);
    EXPECT_THAT(doubtsNow("QC001", again), ElementsAre(Doubt::AlreadyWeighed));
    again.accepted = {Doubt::AlreadyWeighed};
    ASSERT_TRUE(harvests().record(again));
    EXPECT_EQ(journal->trays().list({}).value().front().yield, grams(280));
    // One last cut is still there, so the tray stays harvested.
    ASSERT_TRUE(harvests().correct({first, {{grams(242), grams(42)}}, false, again.accepted}));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Harvested);
}

TEST_F(HarvestEntriesTest, DoubtsATrayThatStandsInTheDark)
{
    const TrayId tray = sow(1).front();
    EXPECT_THAT(doubtsNow("QC001", weighing(tray, 200)), ElementsAre(Doubt::NotDueYet));
    ASSERT_TRUE(journal->trays().moveOn(tray, clock.now() + kMinutesPerDay));
    clock.set(clock.now() + kMinutesPerDay);
    EXPECT_THAT(doubtsNow("QC001", weighing(tray, 200)), IsEmpty());
}

TEST_F(HarvestEntriesTest, CorrectionsMeetTheSameDoubts)
{
    const std::vector<TrayId> trays = sowTillDue(4);
    std::vector<HarvestId> cuts;
    for (int i = 0; i < 4; ++i) {
        cuts.push_back(
            harvests().record(weighing(trays[static_cast<std::size_t>(i)], 280.0 + 2 * i))->id);
    }
    const CutAtScale shown = harvests().cutAtScale(cuts[3]).value();
    EXPECT_EQ(shown.tray.cut, 1);
    EXPECT_EQ(shown.tray.facts.expected.past.size(), 3U) << "not held against itself";
    EXPECT_FALSE(shown.tray.facts.isWeighedAlready);
    CutCorrection slip{cuts[3], {{grams(3250), grams(42)}}, true, {}};
    expectRefused(ErrorKind::Conflict, HarvestReason::DoubtOpen,
                  [&] { return harvests().correct(slip); });
    slip.bowls = {{grams(300), grams(0)}};
    EXPECT_EQ(harvests().correct(slip).error().values, std::vector<std::string>{"tare_forgotten"});
    slip.bowls = {{grams(325), grams(42)}};
    EXPECT_EQ(harvests().correct(slip)->net, grams(283));
}

TEST_F(HarvestEntriesTest, ACorrectionOfTheLastCutAloneLeavesTheWeightAsItIs)
{
    const TrayId tray = sowTillDue(1).front();
    WeighingDraft odd = weighing(tray, 0);
    odd.bowls = {{milligrams(2'331'507), grams(0)}}; // accepted, though it is far off
    odd.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected, Doubt::TareForgotten};
    const HarvestId cut = harvests().record(odd).value().id;
    const auto corrected = harvests().correct({cut, odd.bowls, false, {}});
    ASSERT_TRUE(corrected);
    EXPECT_EQ(corrected->net, milligrams(2'331'507));
    EXPECT_FALSE(corrected->isLast);
    EXPECT_EQ(harvests().cutAtScale(cut)->bowls.size(), 1U);
    EXPECT_EQ(harvests().cutAtScale(cut)->bowls.front().gross, milligrams(2'331'507));
}

} // namespace
} // namespace plumule
