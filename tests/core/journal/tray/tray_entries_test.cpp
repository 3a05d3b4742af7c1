#include "core/journal/cost/cost_entries.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include "core/tray/tray_reason.h"

#include <fstream>

namespace plumule {
namespace {

constexpr int kDayMinutes = kMinutesPerDay;

class TrayEntriesTest : public JournalTest
{
protected:
    SowingDraft draftOf(const std::string& variety = "Broccoli",
                        const std::string& medium = "Coir mix")
    {
        SowingDraft draft;
        draft.variety = varietyNamed(variety);
        draft.medium = mediumNamed(medium);
        draft.at = clock.now();
        return draft;
    }
    TrayId sowOne() { return journal->trays().sow(draftOf()).value().front(); }
    TrayId sowAt(PlaceId place)
    {
        SowingDraft draft = draftOf();
        draft.places = {place};
        return journal->trays().sow(draft).value().front();
    }
    std::vector<PlaceId> places()
    {
        std::vector<PlaceId> ids;
        for (const Spot& spot : journal->room().layout().value().spots()) {
            ids.push_back(spot.place);
        }
        return ids;
    }
    TraySheet sheet(TrayId tray) { return journal->trays().sheet(tray).value(); }
    std::filesystem::path pictureFile()
    {
        const auto file = folder.path() / "shot.JPG";
        std::ofstream(file, std::ios::binary) << "picture";
        return file;
    }
};

TEST_F(TrayEntriesTest, TellsWhichActsATrayHadAPartIn)
{
    SowingDraft draft = draftOf();
    draft.count = 3;
    const auto trays = journal->trays().sow(draft).value();
    ASSERT_TRUE(journal->room().addRack("Z", 1, 1));
    ASSERT_TRUE(journal->trays().writeNote(trays[0], "dry", clock.now()));
    ASSERT_TRUE(journal->trays().setAside(trays[1], "fell"));
    const auto acts = journal->latestEntries(10).value(); // newest first
    ASSERT_EQ(acts.size(), 4U);
    using Acts = std::set<HistoryId>;
    EXPECT_EQ(journal->trays().actsOn(trays[0], 10).value(), (Acts{acts[3].id, acts[1].id}));
    EXPECT_EQ(journal->trays().actsOn(trays[1], 10).value(), (Acts{acts[3].id, acts[0].id}));
    EXPECT_EQ(journal->trays().actsOn(trays[2], 10).value(), Acts{acts[3].id});
    EXPECT_EQ(journal->trays().actsOn(trays[2], 3).value(), Acts{}) << "of the newest three";
    ASSERT_TRUE(journal->undo(acts[1].id));
    EXPECT_TRUE(journal->trays().actsOn(trays[0], 10)->contains(acts[1].id)) << "though taken back";
    // An update tells of a row which cells changed, not whose it is.
    const Stage first = sheet(trays[2]).record.stages.front().stage;
    ASSERT_TRUE(journal->trays().correctStart(trays[2], first, clock.now() + -60));
    EXPECT_EQ(journal->trays().actsOn(trays[2], 10)->size(), 2U);
}

TEST_F(TrayEntriesTest, SowsManyTraysAtOnceAsOneIntention)
{
    SowingDraft draft = draftOf();
    draft.count = 3;
    draft.places = {places()[2], places()[0]};
    expectUndoable([&] { return journal->trays().sow(draft); });
    const auto rows = journal->trays().list({}).value();
    ASSERT_EQ(rows.size(), 3u);
    EXPECT_EQ(rows[0].record.tray.code, "BR001");
    EXPECT_EQ(rows[2].record.tray.code, "BR003");
    EXPECT_EQ(rows[0].record.tray.seed, grams(25)) << "the variety's";
    EXPECT_EQ(rows[0].spot->place, places()[2]);
    EXPECT_EQ(rows[1].spot->place, places()[0]);
    EXPECT_FALSE(rows[2].spot);
    EXPECT_EQ(rows[0].plan.harvest, clock.now() + 12 * kDayMinutes);
    EXPECT_EQ(journal->nextUndo()->intention, "tray.sow");
    EXPECT_EQ(journal->nextUndo()->subject, "BR001, BR002, BR003");
}

TEST_F(TrayEntriesTest, CodesAreNeverGivenTwice)
{
    EXPECT_EQ(journal->trays().nextCode(varietyNamed("Broccoli")), "BR001");
    const TrayId first = sowOne();
    ASSERT_TRUE(journal->trays().discard(first, "mould", clock.now()));
    EXPECT_EQ(journal->trays().nextCode(varietyNamed("Broccoli")), "BR002");
    SowingDraft draft = draftOf();
    draft.code = " br001 ";
    expectRefused(ErrorKind::Duplicate, TrayReason::CodeTaken,
                  [&] { return journal->trays().sow(draft); });
    draft.code = "BR040";
    ASSERT_TRUE(journal->trays().sow(draft));
    EXPECT_EQ(journal->trays().nextCode(varietyNamed("Broccoli")), "BR041");
    EXPECT_FALSE(journal->trays().nextCode(VarietyId{99}));
}

TEST_F(TrayEntriesTest, FindsATrayByItsCodeHoweverItIsTyped)
{
    const TrayId tray = sowOne();
    EXPECT_EQ(journal->trays().find(" br001"), tray);
    const auto missing = journal->trays().find("BR009");
    ASSERT_FALSE(missing);
    EXPECT_EQ(missing.error(),
              (fail(ErrorKind::NotFound, TrayReason::CodeUnknown, "BR009").value()));
}

TEST_F(TrayEntriesTest, RefusesAPlaceThatIsTaken)
{
    sowAt(places()[0]);
    SowingDraft draft = draftOf();
    draft.count = 2;
    draft.places = {places()[1], places()[0]};
    expectRefused(ErrorKind::Conflict, TrayReason::PlaceTaken,
                  [&] { return journal->trays().sow(draft); });
    draft.places = {PlaceId{99}};
    expectRefused(ErrorKind::NotFound, TrayReason::PlaceUnknown,
                  [&] { return journal->trays().sow(draft); });
}

TEST_F(TrayEntriesTest, RefusesAPlaceThatWasStillTakenThen)
{
    const TrayId first = sowAt(places()[0]);
    const TrayId elsewhere = sowAt(places()[1]);
    const Moment left = clock.now() + kDayMinutes;
    clock.set(left + 60);
    ASSERT_TRUE(journal->trays().discard(first, "mould", left));
    SowingDraft draft = draftOf();
    draft.places = {places()[0]};
    draft.at = left + -1;
    const auto refused = journal->trays().sow(draft);
    ASSERT_FALSE(refused);
    EXPECT_TRUE(refused.error().is(TrayReason::PlaceTakenThen));
    EXPECT_EQ(refused.error().values.at(2), "BR001");
    expectRefused(ErrorKind::Conflict, TrayReason::PlaceTakenThen,
                  [&] { return journal->trays().moveTo(elsewhere, places()[0], left + -1); });
    draft.at = left;
    EXPECT_TRUE(journal->trays().sow(draft)) << "from the minute it was left on it is free";
}

TEST_F(TrayEntriesTest, CorrectedStartsDoNotReachIntoTheStayBefore)
{
    const TrayId first = sowAt(places()[0]);
    const Moment left = clock.now() + kDayMinutes;
    clock.set(left + 120);
    ASSERT_TRUE(journal->trays().discard(first, "mould", left));
    const TrayId second = sowAt(places()[0]);
    ASSERT_TRUE(journal->trays().correctStart(second, sheet(second).record.stages.front().stage,
                                              left + -60));
    const Stay stay = sheet(second).stays.front();
    EXPECT_EQ((Moment{stay.fromOn, stay.fromMinute}), left);
}

TEST_F(TrayEntriesTest, RefusesWhatIsNotThereOrOfAnotherVariety)
{
    SowingDraft draft = draftOf();
    draft.variety = {99};
    expectRefused(ErrorKind::NotFound, TrayReason::VarietyUnknown,
                  [&] { return journal->trays().sow(draft); });
    draft = draftOf();
    draft.medium = {99};
    expectRefused(ErrorKind::NotFound, TrayReason::MediumUnknown,
                  [&] { return journal->trays().sow(draft); });
    SeedLot lot;
    lot.variety = varietyNamed("Radish");
    lot.lotNumber = "R-1";
    draft = draftOf();
    draft.seedLot = journal->varieties().saveLot(lot).value().id;
    expectRefused(ErrorKind::Invalid, TrayReason::LotOfOtherVariety,
                  [&] { return journal->trays().sow(draft); });
    draft.seedLot = SeedLotId{99};
    expectRefused(ErrorKind::NotFound, TrayReason::LotUnknown,
                  [&] { return journal->trays().sow(draft); });
    draft = draftOf();
    draft.trial = TrialId{99};
    expectRefused(ErrorKind::NotFound, TrayReason::TrialUnknown,
                  [&] { return journal->trays().sow(draft); });
}

TEST_F(TrayEntriesTest, RefusesAVarietyWithoutAProtocol)
{
    Protocol bare;
    bare.variety.name = "Unknown cress";
    bare.variety.codePrefix = "UC";
    ASSERT_TRUE(journal->varieties().save(bare));
    expectRefused(ErrorKind::Missing, TrayReason::ProtocolMissing,
                  [&] { return journal->trays().sow(draftOf("Unknown cress")); });
}

TEST_F(TrayEntriesTest, SowsOnPiecesThatAreFreeAndClean)
{
    const MediumId mesh = mediumNamed("Steel mesh");
    const auto pieces = journal->media().addPieces(mesh, 2, std::nullopt).value();
    SowingDraft draft = draftOf("Broccoli", "Steel mesh");
    expectRefused(ErrorKind::Invalid, TrayReason::PieceCount,
                  [&] { return journal->trays().sow(draft); });
    draft.pieces = {pieces[0].id};
    const TrayId tray = journal->trays().sow(draft).value().front();
    EXPECT_EQ(sheet(tray).record.pieceNumber, 1);
    expectRefused(ErrorKind::Conflict, TrayReason::PieceInUse,
                  [&] { return journal->trays().sow(draft); });
    ASSERT_TRUE(journal->trays().discard(tray, "mould", clock.now() + kDayMinutes));
    clock.set(clock.now() + 2 * kDayMinutes);
    draft.at = clock.now();
    expectRefused(ErrorKind::Conflict, TrayReason::PieceNotSanitised,
                  [&] { return journal->trays().sow(draft); });
    ASSERT_TRUE(journal->media().sanitise({pieces[0].id}, "peroxide"));
    EXPECT_TRUE(journal->trays().sow(draft));
    ASSERT_TRUE(journal->media().retirePiece(pieces[1].id, "torn"));
    draft.pieces = {pieces[1].id};
    expectRefused(ErrorKind::Conflict, TrayReason::PieceRetired,
                  [&] { return journal->trays().sow(draft); });
}

TEST_F(TrayEntriesTest, SoakedSeedIsSownWhenTheSoakEnds)
{
    SowingDraft draft = draftOf("Pea shoots");
    draft.startsWithSoak = true;
    const TrayId tray = journal->trays().sow(draft).value().front();
    EXPECT_EQ(sheet(tray).record.tray.sownAt(), clock.now() + 6 * 60) << "as planned";
    const Moment sown = clock.now() + 9 * 60;
    expectUndoable([&] { return journal->trays().moveOn(tray, sown); });
    const TraySheet after = sheet(tray);
    EXPECT_EQ(after.record.tray.sownAt(), sown);
    EXPECT_EQ(after.plan.current, 1u);
    EXPECT_EQ(after.plan.spans[1].start, sown);
    EXPECT_EQ(after.plan.harvest - sown, 10 * kDayMinutes);
}

TEST_F(TrayEntriesTest, NotYetInTheSoakMovesTheDayOfSowing)
{
    SowingDraft draft = draftOf("Pea shoots");
    draft.startsWithSoak = true;
    const TrayId tray = journal->trays().sow(draft).value().front();
    ASSERT_TRUE(journal->trays().notYet(tray, kDayMinutes));
    EXPECT_EQ(sheet(tray).record.tray.sownAt(), clock.now() + (6 * 60 + kDayMinutes));
}

TEST_F(TrayEntriesTest, MovesOnThroughItsStagesAndNoFurther)
{
    const TrayId tray = sowOne();
    const Moment early = clock.now() + 2 * kDayMinutes;
    expectUndoable([&] { return journal->trays().moveOn(tray, early); });
    const StagePlan plan = sheet(tray).plan;
    EXPECT_EQ(plan.current, 1u);
    EXPECT_EQ(plan.harvest - plan.harvestPlanned, -kDayMinutes);
    expectRefused(ErrorKind::Invalid, TrayReason::StartOutOfOrder,
                  [&] { return journal->trays().moveOn(tray, clock.now()); });
    ASSERT_TRUE(journal->trays().moveOn(tray, early + kDayMinutes));
    expectRefused(ErrorKind::Conflict, TrayReason::OnlyHarvestLeft,
                  [&] { return journal->trays().moveOn(tray, early + 3 * kDayMinutes); });
    expectRefused(ErrorKind::NotFound, TrayReason::Unknown,
                  [&] { return journal->trays().moveOn(TrayId{99}, early); });
}

TEST_F(TrayEntriesTest, NotYetMovesTheRestByThatMuch)
{
    const TrayId tray = sowOne();
    clock.set(clock.now() + 3 * kDayMinutes);
    expectUndoable([&] { return journal->trays().notYet(tray, 12 * 60); });
    const StagePlan plan = sheet(tray).plan;
    EXPECT_EQ(plan.spans[1].start - plan.spans[1].planned, 12 * 60);
    EXPECT_EQ(plan.harvest - plan.harvestPlanned, 12 * 60);
    expectRefused(ErrorKind::Invalid, TrayReason::Delay,
                  [&] { return journal->trays().notYet(tray, 0); });
}

TEST_F(TrayEntriesTest, NotYetAfterDaysOfLatenessCountsFromThePresentRound)
{
    const TrayId tray = sowOne();
    clock.set(clock.now() + 5 * kDayMinutes);
    ASSERT_TRUE(journal->trays().notYet(tray, 12 * 60));
    EXPECT_EQ(sheet(tray).plan.spans[1].start, Moment(clock.today(), 19 * 60));
}

TEST_F(TrayEntriesTest, CorrectsAStartBetweenItsNeighbours)
{
    const TrayId tray = sowOne();
    const Moment sown = clock.now();
    ASSERT_TRUE(journal->trays().moveOn(tray, sown + 3 * kDayMinutes));
    expectUndoable([&] {
        return journal->trays().correctStart(tray, Stage::Blackout, sown + 2 * kDayMinutes);
    });
    EXPECT_EQ(sheet(tray).plan.spans[1].start, sown + 2 * kDayMinutes);
    expectRefused(ErrorKind::Invalid, TrayReason::StartOutOfOrder,
                  [&] { return journal->trays().correctStart(tray, Stage::Blackout, sown + -1); });
    expectRefused(ErrorKind::Conflict, TrayReason::StageNotBegun, [&] {
        return journal->trays().correctStart(tray, Stage::Light, sown + 4 * kDayMinutes);
    });
}

TEST_F(TrayEntriesTest, CorrectingTheFirstStartMovesTheDayOfSowingAndTheStay)
{
    const TrayId tray = sowAt(places()[0]);
    const Moment dayBefore = clock.now() + -kDayMinutes;
    expectUndoable(
        [&] { return journal->trays().correctStart(tray, Stage::UnderWeight, dayBefore); });
    const TraySheet after = sheet(tray);
    EXPECT_EQ(after.record.tray.sownAt(), dayBefore);
    EXPECT_EQ(after.stays.at(0).fromOn, dayBefore.date);
    EXPECT_EQ(after.plan.harvest - after.plan.harvestPlanned, -kDayMinutes);
}

TEST_F(TrayEntriesTest, ADiscardedTrayVacatesItsPlaceAndMovesNoMore)
{
    const TrayId tray = sowAt(places()[0]);
    expectRefused(ErrorKind::Missing, TrayReason::DiscardReasonMissing,
                  [&] { return journal->trays().discard(tray, "  ", clock.now()); });
    expectUndoable(
        [&] { return journal->trays().discard(tray, " mould ", clock.now() + kDayMinutes); });
    const TraySheet after = sheet(tray);
    EXPECT_EQ(after.record.tray.state, TrayState::Discarded);
    EXPECT_EQ(after.record.tray.discardReason, "mould");
    EXPECT_FALSE(after.spot);
    EXPECT_EQ(after.record.place, places()[0]);
    EXPECT_EQ(journal->room().freeSpots().value().size(), places().size());
    const Moment later = clock.now() + 2 * kDayMinutes;
    expectRefused(ErrorKind::Conflict, TrayReason::NotGrowing,
                  [&] { return journal->trays().discard(tray, "again", later); });
    expectRefused(ErrorKind::Conflict, TrayReason::NotGrowing,
                  [&] { return journal->trays().moveOn(tray, later); });
    expectRefused(ErrorKind::Conflict, TrayReason::NotGrowing,
                  [&] { return journal->trays().notYet(tray, 60); });
    expectRefused(ErrorKind::Conflict, TrayReason::NotGrowing,
                  [&] { return journal->trays().moveTo(tray, places()[1], later); });
}

TEST_F(TrayEntriesTest, MovesATrayToAFreePlaceAndOffTheRacks)
{
    const TrayId tray = sowAt(places()[0]);
    sowAt(places()[1]);
    const Moment later = clock.now() + kDayMinutes;
    expectRefused(ErrorKind::Conflict, TrayReason::PlaceTaken,
                  [&] { return journal->trays().moveTo(tray, places()[1], later); });
    expectRefused(ErrorKind::Invalid, TrayReason::MoveBeforeStay,
                  [&] { return journal->trays().moveTo(tray, places()[2], clock.now() + -1); });
    expectUndoable([&] { return journal->trays().moveTo(tray, places()[2], later); });
    EXPECT_EQ(journal->nextUndo()->details, (std::vector<std::string>{"A1", "3"}));
    EXPECT_EQ(sheet(tray).spot->place, places()[2]);
    EXPECT_EQ(sheet(tray).stays.size(), 2u);
    expectUndoable([&] { return journal->trays().moveTo(tray, std::nullopt, later + 60); });
    EXPECT_EQ(journal->nextUndo()->details, std::vector<std::string>{""});
    EXPECT_FALSE(sheet(tray).spot);
    const std::string before = dump();
    ASSERT_TRUE(journal->trays().moveTo(tray, std::nullopt, later + 120));
    EXPECT_EQ(before, dump()) << "it stood nowhere already";
}

TEST_F(TrayEntriesTest, SetsATrayAsideAndCountsItAgain)
{
    const TrayId tray = sowOne();
    expectUndoable([&] { return journal->trays().setAside(tray, "knocked over"); });
    EXPECT_EQ(sheet(tray).record.tray.setAsideReason, "knocked over");
    expectRefused(ErrorKind::Missing, TrayReason::SetAsideReasonMissing,
                  [&] { return journal->trays().setAside(tray, ""); });
    expectUndoable([&] { return journal->trays().setAside(tray, std::nullopt); });
    EXPECT_FALSE(sheet(tray).record.tray.setAsideReason);
}

TEST_F(TrayEntriesTest, NotesSeveralHeightsADay)
{
    const TrayId tray = sowOne();
    expectUndoable([&] {
        return journal->trays().noteHeight(tray, millimetres(12), ReadFrom::Rim, clock.now());
    });
    ASSERT_TRUE(
        journal->trays().noteHeight(tray, millimetres(35), ReadFrom::Surface, clock.now() + 5));
    EXPECT_EQ(sheet(tray).heights.size(), 2u);
    expectRefused(ErrorKind::Invalid, TrayReason::HeightRange, [&] {
        return journal->trays().noteHeight(tray, millimetres(-21), ReadFrom::Rim, clock.now());
    });
}

TEST_F(TrayEntriesTest, WritesAndRemovesNotes)
{
    const TrayId tray = sowOne();
    expectUndoable([&] { return journal->trays().writeNote(tray, " even ", clock.now()); });
    const auto notes = sheet(tray).notes;
    ASSERT_EQ(notes.size(), 1u);
    EXPECT_EQ(notes[0].text, "even");
    expectRefused(ErrorKind::Missing, TrayReason::NoteMissing,
                  [&] { return journal->trays().writeNote(tray, " ", clock.now()); });
    expectUndoable([&] { return journal->trays().removeNote(notes[0].id); });
    EXPECT_TRUE(sheet(tray).notes.empty());
}

TEST_F(TrayEntriesTest, CopiesAPhotoBesideTheJournal)
{
    const TrayId tray = sowOne();
    const auto file = pictureFile();
    expectUndoable([&] { return journal->trays().attachPhoto(tray, file, "roots", clock.now()); });
    const Photo second = journal->trays().attachPhoto(tray, file, "", clock.now()).value();
    const auto photos = sheet(tray).photos;
    ASSERT_EQ(photos.size(), 2u);
    EXPECT_EQ(photos[0].fileName, "BR001 2026-03-02 1.JPG");
    EXPECT_EQ(second.fileName, "BR001 2026-03-02 2.JPG");
    EXPECT_TRUE(std::filesystem::exists(journal->photoFolder() / photos[0].fileName));
    expectUndoable([&] { return journal->trays().removePhoto(second.id); });
    EXPECT_TRUE(std::filesystem::exists(journal->photoFolder() / second.fileName));
}

TEST_F(TrayEntriesTest, RefusesAPhotoThatIsNotThereAndKeepsNoCopyOfOneNotRecorded)
{
    const TrayId tray = sowOne();
    expectRefused(ErrorKind::Unreadable, TrayReason::PhotoUnreadable, [&] {
        return journal->trays().attachPhoto(tray, folder.path() / "gone.jpg", "", clock.now());
    });
    expectRefused(ErrorKind::NotFound, TrayReason::Unknown, [&] {
        return journal->trays().attachPhoto(TrayId{99}, pictureFile(), "", clock.now());
    });
    EXPECT_FALSE(std::filesystem::exists(journal->photoFolder()));
}

TEST_F(TrayEntriesTest, TheListIsFilteredAndShowsYields)
{
    const TrayId tray = sowAt(places()[0]);
    ASSERT_TRUE(journal->trays().sow(draftOf("Radish", "Hemp mat")));
    TrayFilter filter;
    filter.text = "hemp";
    ASSERT_EQ(journal->trays().list(filter).value().size(), 1u);
    EXPECT_EQ(journal->trays().list(filter).value()[0].record.tray.code, "RD001");
    filter = {};
    filter.variety = varietyNamed("Broccoli");
    const auto rows = journal->trays().list(filter).value();
    ASSERT_EQ(rows.size(), 1u);
    EXPECT_EQ(rows[0].record.tray.id, tray);
    EXPECT_FALSE(rows[0].yield);
    EXPECT_TRUE(rows[0].spot);
}

TEST_F(TrayEntriesTest, TheSheetHasEverythingOfATray)
{
    const TrayId tray = sowAt(places()[0]);
    ASSERT_TRUE(journal->trays().moveOn(tray, clock.now() + 3 * kDayMinutes));
    ASSERT_TRUE(journal->trays().moveOn(tray, clock.now() + 4 * kDayMinutes));
    clock.set(clock.now() + 11 * kDayMinutes);
    ASSERT_TRUE(journal->watering().tick(tray, clock.today(), Slot::Evening));
    clock.set(clock.now() + kDayMinutes);
    WeighingDraft weighing;
    weighing.tray = tray;
    weighing.bowls = {{grams(331.5), grams(31.5)}};
    weighing.at = clock.now();
    ASSERT_TRUE(journal->harvests().record(weighing));
    const TraySheet whole = sheet(tray);
    EXPECT_EQ(whole.waterings.size(), 1u);
    ASSERT_EQ(whole.harvests.size(), 1u);
    EXPECT_EQ(whole.harvests[0].net, grams(300));
    EXPECT_EQ(whole.stays.at(0).toOn, clock.today()) << "a last cut frees the place";
    EXPECT_FALSE(whole.spot);
    EXPECT_EQ(whole.currency, "EUR");
    EXPECT_EQ(journal->trays().list({}).value().at(0).yield, grams(300));
    EXPECT_FALSE(journal->trays().sheet(TrayId{99}));
}

TEST_F(TrayEntriesTest, TheSheetsCostPerGramIsItsCostOverItsYield)
{
    Price price;
    price.item = PriceItem::Packaging;
    price.from = clock.today() - 1;
    price.amount = money(0.6);
    ASSERT_TRUE(journal->costs().savePrice(price));
    SowingDraft draft = draftOf();
    draft.at = clock.now() + -13 * kDayMinutes;
    price.from = draft.at.date;
    ASSERT_TRUE(journal->costs().savePrice(price));
    const TrayId tray = journal->trays().sow(draft).value().front();
    EXPECT_FALSE(sheet(tray).costPerGram);
    WeighingDraft weighing;
    weighing.tray = tray;
    weighing.bowls = {{grams(300), grams(0)}};
    weighing.at = clock.now();
    weighing.accepted = {Doubt::NotDueYet, Doubt::TareForgotten};
    ASSERT_TRUE(journal->harvests().record(weighing));
    const TraySheet after = sheet(tray);
    EXPECT_EQ(after.cost.packaging, 0.6);
    ASSERT_TRUE(after.costPerGram);
    EXPECT_DOUBLE_EQ(*after.costPerGram, after.cost.total() / 300);
}

} // namespace
} // namespace plumule
