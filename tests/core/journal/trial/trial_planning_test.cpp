#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "core/journal/variety/variety_entries.h"
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

} // namespace
} // namespace plumule
