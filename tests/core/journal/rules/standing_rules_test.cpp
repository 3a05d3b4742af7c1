#include "core/journal/cost/cost_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include "core/harvest/harvest_reason.h"
#include "core/journal/rules/rule_reason.h"
#include "core/medium/medium_rules.h"

#include <gmock/gmock.h>

namespace plumule {
namespace {

class StandingRulesTest : public JournalTest
{
protected:
    void SetUp() override
    {
        JournalTest::SetUp();
        Medium mesh;
        mesh.name = "Wire bed";
        mesh.form = MediumForm::Mesh;
        mesh.isReusable = true;
        reusable = journal->media().save(mesh).value().id;
        pieces = journal->media().addPieces(reusable, 2, std::nullopt).value();
        const auto spots = journal->room().freeSpots().value();
        for (const Spot& spot : spots) {
            places.push_back(spot.place);
        }
    }

    SowingDraft draft()
    {
        SowingDraft draft;
        draft.variety = varietyNamed("Radish");
        draft.medium = mediumNamed("Coir mix");
        draft.at = clock.now();
        return draft;
    }
    TrayId sowAt(PlaceId place)
    {
        SowingDraft sowing = draft();
        sowing.places = {place};
        const auto sown = journal->trays().sow(sowing);
        EXPECT_TRUE(sown) << sown.error().reason.family() << sown.error().reason.code();
        return sown->front();
    }
    TrayId sowOn(const Piece& piece)
    {
        SowingDraft sowing = draft();
        sowing.medium = reusable;
        sowing.pieces = {piece.id};
        return journal->trays().sow(sowing).value().front();
    }
    WeighingDraft cutOf(TrayId tray, bool isLast)
    {
        WeighingDraft cut;
        cut.tray = tray;
        cut.bowls = {{grams(300), grams(40)}};
        cut.at = clock.now();
        cut.isLast = isLast;
        cut.accepted = {Doubt::DecimalSlip,     Doubt::OutsideExpected, Doubt::AlreadyWeighed,
                        Doubt::UnstableReading, Doubt::TareForgotten,   Doubt::NotDueYet};
        return cut;
    }
    Harvest cut(TrayId tray, bool isLast)
    {
        return journal->harvests().record(cutOf(tray, isLast)).value();
    }
    void correctToLast(const Harvest& harvest, bool isLast)
    {
        CutCorrection correction;
        correction.cut = harvest.id;
        correction.bowls = {{grams(300), grams(40)}};
        correction.isLast = isLast;
        ASSERT_TRUE(journal->harvests().correct(correction));
    }
    void wait(int days) { clock.set(clock.now() + days * kMinutesPerDay); }
    HistoryId newest() { return journal->latestEntries(1).value().at(0).id; }
    void expectKept(RuleReason reason, HistoryId act)
    {
        expectRefused(ErrorKind::Conflict, reason, [&] { return journal->undo(act); });
    }

    MediumId reusable;
    std::vector<Piece> pieces;
    std::vector<PlaceId> places;
};

TEST_F(StandingRulesTest, ATrayDoesNotComeBackToAPlaceThatWasTakenSince)
{
    const TrayId first = sowAt(places[0]);
    ASSERT_TRUE(journal->trays().moveTo(first, places[1], clock.now()));
    const HistoryId moved = newest();
    const TrayId second = sowAt(places[0]);
    expectKept(RuleReason::PlaceTaken, moved);
    EXPECT_EQ(journal->undo(moved).error().values,
              (std::vector<std::string>{"A1", "1", "RD001", "RD002"}));
    // What the sentence says to do helps.
    ASSERT_TRUE(journal->trays().moveTo(second, places[2], clock.now()));
    EXPECT_TRUE(journal->undo(moved));
}

TEST_F(StandingRulesTest, AreForeseenWithoutDoingAnything)
{
    const TrayId first = sowAt(places[0]);
    ASSERT_TRUE(journal->trays().moveTo(first, places[1], clock.now()));
    const HistoryId moved = newest();
    const std::string before = dump();
    const auto effects = journal->foreseeUndo(moved);
    ASSERT_TRUE(effects);
    EXPECT_EQ(dump(), before);
    EXPECT_EQ(newest(), moved) << "it still stands";
    EXPECT_EQ(journal->nextRedo(), std::nullopt);
    // Its stay on the second place would go, and that on the first be open again.
    ASSERT_EQ(effects->size(), 2u);
    EXPECT_TRUE(std::any_of(effects->begin(), effects->end(), [](const auto& effect) {
        return effect.table == "stay" && effect.kind == ChangeKind::Delete;
    }));
    const TrayId second = sowAt(places[0]);
    const auto refused = journal->foreseeUndo(moved);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error(), journal->undo(moved).error());
    ASSERT_TRUE(journal->trays().moveTo(second, places[2], clock.now()));
    ASSERT_TRUE(journal->foreseeUndo(moved));
    ASSERT_TRUE(journal->undo(moved));
    EXPECT_TRUE(journal->foreseeUndo(moved).error().is(StorageReason::NothingToTakeBack));
}

TEST_F(StandingRulesTest, AreForeseenWithWhatWouldBeWrittenAnew)
{
    const TrayId tray = sowAt(places[0]);
    wait(9);
    const Harvest harvest = cut(tray, true);
    CutCorrection correction;
    correction.cut = harvest.id;
    correction.bowls = {{grams(311), grams(40)}};
    correction.isLast = true;
    ASSERT_TRUE(journal->harvests().correct(correction));
    const auto effects = journal->foreseeUndo(newest());
    ASSERT_TRUE(effects);
    const auto weight = std::find_if(effects->begin(), effects->end(),
                                     [](const auto& effect) { return effect.table == "harvest"; });
    ASSERT_NE(weight, effects->end());
    EXPECT_EQ(weight->kind, ChangeKind::Update);
    EXPECT_EQ(weight->id, harvest.id.value);
    const auto net = std::find_if(weight->cells.begin(), weight->cells.end(),
                                  [](const auto& cell) { return cell.column == "net_mg"; });
    ASSERT_NE(net, weight->cells.end());
    EXPECT_EQ(net->now, Cell(grams(271).count()));
    EXPECT_EQ(net->after, Cell(harvest.net.count()));
}

TEST_F(StandingRulesTest, NorToOneWhereAnotherGrewUpMeanwhile)
{
    const TrayId first = sowAt(places[0]);
    ASSERT_TRUE(journal->trays().discard(first, "mould", clock.now()));
    const HistoryId discarded = newest();
    wait(1);
    const TrayId second = sowAt(places[0]);
    wait(9);
    cut(second, true);
    wait(1);
    expectKept(RuleReason::PlaceTaken, discarded);
}

TEST_F(StandingRulesTest, ATrayStandsAtOnePlaceAtATime)
{
    const TrayId tray = sowAt(places[0]);
    ASSERT_TRUE(journal->trays().moveTo(tray, std::nullopt, clock.now()));
    const HistoryId taken = newest();
    wait(1);
    ASSERT_TRUE(journal->trays().moveTo(tray, places[1], clock.now()));
    expectKept(RuleReason::TrayTwice, taken);
}

TEST_F(StandingRulesTest, WhatHasEndedStandsNowhere)
{
    const TrayId tray = sowAt(places[0]);
    ASSERT_TRUE(journal->trays().moveTo(tray, std::nullopt, clock.now()));
    const HistoryId taken = newest();
    ASSERT_TRUE(journal->trays().discard(tray, "mould", clock.now()));
    expectKept(RuleReason::EndedTrayStands, taken);
}

TEST_F(StandingRulesTest, APieceCarriesOneTrayAtATime)
{
    const TrayId first = sowOn(pieces[0]);
    ASSERT_TRUE(journal->trays().discard(first, "mould", clock.now()));
    const HistoryId discarded = newest();
    ASSERT_TRUE(journal->media().sanitise({pieces[0].id}, "peroxide"));
    const HistoryId washed = newest();
    ASSERT_TRUE(journal->trays().sow([&] {
        SowingDraft sowing = draft();
        sowing.medium = reusable;
        sowing.pieces = {pieces[0].id};
        return sowing;
    }()));
    expectKept(RuleReason::PieceTaken, discarded);
    expectKept(RuleReason::PieceNotSanitised, washed);
}

TEST_F(StandingRulesTest, AWashingBetweenTwoUsesStays)
{
    const TrayId first = sowOn(pieces[0]);
    ASSERT_TRUE(journal->trays().discard(first, "mould", clock.now()));
    wait(1);
    ASSERT_TRUE(journal->media().sanitise({pieces[0].id}, "peroxide"));
    const HistoryId washed = newest();
    wait(1);
    const TrayId second = sowOn(pieces[0]);
    wait(1);
    ASSERT_TRUE(journal->trays().discard(second, "mould", clock.now()));
    expectKept(RuleReason::PieceNotSanitised, washed);
    // One after them, or a second one, is not needed.
    ASSERT_TRUE(journal->media().sanitise({pieces[0].id}, "peroxide"));
    EXPECT_TRUE(journal->undo());
}

TEST_F(StandingRulesTest, ARetiredPieceCarriesNone)
{
    const TrayId tray = sowOn(pieces[1]);
    ASSERT_TRUE(journal->trays().discard(tray, "mould", clock.now()));
    const HistoryId discarded = newest();
    ASSERT_TRUE(journal->media().retirePiece(pieces[1].id, "torn"));
    expectKept(RuleReason::PieceRetired, discarded);
}

TEST_F(StandingRulesTest, ANameThatWasGivenAwayDoesNotComeBack)
{
    Rack rack = journal->room().layout()->racks.front();
    const std::string name = rack.name;
    rack.name = "North";
    ASSERT_TRUE(journal->room().changeRack(rack));
    const HistoryId renamed = newest();
    ASSERT_TRUE(journal->room().addRack("a", 1, 1));
    ASSERT_EQ(name, "A");
    expectKept(RuleReason::NameTaken, renamed);
}

TEST_F(StandingRulesTest, AMarkerThatWasGivenAwayDoesNotComeBack)
{
    ASSERT_TRUE(journal->media().remove(mediumNamed("Hemp mat")));
    ASSERT_TRUE(journal->media().remove(mediumNamed("Felt mat")));
    ASSERT_LT(journal->media().all(Listed::All)->size(), static_cast<std::size_t>(kMarkers));
    Medium felt;
    felt.name = "Felt";
    const MediumId first = journal->media().save(felt).value().id;
    ASSERT_TRUE(journal->media().remove(first));
    const HistoryId removed = newest();
    felt.name = "Wool";
    ASSERT_TRUE(journal->media().save(felt));
    expectKept(RuleReason::MarkerTaken, removed);
}

TEST_F(StandingRulesTest, ATrayDoesNotGrowOnPastItsLastCut)
{
    const TrayId tray = sowAt(places[0]);
    wait(9);
    cut(tray, true);
    const HistoryId first = newest();
    cut(tray, true);
    expectKept(RuleReason::GrowsAfterLastCut, first);
}

TEST_F(StandingRulesTest, AHarvestedTrayKeepsALastCut)
{
    const TrayId tray = sowAt(places[0]);
    wait(9);
    const Harvest first = cut(tray, true);
    cut(tray, true);
    const HistoryId second = newest();
    correctToLast(first, false);
    expectKept(RuleReason::NoLastCut, second);
}

TEST_F(StandingRulesTest, StagesStayInTheirOrder)
{
    const TrayId tray = sowAt(places[0]);
    wait(2);
    ASSERT_TRUE(journal->trays().moveOn(tray, clock.now()));
    const HistoryId movedOn = newest();
    wait(2);
    ASSERT_TRUE(journal->trays().moveOn(tray, clock.now()));
    expectKept(RuleReason::StagesOutOfOrder, movedOn);
}

TEST_F(StandingRulesTest, ARoundIsTickedOnce)
{
    const TrayId tray = sowAt(places[0]);
    wait(1);
    const Date day = clock.today();
    ASSERT_TRUE(journal->watering().tick(tray, day, Slot::Morning));
    ASSERT_TRUE(journal->watering().untick(tray, day, Slot::Morning));
    const HistoryId unticked = newest();
    ASSERT_TRUE(journal->watering().tick(tray, day, Slot::Morning));
    expectKept(RuleReason::TickedTwice, unticked);
}

TEST_F(StandingRulesTest, ADayHasOnePriceOfAnItem)
{
    Price price;
    price.item = PriceItem::Packaging;
    price.from = clock.today();
    price.amount = Money::ofCount(10000);
    const Price stored = journal->costs().savePrice(price).value();
    ASSERT_TRUE(journal->costs().removePrice(stored.id));
    const HistoryId removed = newest();
    ASSERT_TRUE(journal->costs().savePrice(price));
    expectKept(RuleReason::PriceTwice, removed);
}

TEST_F(StandingRulesTest, WhatWasBrokenBeforeIsNotHeldAgainstAStep)
{
    // Two racks of one name, as another program might have left them.
    Rack rack = journal->room().layout()->racks.front();
    rack.name = "North";
    ASSERT_TRUE(journal->room().changeRack(rack));
    const HistoryId renamed = newest();
    {
        journal.reset();
        Database database(path(), Access::ReadWrite);
        database.execute("UPDATE rack SET name = 'North'");
    }
    reopen();
    EXPECT_TRUE(journal->undo(renamed));
}

TEST_F(StandingRulesTest, ATrayIsNotReopenedOnAPieceGivenAway)
{
    const TrayId first = sowOn(pieces[0]);
    wait(9);
    const Harvest harvest = cut(first, true);
    ASSERT_TRUE(journal->media().sanitise({pieces[0].id}, "peroxide"));
    sowOn(pieces[0]);
    CutCorrection again{harvest.id, {{grams(300), grams(40)}}, false, {}};
    expectRefused(ErrorKind::Conflict, HarvestReason::PieceInUse,
                  [&] { return journal->harvests().correct(again); });
}

TEST_F(StandingRulesTest, NorOnARetiredOne)
{
    const TrayId first = sowOn(pieces[0]);
    wait(9);
    const Harvest harvest = cut(first, true);
    ASSERT_TRUE(journal->media().retirePiece(pieces[0].id, "torn"));
    CutCorrection again{harvest.id, {{grams(300), grams(40)}}, false, {}};
    expectRefused(ErrorKind::Conflict, HarvestReason::PieceRetired,
                  [&] { return journal->harvests().correct(again); });
}

TEST_F(StandingRulesTest, AReopenedTrayStandsNowhereIfItsPlaceWasUsedSince)
{
    const TrayId first = sowAt(places[0]);
    wait(9);
    const Harvest harvest = cut(first, true);
    wait(1);
    const TrayId second = sowAt(places[0]);
    wait(2);
    ASSERT_TRUE(journal->trays().discard(second, "mould", clock.now()));
    wait(1);
    ASSERT_TRUE(journal->harvests().correct({harvest.id, {{grams(300), grams(40)}}, false, {}}));
    const TraySheet sheet = journal->trays().sheet(first).value();
    EXPECT_EQ(sheet.record.tray.state, TrayState::Growing);
    EXPECT_FALSE(sheet.spot);
}

} // namespace
} // namespace plumule
