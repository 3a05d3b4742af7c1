#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/core/journal/harvest/harvest_fixture.h"

#include "core/harvest/harvest_reason.h"

#include <gmock/gmock.h>
#include <set>

namespace plumule {
namespace {

using ::testing::ElementsAre;

using TrayAtScaleTest = HarvestTest;

TEST_F(TrayAtScaleTest, ExpectsWhatTheSameVarietyGaveOnTheSameMedium)
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

TEST_F(TrayAtScaleTest, FallsBackFromTheMediumToTheTrialAndTheVariety)
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

TEST_F(TrayAtScaleTest, FallsBackOnTheLibraryForTheFirstTrayOfARoom)
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

TEST_F(TrayAtScaleTest, FallsBackOnTheRoomsYieldBySeedBeforeTheLibrary)
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

TEST_F(TrayAtScaleTest, HoldsASecondCutAgainstSecondCutsOrAgainstNone)
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

TEST_F(TrayAtScaleTest, HoldsAResidueAgainstThoseOfTheMedium)
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

TEST_F(TrayAtScaleTest, FindsATrayByItsCodeHoweverItIsTyped)
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

TEST_F(TrayAtScaleTest, CountsTheUsesOfAPiece)
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

TEST_F(TrayAtScaleTest, OneResidueOfAMediumIsHeldAgainstTheWidestRange)
{
    const std::vector<TrayId> trays = sowTillDue(1);
    ASSERT_TRUE(harvests().record(weighing(trays[0], 280)));
    const ExpectedRange wide =
        harvests().atScale("QC001", Weighing::Residue).value().facts.expected;
    EXPECT_EQ(wide.from, RangeSource::Library);
    EXPECT_EQ(wide.low, grams(20));
    EXPECT_EQ(wide.high, grams(5000));
    EXPECT_EQ(wide.source, "from memory");
}

// Residues weigh by the medium first of all: another variety's count where there are few.
TEST_F(TrayAtScaleTest, AResidueFallsBackOnOtherVarietiesOfItsMedium)
{
    const std::vector<TrayId> trays = sowTillDue(3);
    for (const TrayId tray : trays) {
        ASSERT_TRUE(harvests().record(weighing(tray, 280)));
        ASSERT_TRUE(harvests().recordResidue(weighing(tray, 900)));
    }
    variety = plainVariety("Late cress", "LC");
    ASSERT_TRUE(harvests().record(weighing(sowTillDue(1).front(), 280)));
    const auto expected = harvests().atScale("LC001", Weighing::Residue).value().facts.expected;
    EXPECT_EQ(expected.from, RangeSource::Medium);
    EXPECT_EQ(expected.past.size(), 3U);
    medium = mediumNamed("Peat mix");
    ASSERT_TRUE(harvests().record(weighing(sowTillDue(1).front(), 280)));
    EXPECT_EQ(harvests().atScale("LC002", Weighing::Residue)->facts.expected.from,
              RangeSource::Library);
}

TEST_F(TrayAtScaleTest, ATrayTakenOffTheRacksStandsNowhereAndAHarvestedOneWhereItStood)
{
    const std::vector<TrayId> trays = sowTillDue(2);
    const auto stood = harvests().atScale("QC002").value().spot;
    ASSERT_TRUE(stood);
    ASSERT_TRUE(harvests().record(weighing(trays[1], 280)));
    EXPECT_EQ(harvests().atScale("QC002")->spot, stood);
    ASSERT_TRUE(journal->trays().moveTo(trays[0], std::nullopt, clock.now()));
    EXPECT_FALSE(harvests().atScale("QC001")->spot);
}

TEST_F(TrayAtScaleTest, CountsDaysUntilTheTrayEnded)
{
    const TrayId tray = sowTillDue(1).front();
    ASSERT_TRUE(harvests().record(weighing(tray, 280)));
    clock.set(clock.now() + 5 * kMinutesPerDay);
    EXPECT_EQ(harvests().atScale("QC001")->day, 4);
    sow(1);
    clock.set(clock.now() + kMinutesPerDay);
    EXPECT_EQ(harvests().atScale("QC002")->day, 2);
    EXPECT_EQ(harvests().atScale("QC002")->lastDay, 4);
}

TEST_F(TrayAtScaleTest, RemembersTheLastThreeTaresOfBowlsAlone)
{
    const std::vector<TrayId> trays = sowTillDue(5);
    EXPECT_TRUE(harvests().atScale("QC005")->facts.lastTares.empty());
    for (const int tare : {40, 41, 42, 43}) {
        ASSERT_TRUE(
            harvests().record(weighing(trays[static_cast<std::size_t>(tare - 40)], 280, tare)));
        clock.set(clock.now() + 1);
    }
    ASSERT_TRUE(harvests().recordResidue(weighing(trays[0], 900, 240)));
    const auto tares = harvests().atScale("QC005")->facts.lastTares;
    EXPECT_EQ(std::multiset<Mass>(tares.begin(), tares.end()),
              (std::multiset<Mass>{grams(41), grams(42), grams(43)}));
    EXPECT_TRUE(harvests().atScale("QC005", Weighing::Residue)->facts.lastTares.empty());
}

TEST_F(TrayAtScaleTest, ACutThatCameWithoutBowlsIsOneBowlOfItsNet)
{
    const TrayId tray = sowTillDue(1).front();
    const HarvestId cut = harvests().record(weighing(tray, 280)).value().id;
    {
        journal.reset();
        Database database(path(), Access::ReadWrite);
        database.execute("DELETE FROM bowl");
    }
    reopen();
    const auto bowls = harvests().cutAtScale(cut).value().bowls;
    ASSERT_EQ(bowls.size(), 1U);
    EXPECT_EQ(bowls[0].gross, grams(280));
    EXPECT_EQ(bowls[0].tare, grams(0));
}

TEST_F(TrayAtScaleTest, ACutOfNobodyOrOfADiscardedTrayIsNotCorrected)
{
    EXPECT_TRUE(harvests().cutAtScale({999}).error().is(HarvestReason::Unknown));
    const TrayId tray = sowTillDue(1).front();
    WeighingDraft first = weighing(tray, 200);
    first.isLast = false;
    const HarvestId cut = harvests().record(first).value().id;
    ASSERT_TRUE(journal->trays().discard(tray, "mould", clock.now()));
    EXPECT_TRUE(harvests().cutAtScale(cut).error().is(HarvestReason::TrayDiscarded));
}

} // namespace
} // namespace plumule
