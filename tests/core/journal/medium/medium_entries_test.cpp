#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "tests/core/journal/journal_fixture.h"

#include "core/medium/medium_reason.h"
#include "tests/support/told.h"

#include <set>

namespace plumule {
namespace {

class MediumEntriesTest : public JournalTest
{
protected:
    static Medium newMat()
    {
        Medium mat;
        mat.name = " Wool mat ";
        mat.form = MediumForm::Mat;
        mat.isReusable = true;
        mat.plannedUses = 6;
        return mat;
    }

    std::vector<Piece> addMeshes(int count)
    {
        return journal->media().addPieces(mediumNamed("Steel mesh"), count, std::nullopt).value();
    }

    TrayId sowOn(const Piece& piece)
    {
        SowingDraft draft;
        draft.variety = varietyNamed("Radish");
        draft.medium = piece.medium;
        draft.pieces = {piece.id};
        draft.at = clock.now();
        const auto sown = journal->trays().sow(draft);
        EXPECT_TRUE(sown) << told(sown.error());
        return sown ? sown->front() : TrayId{};
    }

    PieceRecord recordOf(PieceId piece)
    {
        const auto records = journal->media().pieces(std::nullopt, Listed::All).value();
        for (const PieceRecord& record : records) {
            if (record.piece.id == piece) {
                return record;
            }
        }
        ADD_FAILURE() << "no such piece";
        return {};
    }
};

TEST_F(MediumEntriesTest, ANewMediumGetsTheFirstFreeMarker)
{
    ASSERT_TRUE(journal->media().remove(mediumNamed("Hemp mat")));
    expectUndoable([&] { return journal->media().save(newMat()); });
    const auto media = journal->media().all().value();
    for (const Medium& medium : media) {
        if (medium.name == "Wool mat") {
            EXPECT_EQ(medium.marker, 3) << "the one that came free";
        }
    }
    EXPECT_EQ(journal->nextUndo()->subject, "Wool mat");
}

TEST_F(MediumEntriesTest, AMediumIsChanged)
{
    Medium mat = journal->media().save(newMat()).value();
    mat.surfaceBelowRim = millimetres(44);
    mat.plannedUses = 8;
    mat.marker = 15;
    expectUndoable([&] { return journal->media().save(mat); });
    const auto media = journal->media().all().value();
    EXPECT_EQ(std::count(media.begin(), media.end(), mat), 1);
}

TEST_F(MediumEntriesTest, AMediumIsSaidToBeAlwaysRunWithItsOwnFeeding)
{
    Medium mat = journal->media().save(newMat()).value();
    EXPECT_FALSE(mat.isAsRun);
    mat.isAsRun = true;
    expectUndoable([&] { return journal->media().save(mat); });
    const auto media = journal->media().all().value();
    EXPECT_EQ(std::count(media.begin(), media.end(), mat), 1);
    ASSERT_TRUE(journal->media().save(mat));
    EXPECT_FALSE(journal->didLastIntentionChange());
    expectUndoable([&] { return journal->media().remove(mat.id); });
}

TEST_F(MediumEntriesTest, TwoMediaNeverShareAMarker)
{
    std::set<int> markers;
    for (int i = 0; i < 16; ++i) {
        Medium mat = newMat();
        mat.name += ' ' + std::to_string(i);
        ASSERT_TRUE(journal->media().save(mat));
    }
    const auto media = journal->media().all().value();
    for (const Medium& medium : media) {
        EXPECT_TRUE(markers.insert(medium.marker).second) << medium.name;
    }
    Medium changed = media[0];
    changed.marker = media[1].marker;
    expectRefused(ErrorKind::Duplicate, MediumReason::MarkerTaken,
                  [&] { return journal->media().save(changed); });
}

TEST_F(MediumEntriesTest, ANewMediumKeepsTheFreeMarkerItIsGiven)
{
    Medium mat = newMat();
    mat.marker = 17;
    EXPECT_EQ(journal->media().save(mat)->marker, 17);
}

TEST_F(MediumEntriesTest, RefusesAMediumThatIsNotSound)
{
    Medium mat = newMat();
    mat.name = "steel MESH";
    expectRefused(ErrorKind::Duplicate, MediumReason::NameTaken,
                  [&] { return journal->media().save(mat); });
    mat.name = "";
    expectRefused(ErrorKind::Missing, MediumReason::NameMissing,
                  [&] { return journal->media().save(mat); });
    mat = newMat();
    mat.form = MediumForm::LooseMix;
    expectRefused(ErrorKind::Invalid, MediumReason::LooseMixReused,
                  [&] { return journal->media().save(mat); });
    mat = newMat();
    mat.plannedUses = 0;
    expectRefused(ErrorKind::Invalid, MediumReason::PlannedUses,
                  [&] { return journal->media().save(mat); });
    mat = newMat();
    mat.id = {99};
    expectRefused(ErrorKind::NotFound, MediumReason::Unknown,
                  [&] { return journal->media().save(mat); });
}

TEST_F(MediumEntriesTest, AMediumWithPiecesStaysReusableAndStays)
{
    addMeshes(1);
    Medium mesh;
    const auto media = journal->media().all().value();
    for (const Medium& medium : media) {
        mesh = medium.name == "Steel mesh" ? medium : mesh;
    }
    mesh.isReusable = false;
    mesh.plannedUses.reset();
    expectRefused(ErrorKind::InUse, MediumReason::HasPieces,
                  [&] { return journal->media().save(mesh); });
    expectRefused(ErrorKind::InUse, MediumReason::InUse,
                  [&] { return journal->media().remove(mesh.id); });
}

TEST_F(MediumEntriesTest, AnUnusedMediumIsRemoved)
{
    const MediumId felt = mediumNamed("Felt mat");
    expectUndoable([&] { return journal->media().remove(felt); });
    expectRefused(ErrorKind::NotFound, MediumReason::Unknown,
                  [&] { return journal->media().remove(felt); });
}

TEST_F(MediumEntriesTest, PiecesAreNumberedOn)
{
    const MediumId mesh = mediumNamed("Steel mesh");
    expectUndoable([&] { return journal->media().addPieces(mesh, 3, date(2026, 1, 5)); });
    EXPECT_EQ(addMeshes(2).back().number, 5);
    const auto pieces = journal->media().pieces(mesh).value();
    ASSERT_EQ(pieces.size(), 5U);
    EXPECT_EQ(pieces[0].piece.boughtOn, date(2026, 1, 5));
    EXPECT_FALSE(pieces[4].piece.boughtOn);
    expectRefused(ErrorKind::Invalid, MediumReason::PieceCount,
                  [&] { return journal->media().addPieces(mesh, 0, std::nullopt); });
    expectRefused(ErrorKind::Invalid, MediumReason::NotReusable, [&] {
        return journal->media().addPieces(mediumNamed("Coir mix"), 1, std::nullopt);
    });
}

TEST_F(MediumEntriesTest, ARetiredPieceIsListedOnlyWhenAskedFor)
{
    const Piece piece = addMeshes(1)[0];
    expectUndoable([&] { return journal->media().retirePiece(piece.id, "torn"); });
    EXPECT_TRUE(journal->media().pieces()->empty());
    EXPECT_EQ(recordOf(piece.id).piece.retiredOn, clock.today());
    EXPECT_EQ(recordOf(piece.id).piece.note, "torn");
    expectRefused(ErrorKind::Conflict, MediumReason::PieceRetired,
                  [&] { return journal->media().retirePiece(piece.id, ""); });
}

TEST_F(MediumEntriesTest, APieceIsSanitisedBetweenTwoTrays)
{
    const Piece piece = addMeshes(1)[0];
    const TrayId tray = sowOn(piece);
    EXPECT_EQ(recordOf(piece.id).uses, 1);
    EXPECT_TRUE(recordOf(piece.id).isInUse);
    ASSERT_TRUE(journal->trays().discard(tray, "mould", clock.now() + 60));
    clock.set(clock.now() + 120);
    EXPECT_TRUE(recordOf(piece.id).needsSanitising);
    expectUndoable([&] { return journal->media().sanitise({piece.id}, "hot water"); });
    EXPECT_FALSE(recordOf(piece.id).needsSanitising);
    EXPECT_EQ(recordOf(piece.id).lastSanitised, clock.today());
    EXPECT_EQ(journal->nextUndo()->subject, "Steel mesh 1");
    sowOn(piece);
    EXPECT_EQ(recordOf(piece.id).uses, 2);
}

TEST_F(MediumEntriesTest, APieceInUseIsNeitherSanitisedNorRetired)
{
    const auto pieces = addMeshes(2);
    sowOn(pieces[0]);
    expectRefused(ErrorKind::Conflict, MediumReason::PieceGrows, [&] {
        return journal->media().sanitise({pieces[1].id, pieces[0].id}, "hot water");
    });
    expectRefused(ErrorKind::Conflict, MediumReason::PieceGrows,
                  [&] { return journal->media().retirePiece(pieces[0].id, "torn"); });
}

TEST_F(MediumEntriesTest, SanitisingNeedsAPieceAndAMethod)
{
    const Piece piece = addMeshes(1)[0];
    expectRefused(ErrorKind::Missing, MediumReason::NoPieceChosen,
                  [&] { return journal->media().sanitise({}, "hot water"); });
    expectRefused(ErrorKind::Missing, MediumReason::MethodMissing,
                  [&] { return journal->media().sanitise({piece.id}, " "); });
    expectRefused(ErrorKind::NotFound, MediumReason::PieceUnknown,
                  [&] { return journal->media().sanitise({{99}}, "hot water"); });
}

} // namespace
} // namespace plumule
