#include "tests/core/journal/journal_fixture.h"

#include "core/harvest/harvest_reason.h"
#include "core/harvest/weighing_rules.h"
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
    VarietyId plainVariety(const std::string& name = "Quick cress",
                           const std::string& prefix = "QC")
    {
        Protocol protocol;
        protocol.variety.name = name;
        protocol.variety.codePrefix = prefix;
        ProtocolStage weight;
        weight.stage = Stage::UnderWeight;
        weight.lengthMinutes = kMinutesPerDay;
        ProtocolStage light;
        light.stage = Stage::Light;
        light.lengthMinutes = 2 * kMinutesPerDay;
        protocol.stages = {weight, light};
        return journal->varieties().save(protocol).value().variety.id;
    }

    std::vector<TrayId> sow(int count, std::optional<TrialId> trial = std::nullopt,
                            std::optional<Mass> seed = grams(10))
    {
        SowingDraft draft;
        draft.variety = variety;
        draft.medium = medium;
        draft.count = count;
        draft.seedPerTray = seed;
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
    ExpectedRange expectedOf(const std::string& code)
    {
        return harvests().atScale(code).value().facts.expected;
    }
    std::vector<Doubt> doubtsNow(const std::string& code, const WeighingDraft& draft)
    {
        return doubtsAbout(draft.bowls, harvests().atScale(code).value().facts);
    }
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

    const HarvestId cut = harvests().record(draft).value().id;
    expectRefused(ErrorKind::Missing, HarvestReason::NoBowls, [&] {
        return harvests().correct({cut, {}, true, {}});
    });
    expectRefused(ErrorKind::NotFound, HarvestReason::Unknown, [&] {
        return harvests().correct({{12345}, {{grams(200), grams(42)}}, true, {}});
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

TEST_F(HarvestEntriesTest, ExpectsWhatTheSameVarietyGaveOnTheSameMedium)
{
    const std::vector<TrayId> trays = sowTillDue(5);
    for (int i = 0; i < 2; ++i) {
        ASSERT_TRUE(harvests().record(weighing(trays[static_cast<std::size_t>(i)], 110 + 10 * i)));
    }
    EXPECT_EQ(expectedOf("QC005").from, RangeSource::Library);
    ASSERT_TRUE(harvests().record(weighing(trays[2], 130)));
    const ExpectedRange three = expectedOf("QC005");
    EXPECT_EQ(three.from, RangeSource::VarietyOnMedium);
    ASSERT_EQ(three.past.size(), 3U);
    EXPECT_EQ(three.past[0].code, "QC003") << "newest first";
    EXPECT_EQ(three.past[0].net, grams(130));
    EXPECT_EQ(three.past[0].on, clock.today());
    // As in the test of rangeFrom().
    EXPECT_NEAR(inGrams(*three.high), 181.3220, 0.001);
    // A tray is not held against itself, nor against those set aside.
    const HarvestId first = sheet(trays[0]).harvests.front().id;
    EXPECT_EQ(harvests().cutAtScale(first).value().tray.facts.expected.from, RangeSource::Library);
    EXPECT_FALSE(expectedOf("QC001").isKnown()) << "no second cut is on record";
    ASSERT_TRUE(journal->trays().setAside(trays[2], "lamp out"));
    EXPECT_EQ(expectedOf("QC005").from, RangeSource::Library);
}

TEST_F(HarvestEntriesTest, FallsBackFromTheMediumToTheTrialAndTheVariety)
{
    Trial trial;
    trial.name = "Cress on three";
    trial = journal->trials().save(trial).value();
    const std::vector<TrayId> inTrial = sowTillDue(4, trial.id);
    for (int i = 0; i < 3; ++i) {
        ASSERT_TRUE(
            harvests().record(weighing(inTrial[static_cast<std::size_t>(i)], 200 + 10 * i)));
    }
    medium = mediumNamed("Peat mix");
    const TrayId sister = sow(1, trial.id).front();
    const std::string code = sheet(sister).record.tray.code;
    const ExpectedRange ofTrial = expectedOf(code);
    EXPECT_EQ(ofTrial.from, RangeSource::SameTrial);
    EXPECT_EQ(ofTrial.past.size(), 3U);
    EXPECT_TRUE(ofTrial.holds(grams(210)));
    EXPECT_FALSE(ofTrial.holds(grams(2100)));

    const TrayId alone = sow(1).front();
    const ExpectedRange ofVariety = expectedOf(sheet(alone).record.tray.code);
    EXPECT_EQ(ofVariety.from, RangeSource::Variety);
    EXPECT_EQ(ofVariety.past.size(), 3U);
}

TEST_F(HarvestEntriesTest, FallsBackOnTheLibraryForTheFirstTrayOfARoom)
{
    variety = varietyNamed("Broccoli");
    const TrayId broccoli = sow(1).front();
    const ExpectedRange library = expectedOf(sheet(broccoli).record.tray.code);
    EXPECT_EQ(library.from, RangeSource::Library);
    EXPECT_EQ(library.source, "Li et al. 2023, Horticulturae 9:1217");
    // 916 and 984 g/m² on 254 by 508 mm, a third and four times as much.
    EXPECT_NEAR(inGrams(*library.low), 916 * 0.129032 / 3, 0.1);
    EXPECT_NEAR(inGrams(*library.high), 984 * 0.129032 * 4, 0.1);
}

TEST_F(HarvestEntriesTest, FallsBackOnTheRoomsYieldBySeedBeforeTheLibrary)
{
    // Grams by gram of seed: 20, 22 and 24.
    double net = 200;
    for (const char* name : {"Early cress", "Frilly cress", "Golden cress"}) {
        variety = plainVariety(name, std::string("Q") + name[0]);
        ASSERT_TRUE(harvests().record(weighing(sowTillDue(1).front(), net)));
        net += 20;
    }
    variety = plainVariety("Hardy cress", "QH");
    sow(1);
    const ExpectedRange bySeed = expectedOf("QH001");
    EXPECT_EQ(bySeed.from, RangeSource::RoomBySeed);
    EXPECT_EQ(bySeed.past.size(), 3U);
    EXPECT_TRUE(bySeed.holds(grams(220)));
    EXPECT_FALSE(bySeed.holds(grams(2200)));
    sow(1, std::nullopt, std::nullopt);
    EXPECT_EQ(expectedOf("QH002").from, RangeSource::Library) << "its seed is not known";
}

TEST_F(HarvestEntriesTest, HoldsASecondCutAgainstSecondCutsOrAgainstNone)
{
    const std::vector<TrayId> trays = sowTillDue(5);
    for (const TrayId tray : trays) {
        WeighingDraft first = weighing(tray, 280);
        first.isLast = false;
        ASSERT_TRUE(harvests().record(first));
    }
    const TrayAtScale before = harvests().atScale("QC001").value();
    EXPECT_EQ(before.cut, 2);
    EXPECT_FALSE(before.facts.expected.isKnown()) << "no second cut is there yet";
    for (int i = 0; i < 3; ++i) {
        ASSERT_TRUE(harvests().record(weighing(trays[static_cast<std::size_t>(i)], 100 + 5 * i)));
    }
    const ExpectedRange second = expectedOf("QC005");
    EXPECT_EQ(second.past.size(), 3U);
    EXPECT_TRUE(second.holds(grams(105)));
    EXPECT_FALSE(second.holds(grams(280)));
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

TEST_F(HarvestEntriesTest, HoldsAResidueAgainstThoseOfTheMedium)
{
    const std::vector<TrayId> trays = sowTillDue(5);
    for (const TrayId tray : trays) {
        ASSERT_TRUE(harvests().record(weighing(tray, 280)));
    }
    for (int i = 0; i < 3; ++i) {
        ASSERT_TRUE(
            harvests().recordResidue(weighing(trays[static_cast<std::size_t>(i)], 900 + 10 * i)));
    }
    const auto facts = harvests().atScale("QC005", Weighing::Residue).value().facts;
    EXPECT_EQ(facts.expected.from, RangeSource::VarietyOnMedium);
    WeighingDraft slip = weighing(trays[4], 0);
    slip.bowls = {{grams(9420), grams(42)}};
    EXPECT_THAT(doubtsAbout(slip.bowls, facts), ElementsAre(Doubt::DecimalSlip));
    expectRefused(ErrorKind::Conflict, HarvestReason::DoubtOpen,
                  [&] { return harvests().recordResidue(slip); });
    EXPECT_TRUE(harvests().recordResidue(weighing(trays[4], 905)));
}

TEST_F(HarvestEntriesTest, FindsATrayByItsCodeHoweverItIsTyped)
{
    const std::vector<TrayId> trays = sowTillDue(2);
    const auto found = harvests().atScale(" qc001 ");
    ASSERT_TRUE(found);
    EXPECT_EQ(found->record.tray.id, trays[0]);
    EXPECT_EQ(found->day, 4);
    EXPECT_FALSE(found->pieceUse);
    EXPECT_FALSE(found->facts.isInTheDark);
    EXPECT_EQ(found->lastDay, 4);
    EXPECT_EQ(found->spot->number, 1);
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

    ASSERT_TRUE(harvests().record(weighing(trays[1], 280, 42)));
    clock.set(clock.now() + 2);
    ASSERT_TRUE(harvests().record(weighing(trays[2], 290, 43)));
    const WeighIn answer = harvests().weighIn(clock.today()).value();
    ASSERT_EQ(answer.done.size(), 2U);
    EXPECT_EQ(answer.done[0].code, "QC003");
    EXPECT_EQ(answer.done[1].code, "QC002");
    EXPECT_EQ(answer.done[0].seed, grams(10));
    EXPECT_EQ(answer.done[0].medium.name, "Coir mix");
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
    const auto answer = harvests().atScale("QC001").value().trial;
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->trial.name, "Cress twice");
    ASSERT_EQ(answer->dots.size(), 3U);
    EXPECT_FALSE(answer->dots[0].yield);
    EXPECT_EQ(answer->dots[1].yield, grams(280));
    EXPECT_FALSE(answer->dots[2].yield) << "it is cut again later";
    sow(1);
    EXPECT_FALSE(harvests().atScale("QC005").value().trial);
}

} // namespace
} // namespace plumule
