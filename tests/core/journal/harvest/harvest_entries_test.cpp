#include "tests/core/journal/journal_fixture.h"

#include "core/harvest/harvest_reason.h"
#include "core/tray/tray_reason.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

// Trays that stand in light and are due now.
class HarvestEntriesTest : public JournalTest
{
protected:
    void SetUp() override
    {
        JournalTest::SetUp();
        variety = plainVariety();
        medium = mediumNamed("Coir mix");
    }

    // One day under weight, two in light.
    VarietyId plainVariety()
    {
        Protocol protocol;
        protocol.variety.name = "Quick cress";
        protocol.variety.codePrefix = "QC";
        ProtocolStage weight;
        weight.stage = Stage::UnderWeight;
        weight.lengthMinutes = kMinutesPerDay;
        ProtocolStage light;
        light.stage = Stage::Light;
        light.lengthMinutes = 2 * kMinutesPerDay;
        protocol.stages = {weight, light};
        return journal->varieties().save(protocol).value().variety.id;
    }

    std::vector<TrayId> sow(int count, std::optional<TrialId> trial = std::nullopt)
    {
        SowingDraft draft;
        draft.variety = variety;
        draft.medium = medium;
        draft.count = count;
        draft.seedPerTray = grams(10);
        draft.at = clock.now();
        draft.trial = trial;
        const auto free = journal->room().freeSpots().value();
        for (int i = 0; i < count && i < static_cast<int>(free.size()); ++i) {
            draft.places.push_back(free[static_cast<std::size_t>(i)].place);
        }
        return journal->trays().sow(draft).value();
    }

    // Sown, brought into light a day later, and due: the clock stands at the harvest.
    std::vector<TrayId> sowTillDue(int count, std::optional<TrialId> trial = std::nullopt)
    {
        const std::vector<TrayId> trays = sow(count, trial);
        clock.set(clock.now() + kMinutesPerDay);
        for (const TrayId tray : trays) {
            EXPECT_TRUE(journal->trays().moveOn(tray, clock.now()));
        }
        clock.set(clock.now() + 2 * kMinutesPerDay);
        return trays;
    }

    WeighingDraft weighing(TrayId tray, double net, double tare = 42)
    {
        WeighingDraft draft;
        draft.tray = tray;
        draft.bowls = {{grams(net + tare), grams(tare)}};
        draft.at = clock.now();
        return draft;
    }

    HarvestEntries& harvests() { return journal->harvests(); }
    TraySheet sheet(TrayId tray) { return journal->trays().sheet(tray).value(); }

    std::vector<std::string> codesDue(Date on)
    {
        std::vector<std::string> codes;
        const WeighIn answer = harvests().weighIn(on).value();
        for (const DueRow& row : answer.due) {
            codes.push_back(row.code);
        }
        return codes;
    }

    VarietyId variety;
    MediumId medium;
};

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
        return harvests().correct(cut, {{grams(200), grams(42)}, {grams(150), grams(42)}}, true);
    });
    expectUndoable([&] { return harvests().correct(cut, {{grams(200), grams(42)}}, false); });
    expectUndoable([&] { return harvests().remove(cut); });
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

TEST_F(HarvestEntriesTest, PutsTheTrayBackWhereItStoodWhenItsLastCutIsTakenOut)
{
    const TrayId tray = sowTillDue(1).front();
    const auto place = sheet(tray).record.place;
    const HarvestId cut = harvests().record(weighing(tray, 280)).value().id;
    ASSERT_TRUE(harvests().remove(cut));
    const TraySheet after = sheet(tray);
    EXPECT_EQ(after.record.tray.state, TrayState::Growing);
    EXPECT_FALSE(after.record.tray.endedOn);
    EXPECT_EQ(after.spot->place, place);
    EXPECT_THAT(after.harvests, IsEmpty());
    EXPECT_THAT(codesDue(clock.today()), ElementsAre("QC001"));
}

TEST_F(HarvestEntriesTest, LeavesTheNewTrayAloneWhereThePlaceWasTakenSince)
{
    const TrayId tray = sowTillDue(1).front();
    const HarvestId cut = harvests().record(weighing(tray, 280)).value().id;
    const TrayId next = sow(1).front();
    ASSERT_EQ(sheet(next).spot->place, sheet(tray).record.place);
    ASSERT_TRUE(harvests().remove(cut));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Growing);
    EXPECT_FALSE(sheet(tray).spot);
    EXPECT_TRUE(sheet(next).spot);
}

TEST_F(HarvestEntriesTest, CorrectsTheBowlsAndTheNet)
{
    const TrayId tray = sowTillDue(1).front();
    const HarvestId cut = harvests().record(weighing(tray, 280)).value().id;
    const auto corrected =
        harvests().correct(cut, {{grams(200), grams(42)}, {grams(150.5), grams(42)}}, true);
    ASSERT_TRUE(corrected);
    EXPECT_EQ(corrected->net, grams(266.5));
    const auto bowls = harvests().bowls(cut).value();
    ASSERT_EQ(bowls.size(), 2U);
    EXPECT_EQ(bowls[0].net() + bowls[1].net(), grams(266.5));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Harvested);

    ASSERT_TRUE(harvests().correct(cut, {{grams(200), grams(42)}}, false));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Growing);
    ASSERT_TRUE(harvests().correct(cut, {{grams(200), grams(42)}}, true));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Harvested);
}

TEST_F(HarvestEntriesTest, RefusesWhatCannotBeAWeight)
{
    const std::vector<TrayId> trays = sowTillDue(2);
    ASSERT_TRUE(journal->trays().discard(trays[1], "mould", clock.now()));
    WeighingDraft draft = weighing(trays[0], 280);
    draft.accepted = {Doubt::OutsideExpected, Doubt::TareForgotten};

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

    const HarvestId cut = harvests().record(draft).value().id;
    expectRefused(ErrorKind::Missing, HarvestReason::NoBowls,
                  [&] { return harvests().correct(cut, {}, true); });
    expectRefused(ErrorKind::NotFound, HarvestReason::Unknown,
                  [&] { return harvests().remove({12345}); });
}

TEST_F(HarvestEntriesTest, AsksBeforeItKeepsWhatIsOddAndKeepsItWhenAccepted)
{
    const std::vector<TrayId> trays = sowTillDue(5);
    for (int i = 0; i < 4; ++i) {
        ASSERT_TRUE(harvests().record(weighing(trays[static_cast<std::size_t>(i)], 280.0 + 2 * i)));
    }
    WeighingDraft slip = weighing(trays[4], 29.5, 0);
    slip.bowls.front().isStable = false;
    EXPECT_THAT(harvests().doubts(slip).value(),
                ElementsAre(Doubt::OutsideExpected, Doubt::UnstableReading, Doubt::TareForgotten));
    expectRefused(ErrorKind::Conflict, HarvestReason::DoubtOpen,
                  [&] { return harvests().record(slip); });
    EXPECT_EQ(harvests().record(slip).error().values, std::vector<std::string>{"outside_expected"});
    slip.accepted = {Doubt::OutsideExpected, Doubt::UnstableReading, Doubt::TareForgotten};
    EXPECT_TRUE(harvests().record(slip));
}

TEST_F(HarvestEntriesTest, DoubtsATrayThatIsWeighedAgainAndAddsToItWhenAccepted)
{
    const TrayId tray = sowTillDue(1).front();
    const HarvestId first = harvests().record(weighing(tray, 200)).value().id;
    WeighingDraft again = weighing(tray, 80);
    EXPECT_THAT(harvests().doubts(again).value(), ElementsAre(Doubt::AlreadyWeighed));
    again.accepted = {Doubt::AlreadyWeighed};
    ASSERT_TRUE(harvests().record(again));
    EXPECT_EQ(journal->trays().list({}).value().front().yield, grams(280));
    // One last cut is still there, so the tray stays harvested.
    ASSERT_TRUE(harvests().remove(first));
    EXPECT_EQ(sheet(tray).record.tray.state, TrayState::Harvested);
}

TEST_F(HarvestEntriesTest, DoubtsATrayThatStandsInTheDark)
{
    const TrayId tray = sow(1).front();
    EXPECT_THAT(harvests().doubts(weighing(tray, 200)).value(), ElementsAre(Doubt::NotDueYet));
    ASSERT_TRUE(journal->trays().moveOn(tray, clock.now() + kMinutesPerDay));
    clock.set(clock.now() + kMinutesPerDay);
    EXPECT_THAT(harvests().doubts(weighing(tray, 200)).value(), IsEmpty());
}

TEST_F(HarvestEntriesTest, ExpectsWhatTheSameVarietyGaveOnTheSameMedium)
{
    const std::vector<TrayId> trays = sowTillDue(5);
    for (int i = 0; i < 2; ++i) {
        ASSERT_TRUE(harvests().record(weighing(trays[static_cast<std::size_t>(i)], 110 + 10 * i)));
    }
    EXPECT_EQ(harvests().atScale("QC005").value().expected.trays, 2);
    EXPECT_FALSE(harvests().atScale("QC005").value().expected.high);
    ASSERT_TRUE(harvests().record(weighing(trays[2], 130)));
    const ExpectedRange three = harvests().atScale("QC005").value().expected;
    EXPECT_EQ(three.trays, 3);
    // As in the test of expectedRange().
    EXPECT_NEAR(inGrams(*three.high), 169.6828, 0.001);
    // A tray is not held against itself, nor against those set aside.
    EXPECT_EQ(harvests().atScale("QC001").value().expected.trays, 2);
    ASSERT_TRUE(journal->trays().setAside(trays[2], "lamp out"));
    EXPECT_EQ(harvests().atScale("QC005").value().expected.trays, 2);
    medium = mediumNamed("Peat mix");
    sow(1);
    EXPECT_EQ(harvests().atScale("QC006").value().expected.trays, 0);
}

TEST_F(HarvestEntriesTest, FindsATrayByItsCodeHoweverItIsTyped)
{
    const std::vector<TrayId> trays = sowTillDue(2);
    const auto found = harvests().atScale(" qc001 ");
    ASSERT_TRUE(found);
    EXPECT_EQ(found->record.tray.id, trays[0]);
    EXPECT_EQ(found->day, 4);
    EXPECT_FALSE(found->pieceUse);
    EXPECT_FALSE(found->isInTheDark);
    EXPECT_EQ(harvests().atScale("QC999").error().kind, ErrorKind::NotFound);
    ASSERT_TRUE(journal->trays().discard(trays[1], "mould", clock.now()));
    EXPECT_EQ(harvests().atScale("QC002").error().kind, ErrorKind::Conflict);
}

TEST_F(HarvestEntriesTest, CountsTheUsesOfAPiece)
{
    medium = mediumNamed("Steel mesh");
    const PieceId piece = journal->media().addPieces(medium, 1, std::nullopt).value().front().id;
    SowingDraft draft;
    draft.variety = variety;
    draft.medium = medium;
    draft.pieces = {piece};
    draft.seedPerTray = grams(10);
    for (int use = 1; use <= 2; ++use) {
        draft.at = clock.now();
        const TrayId tray = journal->trays().sow(draft).value().front();
        ASSERT_TRUE(journal->trays().moveOn(tray, clock.now() + 10));
        clock.set(clock.now() + 3 * kMinutesPerDay);
        ASSERT_TRUE(harvests().record(weighing(tray, 280)));
        clock.set(clock.now() + 60);
        ASSERT_TRUE(journal->media().sanitise({piece}, "peroxide"));
        clock.set(clock.now() + 60);
    }
    EXPECT_EQ(harvests().atScale("QC001").value().pieceUse, 1);
    EXPECT_EQ(harvests().atScale("QC002").value().pieceUse, 2);
}

TEST_F(HarvestEntriesTest, ListsWhatIsDueInWalkingOrderAndWhatIsWeighedNewestFirst)
{
    const std::vector<TrayId> trays = sowTillDue(3);
    ASSERT_TRUE(journal->trays().moveTo(trays[0], std::nullopt, clock.now()));
    EXPECT_THAT(codesDue(clock.today() - 1), IsEmpty());
    EXPECT_THAT(codesDue(clock.today()), ElementsAre("QC002", "QC003", "QC001"));
    EXPECT_THAT(codesDue(clock.today() + 9), ElementsAre("QC002", "QC003", "QC001"));
    EXPECT_FALSE(harvests().weighIn(clock.today()).value().lastTare);

    ASSERT_TRUE(harvests().record(weighing(trays[1], 280, 42)));
    clock.set(clock.now() + 2);
    ASSERT_TRUE(harvests().record(weighing(trays[2], 290, 43)));
    const WeighIn answer = harvests().weighIn(clock.today()).value();
    ASSERT_EQ(answer.done.size(), 2U);
    EXPECT_EQ(answer.done[0].code, "QC003");
    EXPECT_EQ(answer.done[1].code, "QC002");
    EXPECT_EQ(answer.done[0].seed, grams(10));
    EXPECT_EQ(answer.done[0].medium.name, "Coir mix");
    EXPECT_EQ(answer.lastTare, grams(43));
    EXPECT_THAT(codesDue(clock.today()), ElementsAre("QC001"));
    EXPECT_THAT(harvests().weighIn(clock.today() + 1).value().done, IsEmpty());
}

TEST_F(HarvestEntriesTest, ListsTheResiduesStillToWeigh)
{
    const std::vector<TrayId> trays = sowTillDue(3);
    ASSERT_TRUE(harvests().record(weighing(trays[0], 280)));
    clock.set(clock.now() + 2);
    ASSERT_TRUE(harvests().record(weighing(trays[1], 281)));
    const auto due = harvests().residuesDue(clock.today()).value();
    ASSERT_EQ(due.size(), 2U);
    EXPECT_EQ(due[0].code, "QC002");
    EXPECT_EQ(due[1].code, "QC001");

    const auto residue = harvests().recordResidue(weighing(trays[0], 900, 240));
    ASSERT_TRUE(residue);
    EXPECT_EQ(residue->net, grams(900));
    EXPECT_EQ(residue->gross, grams(1140));
    EXPECT_EQ(harvests().residuesDue(clock.today()).value().size(), 1U);
    EXPECT_THAT(harvests().residuesDue(clock.today() + 15).value(), IsEmpty());
    expectRefused(ErrorKind::Conflict, HarvestReason::DoubtOpen,
                  [&] { return harvests().recordResidue(weighing(trays[0], 900, 240)); });
}

TEST_F(HarvestEntriesTest, ShowsTheTrialSoFar)
{
    Trial trial;
    trial.name = "Cress twice";
    trial = journal->trials().save(trial).value();
    const std::vector<TrayId> trays = sowTillDue(4, trial.id);
    ASSERT_TRUE(harvests().record(weighing(trays[1], 280)));
    WeighingDraft first = weighing(trays[2], 100);
    first.isLast = false;
    ASSERT_TRUE(harvests().record(first));
    ASSERT_TRUE(journal->trays().discard(trays[3], "mould", clock.now()));
    const auto answer = harvests().trialSoFar(trays[0]).value();
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->trial.name, "Cress twice");
    ASSERT_EQ(answer->dots.size(), 3U);
    EXPECT_FALSE(answer->dots[0].yield);
    EXPECT_EQ(answer->dots[1].yield, grams(280));
    EXPECT_FALSE(answer->dots[2].yield) << "it is cut again later";
    EXPECT_FALSE(harvests().trialSoFar(sow(1).front()).value());
}

} // namespace
} // namespace plumule
