#include "core/medium/medium_repository.h"

#include "tests/core/storage/store_fixture.h"

namespace plumule {
namespace {

class MediumRepositoryTest : public StoreTest
{
protected:
    Medium storeMedium(const std::string& name)
    {
        Medium medium;
        medium.name = name;
        medium.form = MediumForm::Mesh;
        medium.isReusable = true;
        media.insert(medium);
        return medium;
    }

    Piece storePiece(const Medium& medium, int number)
    {
        Piece piece;
        piece.medium = medium.id;
        piece.number = number;
        media.insert(piece);
        return piece;
    }

    // `ended` is a day or empty while the tray grows.
    void sowOn(const Piece& piece, const std::string& code, const std::string& sown,
               const std::string& ended)
    {
        database.execute(
            "INSERT OR IGNORE INTO variety VALUES (1, 'Cress', 'CR', NULL, '', '', 0)");
        const std::string end =
            ended.empty() ? "'growing', NULL, NULL" : "'harvested', '" + ended + "', 600";
        storeTray(code, 1, piece.medium.value, ", piece_id, sown_on, state, ended_on, ended_minute",
                  ", " + std::to_string(piece.id.value) + ", '" + sown + "', " + end);
    }

    void sanitise(const Piece& piece, Date on, int minute)
    {
        Sanitising sanitising{{}, piece.id, on, minute, {"hot water"}};
        media.insert(sanitising);
    }

    MediumRepository media{database};
};

TEST_F(MediumRepositoryTest, KeepsAMediumExactly)
{
    Medium medium;
    medium.name = "Peat mix";
    medium.isNutrientBearing = true;
    medium.surfaceBelowRim = millimetres(20);
    medium.amountPerTray = litres(2);
    medium.marker = 4;
    medium.source = "from memory";
    medium.note = "invented";
    media.insert(medium);
    EXPECT_EQ(media.find(medium.id), medium);
    medium.form = MediumForm::Mat;
    medium.isReusable = true;
    medium.plannedUses = 12;
    medium.amountPerTray.reset();
    medium.isRetired = true;
    media.update(medium);
    EXPECT_EQ(media.find(medium.id), medium);
    EXPECT_EQ(media.byId().at(medium.id), medium);
    EXPECT_TRUE(media.all(Listed::InUse).empty());
    EXPECT_EQ(media.findByName("PEAT MIX"), medium);
}

TEST_F(MediumRepositoryTest, ANewPieceIsReadyToSowOn)
{
    const Piece piece = storePiece(storeMedium("Mesh"), 1);
    const auto record = media.record(piece.id);
    ASSERT_TRUE(record);
    EXPECT_EQ(record->piece, piece);
    EXPECT_EQ(record->uses, 0);
    EXPECT_FALSE(record->isInUse);
    EXPECT_FALSE(record->needsSanitising);
    EXPECT_FALSE(record->lastUsed);
}

TEST_F(MediumRepositoryTest, APieceInUseIsUsedSinceItsSowing)
{
    const Piece piece = storePiece(storeMedium("Mesh"), 1);
    sowOn(piece, "CR001", "2026-02-01", "2026-02-10");
    sanitise(piece, date(2026, 2, 10), 700);
    sowOn(piece, "CR002", "2026-02-12", "");
    const auto record = media.record(piece.id);
    EXPECT_EQ(record->uses, 2);
    EXPECT_TRUE(record->isInUse);
    EXPECT_EQ(record->lastUsed, date(2026, 2, 12));
    EXPECT_EQ(record->lastSanitised, date(2026, 2, 10));
    EXPECT_TRUE(record->needsSanitising);
}

TEST_F(MediumRepositoryTest, SanitisingCountsOnlyAfterTheTraysEnd)
{
    const Medium mesh = storeMedium("Mesh");
    const Piece early = storePiece(mesh, 1);
    const Piece late = storePiece(mesh, 2);
    sowOn(early, "CR001", "2026-02-01", "2026-02-10"); // ended at 10:00
    sowOn(late, "CR002", "2026-02-01", "2026-02-10");
    sanitise(early, date(2026, 2, 10), 599);
    sanitise(late, date(2026, 2, 10), 601);
    EXPECT_TRUE(media.record(early.id)->needsSanitising);
    EXPECT_FALSE(media.record(late.id)->needsSanitising);
    EXPECT_EQ(media.record(late.id)->lastUsed, date(2026, 2, 10));
}

TEST_F(MediumRepositoryTest, ListsPiecesByMediumAndNumber)
{
    const Medium steel = storeMedium("Steel");
    const Medium felt = storeMedium("felt");
    storePiece(steel, 2);
    storePiece(steel, 1);
    Piece gone = storePiece(felt, 1);
    gone.retiredOn = date(2026, 1, 1);
    gone.note = "torn";
    media.update(gone);
    const auto standing = media.pieces(std::nullopt, Listed::InUse);
    ASSERT_EQ(standing.size(), 2U);
    EXPECT_EQ(standing[0].piece.number, 1);
    const auto all = media.pieces(std::nullopt, Listed::All);
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(all[0].piece, gone);
    EXPECT_EQ(media.pieces(felt.id, Listed::All).size(), 1U);
    EXPECT_EQ(media.lastNumber(steel.id), 2);
    EXPECT_EQ(media.lastNumber({99}), 0);
}

TEST_F(MediumRepositoryTest, TheListAgreesWithTheSingleRecord)
{
    const Piece piece = storePiece(storeMedium("Mesh"), 1);
    sowOn(piece, "CR001", "2026-02-01", "2026-02-10");
    sanitise(piece, date(2026, 2, 11), 0);
    const auto listed = media.pieces(std::nullopt, Listed::InUse).at(0);
    const auto single = media.record(piece.id).value();
    EXPECT_EQ(listed.uses, single.uses);
    EXPECT_EQ(listed.lastUsed, single.lastUsed);
    EXPECT_EQ(listed.lastSanitised, single.lastSanitised);
    EXPECT_EQ(listed.needsSanitising, single.needsSanitising);
}

TEST_F(MediumRepositoryTest, TraysPiecesPricesAndControlsHoldAMedium)
{
    const Medium byPiece = storeMedium("A");
    const Medium byTray = storeMedium("B");
    const Medium byPrice = storeMedium("C");
    const Medium byControl = storeMedium("D");
    const Medium free = storeMedium("E");
    storePiece(byPiece, 1);
    database.execute("INSERT INTO variety VALUES (1, 'Cress', 'CR', NULL, '', '', 0)");
    storeTray("CR001", 1, byTray.id.value, ", sown_on, state", ", '2026-03-01', 'growing'");
    database.prepare("INSERT INTO price VALUES (1, 'medium', ?1, '2026-01-01', 100)")
        .bind(byPrice.id)
        .run();
    database.prepare("INSERT INTO trial VALUES (1, 'T1', 'x', '', NULL, ?1, NULL, '')")
        .bind(byControl.id)
        .run();
    for (const Medium& medium : {byPiece, byTray, byPrice, byControl}) {
        EXPECT_TRUE(media.isInUse(medium.id)) << medium.name;
    }
    EXPECT_FALSE(media.isInUse(free.id));
    media.remove(free.id);
    EXPECT_FALSE(media.find(free.id));
}

} // namespace
} // namespace plumule
