#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "ui/tray/sow_dialog.h"
#include "ui/widget/date_field.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QListWidget>
#include <QSignalSpy>
#include <QSpinBox>

namespace plumule::ui {
namespace {

class SowDialogTest : public GrowingTest
{
protected:
    std::unique_ptr<SowDialog> dialog;
    std::unique_ptr<QSignalSpy> sown;

    void openDialog()
    {
        dialog = std::make_unique<SowDialog>(*journal, services());
        sown = std::make_unique<QSignalSpy>(dialog.get(), &SowDialog::sown);
        show(*dialog, {900, 700});
    }
    void pick(const char* box, const QString& item)
    {
        auto* combo = find<QComboBox>(*dialog, box);
        const int index = combo->findText(item);
        ASSERT_GE(index, 0) << item.toStdString();
        combo->setCurrentIndex(index);
    }
    void sowNow() { click(find<QPushButton>(*dialog, "sowNow")); }
    [[nodiscard]] QString refusal() { return find<QLabel>(*dialog, "refusal")->text(); }
    [[nodiscard]] QString dates() { return find<QLabel>(*dialog, "dates")->text(); }
    [[nodiscard]] std::vector<TrayListRow> trays() { return journal->trays().list({}).value(); }
    [[nodiscard]] int checkedIn(const char* list)
    {
        int checked = 0;
        auto* shown = find<QListWidget>(*dialog, list);
        for (int i = 0; i < shown->count(); ++i) {
            checked += shown->item(i)->checkState() == Qt::Checked ? 1 : 0;
        }
        return checked;
    }
};

TEST_F(SowDialogTest, SowsOneTrayAsTheProtocolSays)
{
    openDialog();
    pick("variety", "Broccoli");
    EXPECT_TRUE(find<QLineEdit>(*dialog, "code")->placeholderText().contains("BR001"));
    EXPECT_EQ(checkedIn("places"), 1);
    sowNow();
    ASSERT_EQ(trays().size(), 1U) << refusal().toStdString();
    const TraySheet sheet = sheetOf("BR001");
    EXPECT_EQ(sheet.record.variety, "Broccoli");
    EXPECT_EQ(sheet.record.tray.sownAt(), clock.now());
    EXPECT_TRUE(sheet.spot.has_value());
    EXPECT_TRUE(sheet.record.tray.seed.has_value());
    ASSERT_EQ(sown->count(), 1);
    EXPECT_EQ(sown->front().front().toInt(), 1);
    EXPECT_FALSE(dialog->isVisible());
}

TEST_F(SowDialogTest, SowsManyOnTheFirstFreePlacesAsOneIntention)
{
    openDialog();
    pick("variety", "Broccoli");
    find<QSpinBox>(*dialog, "count")->setValue(12);
    EXPECT_EQ(checkedIn("places"), 12);
    sowNow();
    ASSERT_EQ(trays().size(), 12U) << refusal().toStdString();
    EXPECT_EQ(journal->room().freeSpots()->size(), 20U);
    ASSERT_TRUE(journal->undo());
    EXPECT_TRUE(trays().empty());
}

TEST_F(SowDialogTest, WritesDownWhatWasTyped)
{
    Trial trial;
    trial.name = "Two beds";
    ASSERT_TRUE(journal->trials().save(trial));
    openDialog();
    pick("variety", "Broccoli");
    find<QComboBox>(*dialog, "trial")->setCurrentIndex(1);
    find<QSpinBox>(*dialog, "block")->setValue(2);
    auto* seed = find<QLineEdit>(*dialog, "seed");
    seed->selectAll();
    QTest::keyClicks(seed, "17,5");
    QTest::keyClicks(find<QLineEdit>(*dialog, "person"), "Mo");
    QTest::keyClicks(find<QLineEdit>(*dialog, "code"), "X7");
    sowNow();
    ASSERT_EQ(trays().size(), 1U) << refusal().toStdString();
    const TraySheet sheet = sheetOf("X7");
    EXPECT_EQ(sheet.record.tray.seed, grams(17.5));
    EXPECT_EQ(sheet.record.tray.block, 2);
    EXPECT_EQ(sheet.record.trialName, "Two beds");
    EXPECT_EQ(sheet.record.tray.sownBy, "Mo");
}

TEST_F(SowDialogTest, RefusesASeedWeightThatIsNone)
{
    openDialog();
    auto* seed = find<QLineEdit>(*dialog, "seed");
    seed->selectAll();
    QTest::keyClicks(seed, "much");
    sowNow();
    EXPECT_FALSE(refusal().isEmpty());
    EXPECT_TRUE(trays().empty());
    EXPECT_TRUE(dialog->isVisible());
}

TEST_F(SowDialogTest, RefusesACodeThatIsTaken)
{
    sow(broccoli(1, kTwoDaysAgo));
    openDialog();
    QTest::keyClicks(find<QLineEdit>(*dialog, "code"), "br001");
    sowNow();
    EXPECT_FALSE(refusal().isEmpty());
    EXPECT_EQ(trays().size(), 1U);
    EXPECT_EQ(sown->count(), 0);
}

TEST_F(SowDialogTest, RefusesMorePlacesThanTrays)
{
    openDialog();
    find<QListWidget>(*dialog, "places")->item(5)->setCheckState(Qt::Checked);
    sowNow();
    EXPECT_TRUE(refusal().contains("more places chosen than trays"));
    EXPECT_TRUE(trays().empty());
}

TEST_F(SowDialogTest, AReusableMediumAsksForAPieceForEachTray)
{
    const Medium mesh = inertMedium(true);
    ASSERT_TRUE(journal->media().addPieces(mesh.id, 2, clock.today()));
    openDialog();
    EXPECT_FALSE(find<QListWidget>(*dialog, "pieces")->isVisible());
    pick("medium", QString::fromStdString(mesh.name));
    EXPECT_TRUE(find<QListWidget>(*dialog, "pieces")->isVisible());
    find<QSpinBox>(*dialog, "count")->setValue(3);
    EXPECT_EQ(checkedIn("pieces"), 2);
    sowNow();
    EXPECT_TRUE(refusal().contains("one clean piece for each of the 3 trays"));
    find<QSpinBox>(*dialog, "count")->setValue(2);
    sowNow();
    ASSERT_EQ(trays().size(), 2U) << refusal().toStdString();
    for (const TrayListRow& row : trays()) {
        EXPECT_TRUE(row.record.pieceNumber.has_value());
    }
}

TEST_F(SowDialogTest, SaysWhatToDoWhereNoPieceIsClean)
{
    const Medium mesh = inertMedium(true);
    ASSERT_TRUE(journal->media().addPieces(mesh.id, 1, clock.today()));
    openDialog();
    pick("medium", QString::fromStdString(mesh.name));
    sowNow();
    ASSERT_EQ(trays().size(), 1U) << refusal().toStdString();
    openDialog();
    pick("medium", QString::fromStdString(mesh.name));
    sowNow();
    EXPECT_TRUE(refusal().contains("No piece is free")) << refusal().toStdString();

    ASSERT_TRUE(journal->trays().discard(trays().front().record.tray.id, "mould", clock.now()));
    openDialog();
    pick("medium", QString::fromStdString(mesh.name));
    sowNow();
    EXPECT_TRUE(refusal().contains("sanitise 1 piece first")) << refusal().toStdString();
    EXPECT_EQ(trays().size(), 1U);
}

TEST_F(SowDialogTest, TheDayOfTheCutSetsTheDayOfSowing)
{
    openDialog();
    pick("variety", "Broccoli");
    // Twelve days: three under weight, one in blackout, eight in light.
    EXPECT_TRUE(dates().contains("Tuesday 24 March, day 13")) << dates().toStdString();
    give(*dialog, "harvest", "31 Mar");
    EXPECT_EQ(find<DateField>(*dialog, "day")->date(), date(2026, 3, 19));
    EXPECT_TRUE(dates().contains("Tuesday 31 March"));
    sowNow();
    ASSERT_EQ(trays().size(), 1U) << refusal().toStdString();
    EXPECT_EQ(trays().front().record.tray.sownOn, date(2026, 3, 19));
    EXPECT_EQ(trays().front().plan.harvest.date, date(2026, 3, 31));
}

TEST_F(SowDialogTest, BeginsWithTheSoakWhereTheProtocolHasOne)
{
    openDialog();
    pick("variety", "Broccoli");
    EXPECT_FALSE(find<QCheckBox>(*dialog, "soak")->isVisible());
    pick("variety", "Pea shoots");
    auto* soak = find<QCheckBox>(*dialog, "soak");
    ASSERT_TRUE(soak->isVisible());
    soak->setChecked(true);
    EXPECT_TRUE(dates().startsWith("To be sown "));
    sowNow();
    ASSERT_EQ(trays().size(), 1U) << refusal().toStdString();
    const StagePlan plan = trays().front().plan;
    ASSERT_TRUE(plan.current);
    EXPECT_EQ(plan.spans[*plan.current].stage, Stage::Soak);
    EXPECT_GT(trays().front().record.tray.sownAt(), clock.now());
}

TEST_F(SowDialogTest, CancelSowsNothing)
{
    openDialog();
    QTest::keyClick(dialog.get(), Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_TRUE(trays().empty());
}

TEST_F(SowDialogTest, EscapeAsksWhereSomethingWasTyped)
{
    openDialog();
    QTest::keyClicks(find<QLineEdit>(*dialog, "person"), "Mo");
    ask.agrees = false;
    QTest::keyClick(dialog.get(), Qt::Key_Escape);
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_TRUE(dialog->isVisible());
    ask.agrees = true;
    QTest::keyClick(dialog.get(), Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_TRUE(trays().empty());
}

TEST_F(SowDialogTest, EnterSowsWhereverTheFocusIs)
{
    for (const char* field : {"person", "code", "seed", "day"}) {
        openDialog();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
        find<QLineEdit>(*dialog, field)->setFocus();
        const std::size_t before = trays().size();
        press(Qt::Key_Return);
        EXPECT_EQ(trays().size(), before + 1) << field << ": " << refusal().toStdString();
        EXPECT_FALSE(dialog->isVisible()) << field;
    }
    openDialog();
    dialog->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    find<QComboBox>(*dialog, "medium")->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(trays().size(), 5U) << "in a list";
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(trays().size(), 4U);
}

TEST_F(SowDialogTest, ADayOrATimeThatIsNoneIsRefusedInWords)
{
    openDialog();
    pick("variety", "Broccoli");
    write(*dialog, "day", "some day");
    sowNow();
    EXPECT_FALSE(refusal().isEmpty());
    write(*dialog, "day", "2026-03-11");
    write(*dialog, "time", "25");
    sowNow();
    EXPECT_TRUE(refusal().contains("07:30")) << refusal().toStdString();
    EXPECT_TRUE(trays().empty());
    write(*dialog, "time", "6");
    sowNow();
    ASSERT_EQ(trays().size(), 1U) << refusal().toStdString();
    EXPECT_EQ(sheetOf("BR001").record.tray.sownAt(), (Moment{date(2026, 3, 11), 6 * 60}));
}

TEST_F(SowDialogTest, SeedThatIsAmbiguousIsRefusedAndNeverReadAsAThousandth)
{
    openDialog();
    for (const char* typed : {"1,234", "-3", "12 g and more"}) {
        write(*dialog, "seed", typed);
        sowNow();
        EXPECT_FALSE(refusal().isEmpty()) << typed;
        EXPECT_TRUE(trays().empty()) << typed;
    }
}

TEST_F(SowDialogTest, CodesAndNamesAreKeptAsTheyAreTyped)
{
    int number = 0;
    for (const HostileText& each : hostileTexts()) {
        openDialog();
        find<QLineEdit>(*dialog, "person")->setText(each.text);
        find<QLineEdit>(*dialog, "code")->setText(QString("X%1").arg(++number));
        sowNow();
        ASSERT_FALSE(dialog->isVisible()) << each.what << ": " << refusal().toStdString();
        const TraySheet sheet = sheetOf(QString("X%1").arg(number).toStdString().c_str());
        EXPECT_EQ(QString::fromStdString(*sheet.record.tray.sownBy), each.text) << each.what;
    }
}

TEST_F(SowDialogTest, OneCodeForSeveralTraysIsRefusedInWords)
{
    openDialog();
    find<QSpinBox>(*dialog, "count")->setValue(3);
    write(*dialog, "code", "K08");
    sowNow();
    EXPECT_TRUE(refusal().contains("One code can't be that of several trays"))
        << refusal().toStdString();
    EXPECT_TRUE(trays().empty());
    find<QSpinBox>(*dialog, "count")->setValue(1);
    sowNow();
    EXPECT_TRUE(journal->trays().find("K08")) << refusal().toStdString();
}

TEST_F(SowDialogTest, CanBeReadAndReachedAtEveryLook)
{
    ASSERT_TRUE(journal->media().addPieces(inertMedium(true).id, 4, clock.today()));
    const auto faults = faultsOfDialog([this] { return new SowDialog(*journal, services()); });
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
