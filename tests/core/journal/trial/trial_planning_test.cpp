#include "tests/core/journal/trial/trial_fixture.h"

#include "core/medium/medium_reason.h"
#include "core/room/room_reason.h"
#include "core/tray/tray_reason.h"
#include "core/trial/trial_reason.h"
#include "core/variety/variety_reason.h"

#include <gmock/gmock.h>
#include <set>

namespace plumule {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

using TrialPlanningTest = TrialTest;

TEST_F(TrialPlanningTest, AFirstDraftStandsOnTheLibraryAndTheNextMorning)
{
    TrialDraft draft = journal->trials().newDraft().value();
    EXPECT_EQ(draft.trial.code, "T1");
    EXPECT_TRUE(draft.plan.variety.isStored());
    EXPECT_EQ(draft.treatments.size(), 2U);
    EXPECT_EQ(draft.trial.control, draft.treatments[0].medium);
    EXPECT_EQ(draft.plan.design, Design::RandomizedBlocks);
    EXPECT_EQ(draft.plan.blocks, 4);
    // The clock stands at 07:30, past the morning's round of 07:00.
    EXPECT_EQ(draft.plan.sowAt(), (Moment{clock.today() + 1, 7 * 60}));
    EXPECT_THAT(draft.trays, SizeIs(8));
    draft.trial.name = "Named";
    EXPECT_TRUE(journal->trials().savePlan(draft));
    EXPECT_EQ(journal->trials().newDraft()->trial.code, "T2");
}

TEST_F(TrialPlanningTest, ADraftFollowsWhatWasSownOfLate)
{
    SowingDraft sowing;
    sowing.variety = cress;
    sowing.at = clock.now();
    for (const auto& [medium, count] : {std::pair(peat.id, 1), std::pair(mix.id, 3)}) {
        sowing.medium = medium;
        sowing.count = count;
        ASSERT_TRUE(journal->trays().sow(sowing));
    }
    SeedLot half;
    half.variety = cress;
    half.lotNumber = "L2";
    half.bought = grams(500);
    ASSERT_TRUE(journal->varieties().saveLot(half));
    clock.set({clock.today() + 1, 6 * 60});
    const TrialDraft draft = journal->trials().newDraft().value();
    EXPECT_EQ(draft.plan.variety, cress);
    EXPECT_EQ(draft.plan.seedLot, lot) << "the fuller one";
    ASSERT_THAT(draft.treatments, SizeIs(2));
    EXPECT_EQ(draft.treatments[0].medium, mix.id) << "sown most";
    EXPECT_EQ(draft.treatments[1].medium, peat.id);
    EXPECT_EQ(draft.plan.sowAt(), (Moment{clock.today(), 7 * 60})) << "still to come";
}

TEST_F(TrialPlanningTest, ADraftWaitsForTheMorningWhenItsPlacesAreFree)
{
    SowingDraft sowing;
    sowing.variety = cress;
    sowing.medium = mix.id;
    sowing.at = clock.now();
    const auto spots = journal->room().freeSpots().value();
    for (const Spot& spot : spots) {
        sowing.places.push_back(spot.place);
    }
    sowing.count = static_cast<int>(sowing.places.size());
    const auto sown = journal->trays().sow(sowing);
    ASSERT_TRUE(sown);
    const Moment harvest = journal->trays().sheet(sown->front())->plan.harvest;
    const TrialDraft draft = journal->trials().newDraft().value();
    ASSERT_FALSE(draft.trays.empty()) << toIso(harvest.date) << " " << toIso(draft.plan.sowOn);
    EXPECT_LE(harvest, draft.plan.sowAt());
    EXPECT_LT(draft.plan.sowAt() + -kMinutesPerDay, harvest) << "the first such morning";
    clock.set({clock.today() - 30, 6 * 60});
    EXPECT_THAT(journal->trials().newDraft()->trays, IsEmpty()) << "none within three weeks";
}

TEST_F(TrialPlanningTest, APlanIsKeptAsOneIntention)
{
    const TrialDraft draft = drawnBeds();
    expectUndoable([&] { return journal->trials().savePlan(draft); });
    EXPECT_EQ(journal->nextUndo()->intention, "trial.plan");
    EXPECT_EQ(journal->nextUndo()->subject, "T1");
    const TrialDraft kept = journal->trials().draft(newestTrial()).value();
    EXPECT_EQ(kept.trial.code, "T1");
    EXPECT_EQ(kept.plan.sowAt(), draft.plan.sowAt());
    EXPECT_EQ(kept.plan.drawNumber, 7);
    ASSERT_EQ(kept.trays.size(), draft.trays.size());
    for (std::size_t i = 0; i < kept.trays.size(); ++i) {
        EXPECT_EQ(kept.trays[i].place, draft.trays[i].place);
        EXPECT_EQ(kept.trays[i].treatment, draft.trays[i].treatment);
        EXPECT_EQ(kept.trays[i].block, draft.trays[i].block);
    }
    EXPECT_FALSE(kept.isSown());
}

TEST_F(TrialPlanningTest, AKeptPlanIsChangedInItsOwnRows)
{
    TrialDraft kept = journal->trials().savePlan(drawnBeds()).value();
    const TrialPlanId plan = kept.plan.id;
    kept.treatments.pop_back();
    kept.plan.design = Design::CompletelyRandom;
    kept.plan.seedPerTray = grams(12);
    kept.treatments[1].feeding = Feeding::NoNutrient;
    kept = drawn(kept);
    expectUndoable([&] { return journal->trials().savePlan(kept); });
    const TrialDraft changed = journal->trials().draft(kept.trial.id).value();
    EXPECT_EQ(changed.plan.id, plan);
    EXPECT_EQ(changed.plan.seedPerTray, grams(12));
    ASSERT_THAT(changed.treatments, SizeIs(2));
    EXPECT_EQ(changed.treatments[1].feeding, Feeding::NoNutrient);
    EXPECT_THAT(changed.trays, SizeIs(8));
    const auto entries = journal->latestEntries(1).value().size();
    ASSERT_TRUE(journal->trials().savePlan(changed));
    EXPECT_FALSE(journal->didLastIntentionChange()) << "nothing new, nothing recorded";
    EXPECT_EQ(journal->latestEntries(1).value().size(), entries);
}

TEST_F(TrialPlanningTest, APlanIsKeptBeforeItsPlacesAreDrawn)
{
    ASSERT_TRUE(journal->trials().savePlan(beds()));
    EXPECT_THAT(journal->trials().draft(newestTrial())->trays, IsEmpty());
    expectRefused(ErrorKind::Missing, TrialReason::LayoutMissing,
                  [&] { return journal->trials().sow(beds(), clock.now()); });
}

TEST_F(TrialPlanningTest, RefusesAPlanThatNamesWhatIsNotThere)
{
    const TrialDraft sound = drawnBeds();
    const auto refused = [&](ErrorKind kind, Reason reason, auto spoil) {
        TrialDraft draft = sound;
        spoil(draft);
        expectRefused(kind, reason, [&] { return journal->trials().savePlan(draft); });
    };
    refused(ErrorKind::Missing, TrialReason::NameMissing,
            [](TrialDraft& d) { d.trial.name = " "; });
    refused(ErrorKind::NotFound, TrialReason::Unknown, [](TrialDraft& d) { d.trial.id = {99}; });
    refused(ErrorKind::NotFound, TrayReason::VarietyUnknown,
            [](TrialDraft& d) { d.plan.variety = {99}; });
    refused(ErrorKind::NotFound, TrayReason::MediumUnknown,
            [](TrialDraft& d) { d.treatments[1].medium = {99}; });
    refused(ErrorKind::NotFound, TrayReason::PlaceUnknown,
            [](TrialDraft& d) { d.trays[0].place = {99}; });
    refused(ErrorKind::NotFound, TrayReason::LotUnknown,
            [](TrialDraft& d) { d.plan.seedLot = SeedLotId{99}; });
    refused(ErrorKind::Invalid, TrayReason::LotOfOtherVariety,
            [&](TrialDraft& d) { d.plan.variety = varietyNamed("Radish"); });
    refused(ErrorKind::Invalid, TrialReason::LayoutUneven,
            [](TrialDraft& d) { d.trays.pop_back(); });
    refused(ErrorKind::Invalid, TrialReason::BlocksDontDivide,
            [](TrialDraft& d) { d.plan.blocks = 3; });
    ASSERT_TRUE(journal->trials().savePlan(sound));
    refused(ErrorKind::Duplicate, TrialReason::CodeTaken,
            [](TrialDraft& d) { d.trial.code = "t1"; });
    EXPECT_EQ(journal->trials().draft({99}).error(),
              (fail(ErrorKind::NotFound, TrialReason::NoPlan).value()));
}

TEST_F(TrialPlanningTest, ASowingIsOneIntentionOfTraysStagesStaysAndPieces)
{
    const TrialDraft draft = drawnBeds();
    expectUndoable(
        [&] { return journal->trials().sow(draft, draft.plan.sowAt(), std::string("Mo")); });
    EXPECT_EQ(journal->nextUndo()->intention, "trial.sow");
    const TrialDraft kept = journal->trials().draft(newestTrial()).value();
    EXPECT_TRUE(kept.isSown());
    EXPECT_EQ(kept.trial.startedOn, draft.plan.sowOn);
    std::set<int> pieces;
    for (std::size_t i = 0; i < kept.trays.size(); ++i) {
        const PlannedTray& planned = kept.trays[i];
        const TraySheet sheet = sheetOf(planned.tray.value());
        const Tray& tray = sheet.record.tray;
        EXPECT_EQ(tray.code, fmt::format("CR{:03}", i + 1)) << "in the order of the layout";
        EXPECT_EQ(tray.trial, kept.trial.id);
        EXPECT_EQ(tray.block, planned.block);
        EXPECT_EQ(tray.medium, kept.treatments[static_cast<std::size_t>(planned.treatment)].medium);
        EXPECT_EQ(sheet.spot.value().place, planned.place);
        EXPECT_EQ(tray.sownAt(), draft.plan.sowAt());
        EXPECT_EQ(tray.seed, grams(10));
        EXPECT_EQ(tray.sownBy, "Mo");
        EXPECT_THAT(sheet.record.stages, SizeIs(3)) << "without the soak";
        EXPECT_EQ(sheet.record.pieceNumber.has_value(), tray.medium == mesh.id);
        if (sheet.record.pieceNumber) {
            pieces.insert(*sheet.record.pieceNumber);
        }
    }
    EXPECT_THAT(pieces, ElementsAre(1, 2, 3, 4));
    const SeedLotStock stock = journal->varieties().lots(cress).value().at(0);
    EXPECT_EQ(stock.left, grams(1000 - 12 * 10));
    EXPECT_THAT(journal->room().freeSpots().value(), SizeIs(4));
    EXPECT_THAT(journal->faults().value(), IsEmpty());
}

TEST_F(TrialPlanningTest, AKeptPlanIsSownWithTheTraysThatItNames)
{
    const TrialDraft kept = journal->trials().savePlan(drawnBeds()).value();
    EXPECT_THAT(sown(kept), SizeIs(12));
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(journal->trials().draft(kept.trial.id).value(), kept);
    EXPECT_THAT(journal->trays().list({}).value(), IsEmpty());
}

TEST_F(TrialPlanningTest, ASoakBeginsAtThePlannedTime)
{
    TrialDraft draft = drawnBeds();
    draft.plan.startsWithSoak = true;
    const TraySheet sheet = sheetOf(sown(draft).front());
    EXPECT_THAT(sheet.record.stages, SizeIs(4));
    EXPECT_EQ(sheet.record.stages[0].started(), draft.plan.sowAt());
    EXPECT_EQ(sheet.record.tray.sownAt(), draft.plan.sowAt() + 8 * 60);
}

// Whole numbers of what each feeding comes to: mix and mesh are inert, peat bears nutrient.
TEST_F(TrialPlanningTest, FeedingDecidesTheWaterOfTheFeedingStagesAlone)
{
    TrialDraft draft = beds();
    draft.plan.blocks = 2;
    draft.plan.traysEach = 2;
    draft.treatments = {
        treated(mix),  treated(mix, Feeding::NoNutrient),  treated(mix, Feeding::Nutrient),
        treated(peat), treated(peat, Feeding::NoNutrient), treated(peat, Feeding::Nutrient)};
    draft.plan.design = Design::CompletelyRandom;
    draft = drawn(draft);
    sown(draft);
    const WaterKind expected[] = {WaterKind::Nutrient, WaterKind::PhSet, WaterKind::Nutrient,
                                  WaterKind::PhSet,    WaterKind::PhSet, WaterKind::Nutrient};
    const TrialDraft kept = journal->trials().draft(newestTrial()).value();
    for (const PlannedTray& planned : kept.trays) {
        const TraySheet sheet = sheetOf(planned.tray.value());
        EXPECT_EQ(sheet.record.stages[0].water, WaterKind::Plain);
        EXPECT_EQ(toText(sheet.record.stages[2].water),
                  std::string(toText(expected[planned.treatment])))
            << planned.treatment;
    }
}

TEST_F(TrialPlanningTest, RefusesAFeedingThatTheProtocolHasNoStageFor)
{
    Protocol protocol = journal->varieties().protocol(cress).value();
    protocol.stages.back().water = WaterKind::Plain;
    ASSERT_TRUE(journal->varieties().save(protocol));
    TrialDraft draft = drawnBeds();
    draft.treatments[0].feeding = Feeding::Nutrient;
    expectRefused(ErrorKind::Invalid, TrialReason::FeedingWithoutNutrient,
                  [&] { return journal->trials().sow(draft, clock.now()); });
    draft.treatments[0].feeding = Feeding::AsProtocol;
    EXPECT_TRUE(journal->trials().sow(draft, clock.now()));
}

TEST_F(TrialPlanningTest, TakesCleanFreePiecesOfTheFewestUses)
{
    // Piece 1 was used twice and sanitised, piece 2 carries a tray.
    const auto pieces = journal->media().pieces(mesh.id).value();
    SowingDraft once;
    once.variety = cress;
    once.medium = mesh.id;
    once.at = {clock.today() - 20, 480};
    for (int use = 0; use < 2; ++use) {
        once.pieces = {pieces[0].piece.id};
        const TrayId tray = journal->trays().sow(once)->front();
        ASSERT_TRUE(journal->trays().discard(tray, "test", {clock.today() - 10, 480}));
        ASSERT_TRUE(journal->media().sanitise({pieces[0].piece.id}, "peroxide"));
        once.at = {clock.today() - 9, 480};
    }
    const TrialDraft draft = drawnBeds();
    ASSERT_TRUE(journal->media().sanitise({pieces[0].piece.id}, "peroxide"));
    once.pieces = {pieces[1].piece.id};
    ASSERT_TRUE(journal->trays().sow(once));
    sown(draft);
    std::vector<int> used;
    const TrialDraft kept = journal->trials().draft(newestTrial()).value();
    for (const PlannedTray& planned : kept.trays) {
        if (const auto number = sheetOf(*planned.tray).record.pieceNumber) {
            used.push_back(*number);
        }
    }
    EXPECT_THAT(used, ElementsAre(3, 4, 5, 1));
}

TEST_F(TrialPlanningTest, RefusesASowingWithTooFewCleanPieces)
{
    const auto pieces = journal->media().pieces(mesh.id).value();
    ASSERT_TRUE(journal->media().retirePiece(pieces[0].piece.id, "torn"));
    ASSERT_TRUE(journal->media().retirePiece(pieces[1].piece.id, "torn"));
    const TrialDraft draft = drawnBeds();
    expectRefused(ErrorKind::Conflict, TrialReason::TooFewPieces,
                  [&] { return journal->trials().sow(draft, clock.now()); });
    EXPECT_EQ(journal->trials().sow(draft, clock.now()).error().values.front(), "Test mesh");
}

TEST_F(TrialPlanningTest, RefusesASowingWhereAPlaceIsTaken)
{
    const TrialDraft draft = drawnBeds();
    SowingDraft other;
    other.variety = cress;
    other.medium = mix.id;
    other.at = clock.now();
    other.places = {*draft.trays[5].place};
    ASSERT_TRUE(journal->trays().sow(other));
    expectRefused(ErrorKind::Conflict, TrayReason::PlaceTaken,
                  [&] { return journal->trials().sow(draft, clock.now()); });
}

TEST_F(TrialPlanningTest, ATrialIsSownOnceAndThenStands)
{
    const TrialDraft kept = journal->trials().savePlan(drawnBeds()).value();
    sown(kept);
    expectRefused(ErrorKind::Conflict, TrialReason::Sown,
                  [&] { return journal->trials().sow(kept, clock.now()); });
    expectRefused(ErrorKind::Conflict, TrialReason::Sown,
                  [&] { return journal->trials().savePlan(kept); });
    expectRefused(ErrorKind::InUse, TrialReason::InUse,
                  [&] { return journal->trials().remove(kept.trial.id); });
}

TEST_F(TrialPlanningTest, APlanGoesWithItsTrial)
{
    const TrialDraft kept = journal->trials().savePlan(drawnBeds()).value();
    expectUndoable([&] { return journal->trials().remove(kept.trial.id); });
    EXPECT_THAT(journal->trials().list().value(), IsEmpty());
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(journal->trials().draft(kept.trial.id).value(), kept);
}

TEST_F(TrialPlanningTest, WhatAPlanNamesIsNotRemoved)
{
    ASSERT_TRUE(journal->trials().savePlan(drawnBeds()));
    expectRefused(ErrorKind::InUse, VarietyReason::LotInUse,
                  [&] { return journal->varieties().removeLot(lot); });
    expectRefused(ErrorKind::InUse, MediumReason::InUse,
                  [&] { return journal->media().remove(peat.id); });
    const Shelf shelf = journal->room().layout()->shelves.front();
    expectRefused(ErrorKind::InUse, RoomReason::ShelfInUse,
                  [&] { return journal->room().removeShelf(shelf.id); });
}

TEST_F(TrialPlanningTest, APlaceIsFreeWhenItsTrayIsDueBefore)
{
    SowingDraft earlier;
    earlier.variety = cress;
    earlier.medium = mix.id;
    const auto spots = journal->room().freeSpots().value();
    earlier.places = {spots[0].place};
    earlier.at = {clock.today() - 5, 8 * 60}; // due for harvest in five days at 08:00
    ASSERT_TRUE(journal->trays().sow(earlier));
    const auto freeOn = [&](int days, int minute) {
        TrialDraft draft = beds();
        draft.plan.sowOn = clock.today() + days;
        draft.plan.sowMinute = minute;
        return journal->trials().freePlaces(draft).value().size();
    };
    EXPECT_EQ(freeOn(1, 8 * 60), 15U);
    EXPECT_EQ(freeOn(5, 8 * 60 - 1), 15U);
    EXPECT_EQ(freeOn(5, 8 * 60), 16U);
    const auto tray = journal->trays().list({}).value().at(0).record.tray.id;
    ASSERT_TRUE(journal->trays().moveOn(tray, clock.now()));
    // Its light begins now and lasts six days.
    ASSERT_TRUE(journal->trays().moveOn(tray, clock.now()));
    EXPECT_EQ(freeOn(5, 8 * 60), 15U);
    EXPECT_EQ(freeOn(6, 8 * 60), 16U);
}

TEST_F(TrialPlanningTest, PlacesOfOtherPlansAreNotFreeButItsOwnAre)
{
    TrialDraft first = beds();
    first.plan.blocks = 2;
    first.plan.traysEach = 2;
    first = journal->trials().savePlan(drawn(first)).value();
    EXPECT_THAT(journal->trials().freePlaces(first).value(), SizeIs(16));
    EXPECT_THAT(journal->trials().freePlaces(beds()).value(), SizeIs(10));
    EXPECT_EQ(drawn(first).trays.size(), first.trays.size());
    EXPECT_EQ(journal->trials().draw(beds()).error(),
              (fail(ErrorKind::Conflict, TrialReason::TooFewPlaces, 10, beds().count()).value()));
}

TEST_F(TrialPlanningTest, ThePreparationAddsUpByHand)
{
    const Preparation needs = journal->trials().preparation(drawnBeds()).value();
    ASSERT_THAT(needs.supplies, SizeIs(6));
    const auto expectSupply = [&](std::size_t i, SupplyKind kind, const std::string& name,
                                  double needed, std::optional<double> inStock,
                                  std::optional<double> cost) {
        const Supply& supply = needs.supplies[i];
        EXPECT_EQ(supply.kind, kind) << i;
        EXPECT_EQ(supply.name, name);
        EXPECT_NEAR(supply.needed, needed, 1e-9) << name;
        EXPECT_EQ(supply.inStock, inStock) << name;
        ASSERT_EQ(supply.cost.has_value(), cost.has_value()) << name;
        EXPECT_NEAR(supply.cost.value_or(0), cost.value_or(0), 1e-9) << name;
        EXPECT_FALSE(supply.isShort()) << name;
    };
    // 12 trays × 10 g, of 1000 g for 20.00.
    expectSupply(0, SupplyKind::Seed, "Cress L1", 120, 1000, 2.4);
    expectSupply(1, SupplyKind::LooseMix, "Test mix", 6, std::nullopt, 3);
    // 4 pieces of 18.00 over 20 uses.
    expectSupply(2, SupplyKind::Pieces, "Test mesh", 4, 5, 3.6);
    expectSupply(3, SupplyKind::LooseMix, "Test peat", 8, std::nullopt, 2);
    // Mix and mesh: 8 trays × 6 days × 200 mL = 9.6 L at 8 mL/L, 12.50 a litre.
    expectSupply(4, SupplyKind::Concentrate, "Grow", 76.8, std::nullopt, 0.96);
    // All: 12 trays × (2 days × 2 × 50 mL + 6 × 200 mL) = 16.8 L at 0.01.
    expectSupply(5, SupplyKind::Water, "", 16.8, std::nullopt, 0.168);
    EXPECT_EQ(needs.trays, 12);
    EXPECT_EQ(needs.placesFree, 16);
    EXPECT_NEAR(needs.cost, 2.4 + 3 + 3.6 + 2 + 0.96 + 0.168, 1e-9);
    EXPECT_EQ(needs.currency, "EUR");
}

TEST_F(TrialPlanningTest, ThePreparationFollowsFeedingSeedAndStock)
{
    TrialDraft draft = beds();
    draft.treatments[1] = treated(mix, Feeding::NoNutrient);
    draft.treatments[2].feeding = Feeding::Nutrient;
    draft.plan.seedPerTray = grams(100);
    Preparation needs = journal->trials().preparation(draft).value();
    ASSERT_THAT(needs.supplies, SizeIs(5));
    EXPECT_NEAR(needs.supplies[0].needed, 1200, 1e-9);
    EXPECT_TRUE(needs.supplies[0].isShort());
    EXPECT_NEAR(needs.supplies[1].needed, 12, 1e-9) << "both treatments on mix, 8 trays";
    // Mix as the protocol says and peat fed: 8 trays × 1.2 L × 8 mL/L.
    EXPECT_NEAR(needs.supplies[3].needed, 76.8, 1e-9);

    draft = beds();
    draft.plan.seedLot.reset();
    ASSERT_TRUE(
        journal->media().retirePiece(journal->media().pieces(mesh.id).value()[0].piece.id, "torn"));
    ASSERT_TRUE(
        journal->media().retirePiece(journal->media().pieces(mesh.id).value()[0].piece.id, "torn"));
    needs = journal->trials().preparation(draft).value();
    EXPECT_EQ(needs.supplies[0].name, "Cress");
    EXPECT_EQ(needs.supplies[0].inStock, 1000);
    EXPECT_FALSE(needs.supplies[0].cost) << "no lot, no price";
    EXPECT_TRUE(needs.supplies[2].isShort()) << "three clean pieces for four trays";
    EXPECT_NEAR(needs.cost, 3 + 3.6 + 2 + 0.96 + 0.168, 1e-9);
    draft.plan.variety = {99};
    EXPECT_EQ(journal->trials().preparation(draft).error().kind, ErrorKind::NotFound);
}

} // namespace
} // namespace plumule
