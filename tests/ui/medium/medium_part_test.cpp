#include "core/journal/medium/medium_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "tests/ui/support/setup_fixture.h"
#include "ui/medium/medium_part.h"

#include <QCheckBox>
#include <QSpinBox>

namespace plumule::ui {
namespace {

class MediumPartTest : public SetupTest
{
protected:
    std::vector<PieceRecord> piecesOf(const std::string& medium)
    {
        return journal->media().pieces(mediumNamed(medium)->id).value();
    }
    static QStringList piecesShown(QWidget& part)
    {
        QStringList texts;
        const auto* list = find<QListWidget>(part, "pieces");
        for (int i = 0; list != nullptr && i < list->count(); ++i) {
            texts << list->item(i)->text();
        }
        return texts;
    }
    // A steel mesh with pieces of which one was grown on and is dirty.
    void useAPiece()
    {
        const Medium mesh = *mediumNamed("Steel mesh");
        const auto pieces = journal->media().addPieces(mesh.id, 2, date(2026, 2, 1));
        ASSERT_TRUE(pieces);
        SowingDraft draft = broccoli(1, kTwoDaysAgo);
        draft.medium = mesh.id;
        draft.pieces = {pieces->front().id};
        const auto trays = sow(draft);
        ASSERT_EQ(trays.size(), 1U);
        ASSERT_TRUE(journal->trays().discard(trays.front(), "mould", clock.now()));
    }
};

TEST_F(MediumPartTest, SavesANewMedium)
{
    const auto part = openPart<MediumPart>();
    press(*part, "newRecord");
    EXPECT_EQ(textOf(*part, "mediumName"), "");
    write(*part, "mediumName", "Jute mat");
    choose(*part, "mediumForm", nameOf(MediumForm::Mat));
    find<QCheckBox>(*part, "mediumReusable")->setChecked(true);
    find<QSpinBox>(*part, "mediumUses")->setValue(7);
    press(*part, "saveRecord");
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    const auto saved = mediumNamed("Jute mat");
    ASSERT_TRUE(saved);
    EXPECT_EQ(saved->form, MediumForm::Mat);
    EXPECT_TRUE(saved->isReusable);
    EXPECT_EQ(saved->plannedUses, 7);
    EXPECT_FALSE(saved->surfaceBelowRim.has_value());
    EXPECT_TRUE(recordsOf(*part).contains("Jute mat"));
    EXPECT_EQ(textOf(*part, "mediumName"), "Jute mat");
    pressMessageAction();
    EXPECT_FALSE(mediumNamed("Jute mat").has_value());
}

TEST_F(MediumPartTest, TheFormShowsTheMarkerThatWillBeSaved)
{
    const auto part = openPart<MediumPart>();
    press(*part, "newRecord");
    const auto* marker = find<QComboBox>(*part, "mediumMarker");
    const int shown = marker->currentData().toInt();
    const auto all = journal->media().all(Listed::All).value();
    for (const Medium& each : all) {
        EXPECT_NE(each.marker, shown);
        EXPECT_EQ(marker->findData(each.marker), -1) << "only free ones are offered";
    }
    write(*part, "mediumName", "Jute mat");
    press(*part, "saveRecord");
    EXPECT_EQ(mediumNamed("Jute mat")->marker, shown);
    EXPECT_EQ(marker->currentData().toInt(), shown);
}

TEST_F(MediumPartTest, AMediumIsSaidOnceToBeRunWithItsOwnFeeding)
{
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Peat mix");
    EXPECT_FALSE(find<QCheckBox>(*part, "mediumAsRun")->isChecked());
    click(find<QCheckBox>(*part, "mediumAsRun"));
    press(*part, "saveRecord");
    EXPECT_TRUE(mediumNamed("Peat mix")->isAsRun);
    EXPECT_FALSE(mediumNamed("Hemp mat")->isAsRun);
    chooseRecord(*part, "Hemp mat");
    EXPECT_FALSE(find<QCheckBox>(*part, "mediumAsRun")->isChecked());
    chooseRecord(*part, "Peat mix");
    EXPECT_TRUE(find<QCheckBox>(*part, "mediumAsRun")->isChecked());
}

TEST_F(MediumPartTest, APieceWithoutPlannedUsesKeepsNone)
{
    Medium mesh = *mediumNamed("Steel mesh");
    mesh.plannedUses.reset();
    ASSERT_TRUE(journal->media().save(mesh));
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Steel mesh");
    write(*part, "mediumName", "Steel mesh, fine");
    press(*part, "saveRecord");
    EXPECT_FALSE(mediumNamed("Steel mesh, fine")->plannedUses.has_value());
}

TEST_F(MediumPartTest, ChangesTheChosenMediumAndNoOther)
{
    const auto part = openPart<MediumPart>();
    const Medium before = *mediumNamed("Hemp mat");
    chooseRecord(*part, "Hemp mat");
    write(*part, "mediumName", "Hemp mat, thick");
    press(*part, "saveRecord");
    Medium expected = before;
    expected.name = "Hemp mat, thick";
    EXPECT_EQ(mediumNamed("Hemp mat, thick"), expected);
    EXPECT_FALSE(mediumNamed("Hemp mat").has_value());
}

TEST_F(MediumPartTest, SavingWithoutAChangeLeavesEveryValueAsItWas)
{
    const auto part = openPart<MediumPart>();
    const auto before = journal->media().all(Listed::All).value();
    for (const Medium& medium : before) {
        chooseRecord(*part, QString::fromStdString(medium.name));
        press(*part, "saveRecord");
        EXPECT_EQ(mediumNamed(medium.name), medium) << medium.name;
    }
}

TEST_F(MediumPartTest, RefusesANameThatIsTakenAndKeepsWhatWasTyped)
{
    const auto part = openPart<MediumPart>();
    press(*part, "newRecord");
    write(*part, "mediumName", "Coir mix");
    press(*part, "saveRecord");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(messages.text().contains("Coir mix")) << messages.text().toStdString();
    EXPECT_EQ(textOf(*part, "mediumName"), "Coir mix");
    EXPECT_EQ(recordsOf(*part).count("Coir mix"), 1);
}

TEST_F(MediumPartTest, AddsPiecesToAReusableMediumOnly)
{
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Coir mix");
    EXPECT_FALSE(find<QListWidget>(*part, "pieces")->isVisible());
    chooseRecord(*part, "Steel mesh");
    ASSERT_TRUE(find<QListWidget>(*part, "pieces")->isVisible());
    find<QSpinBox>(*part, "newPieces")->setValue(3);
    press(*part, "addPieces");
    EXPECT_EQ(piecesOf("Steel mesh").size(), 3U);
    EXPECT_EQ(piecesOf("Steel mesh").front().piece.boughtOn, clock.today());
    EXPECT_EQ(piecesShown(*part).size(), 3);
    EXPECT_TRUE(messages.text().contains("3 pieces")) << messages.text().toStdString();
    press(*part, "addPieces");
    EXPECT_EQ(piecesOf("Steel mesh").back().piece.number, 6);
}

TEST_F(MediumPartTest, SanitisesTheChosenPieces)
{
    useAPiece();
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Steel mesh");
    ASSERT_EQ(piecesShown(*part).size(), 2);
    EXPECT_TRUE(piecesShown(*part)[0].contains("1 use,")) << piecesShown(*part)[0].toStdString();
    EXPECT_TRUE(piecesShown(*part)[0].contains("to be sanitised"));
    EXPECT_TRUE(piecesShown(*part)[1].contains("clean"));
    press(*part, "sanitise");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(piecesOf("Steel mesh").front().needsSanitising);
    find<QListWidget>(*part, "pieces")->item(0)->setSelected(true);
    write(*part, "sanitiseMethod", "hot water");
    press(*part, "sanitise");
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_FALSE(piecesOf("Steel mesh").front().needsSanitising);
    EXPECT_EQ(piecesOf("Steel mesh").front().lastSanitised, clock.today());
    EXPECT_TRUE(piecesShown(*part)[0].contains("sanitised 12 Mar"));
}

TEST_F(MediumPartTest, RefusesToSanitiseAPieceOnWhichATrayGrows)
{
    const Medium mesh = *mediumNamed("Steel mesh");
    const auto pieces = journal->media().addPieces(mesh.id, 1, std::nullopt);
    SowingDraft draft = broccoli(1, kTwoDaysAgo);
    draft.medium = mesh.id;
    draft.pieces = {pieces->front().id};
    sow(draft);
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, "Steel mesh");
    EXPECT_TRUE(piecesShown(*part)[0].contains("a tray grows on it"));
    find<QListWidget>(*part, "pieces")->item(0)->setSelected(true);
    press(*part, "sanitise");
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_FALSE(piecesOf("Steel mesh").front().lastSanitised.has_value());
}

TEST_F(MediumPartTest, KeepsAMediumThatTraysHangOn)
{
    sow(broccoli(1, kTwoDaysAgo));
    const QString used = QString::fromStdString(inertMedium().name);
    const auto part = openPart<MediumPart>();
    chooseRecord(*part, used);
    press(*part, "removeRecord");
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(messages.text().contains("no longer bought")) << messages.text().toStdString();
    EXPECT_TRUE(recordsOf(*part).contains(used));
    chooseRecord(*part, "Felt mat");
    press(*part, "removeRecord");
    EXPECT_FALSE(mediumNamed("Felt mat").has_value());
}

TEST_F(MediumPartTest, KeepsTheDepthWhenTheRoomsUnitsChange)
{
    const auto part = openPart<MediumPart>();
    const Medium before = *mediumNamed("Steel mesh");
    chooseRecord(*part, "Steel mesh");
    useUsUnits();
    press(*part, "saveRecord");
    const auto depth = mediumNamed("Steel mesh")->surfaceBelowRim;
    ASSERT_TRUE(depth);
    EXPECT_NEAR(inMillimetres(*depth), inMillimetres(*before.surfaceBelowRim), 0.3);
}

} // namespace
} // namespace plumule::ui
