#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "ui/watering/between_dialog.h"

#include <QComboBox>
#include <QListWidget>
#include <QSignalSpy>

namespace plumule::ui {
namespace {

class BetweenDialogTest : public GrowingTest
{
protected:
    std::unique_ptr<BetweenDialog> dialog;
    std::vector<TrayId> trays;
    int given = 0;

    void SetUp() override
    {
        GrowingTest::SetUp();
        trays = sow(broccoli(3, kTwoDaysAgo));
        clock.set({clock.today(), 10 * 60 + 40});
    }
    void openDialog(const std::vector<TrayId>& chosen)
    {
        dialog = std::make_unique<BetweenDialog>(*journal, ask, chosen);
        QObject::connect(dialog.get(), &BetweenDialog::given, [this] { ++given; });
        dialog->open();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }
    [[nodiscard]] QListWidget& list() { return *find<QListWidget>(*dialog, "betweenTrays"); }
    [[nodiscard]] QString giveText() { return find<QPushButton>(*dialog, "giveBetween")->text(); }
    [[nodiscard]] QString refusal() { return find<QLabel>(*dialog, "refusal")->text(); }
    [[nodiscard]] std::vector<Watering> wateringsOf(TrayId tray) { return sheetOf(tray).waterings; }
    // Ticks a row as a person does, at its box.
    void tickRow(int row)
    {
        list().setFocus();
        list().setCurrentRow(row);
        press(Qt::Key_Space);
    }
};

TEST_F(BetweenDialogTest, ProposesWhatTheStageAsksFor)
{
    openDialog({trays[1]});
    const RoundTray asked = journal->watering().roundNow()->trays.at(1);
    ASSERT_EQ(asked.tray, trays[1]);
    EXPECT_EQ(find<QComboBox>(*dialog, "betweenWater")->currentText(), nameOf(asked.water));
    EXPECT_EQ(find<QComboBox>(*dialog, "betweenMethod")->currentText(), nameOf(asked.method));
    EXPECT_EQ(list().item(0)->checkState(), Qt::Unchecked);
    EXPECT_EQ(list().item(1)->checkState(), Qt::Checked);
    EXPECT_EQ(list().currentRow(), 1);
    EXPECT_EQ(find<QLineEdit>(*dialog, "betweenTime")->text(), "10:40");
    EXPECT_EQ(nameOfFocus(), "betweenAmount");
}

TEST_F(BetweenDialogTest, EnterWritesDownWhatWasTypedAsOneAct)
{
    openDialog({trays[0]});
    tickRow(2);
    EXPECT_EQ(giveText(), "Watered 2 trays");
    write(*dialog, "betweenAmount", "85.5");
    const int before = actsIn(*journal);
    press(Qt::Key_Return);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_EQ(given, 1);
    EXPECT_EQ(actsIn(*journal), before + 1);
    for (const TrayId tray : {trays[0], trays[2]}) {
        ASSERT_EQ(wateringsOf(tray).size(), 1U);
        EXPECT_EQ(wateringsOf(tray).front().amount, millilitres(85.5));
        EXPECT_TRUE(wateringsOf(tray).front().isBetween);
        EXPECT_EQ(wateringsOf(tray).front().minute, 10 * 60 + 40);
    }
    EXPECT_TRUE(wateringsOf(trays[1]).empty());
    ASSERT_TRUE(journal->undo());
    EXPECT_TRUE(wateringsOf(trays[0]).empty());
    EXPECT_TRUE(wateringsOf(trays[2]).empty());
}

TEST_F(BetweenDialogTest, TheKindTheWayAndTheTimeAreWrittenAsChosen)
{
    openDialog({trays[0]});
    find<QComboBox>(*dialog, "betweenWater")->setFocus();
    press(Qt::Key_End);
    find<QComboBox>(*dialog, "betweenMethod")->setFocus();
    press(Qt::Key_Home);
    write(*dialog, "betweenTime", "9.15");
    click(find<QPushButton>(*dialog, "giveBetween"));
    ASSERT_EQ(wateringsOf(trays[0]).size(), 1U) << refusal().toStdString();
    EXPECT_EQ(wateringsOf(trays[0]).front().water, WaterKind::Nutrient);
    EXPECT_EQ(wateringsOf(trays[0]).front().method, WateringMethod::Below);
    EXPECT_EQ(wateringsOf(trays[0]).front().minute, 9 * 60 + 15);
    EXPECT_EQ(wateringsOf(trays[0]).front().on, clock.today());
}

TEST_F(BetweenDialogTest, AnEmptyAmountIsNotMeasuredAndNotNought)
{
    openDialog({trays[0]});
    write(*dialog, "betweenAmount", "");
    press(Qt::Key_Return);
    ASSERT_EQ(wateringsOf(trays[0]).size(), 1U);
    EXPECT_FALSE(wateringsOf(trays[0]).front().amount.has_value());
}

TEST_F(BetweenDialogTest, AnAmountThatIsNoneIsRefusedInWords)
{
    openDialog({trays[0]});
    for (const char* typed : {"much", "1,234", "-5", "5 5"}) {
        write(*dialog, "betweenAmount", typed);
        press(Qt::Key_Return);
        EXPECT_TRUE(dialog->isVisible()) << typed;
        EXPECT_FALSE(refusal().isEmpty()) << typed;
        EXPECT_TRUE(wateringsOf(trays[0]).empty()) << typed;
        EXPECT_EQ(nameOfFocus(), "betweenAmount") << typed;
    }
    write(*dialog, "betweenAmount", "50");
    press(Qt::Key_Return);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_EQ(wateringsOf(trays[0]).size(), 1U);
}

TEST_F(BetweenDialogTest, ATimeStillToComeOrNoneIsRefusedInWords)
{
    openDialog({trays[0]});
    for (const char* typed : {"23:30", "later", ""}) {
        write(*dialog, "betweenTime", typed);
        press(Qt::Key_Return);
        EXPECT_TRUE(dialog->isVisible()) << typed;
        EXPECT_FALSE(refusal().isEmpty()) << typed;
    }
    EXPECT_TRUE(wateringsOf(trays[0]).empty());
    EXPECT_EQ(given, 0);
}

TEST_F(BetweenDialogTest, WithNoTrayTickedThereIsNothingToGive)
{
    openDialog({});
    EXPECT_EQ(nameOfFocus(), "betweenTrays");
    auto* give = find<QPushButton>(*dialog, "giveBetween");
    EXPECT_FALSE(give->isEnabled());
    tickRow(1);
    EXPECT_TRUE(give->isEnabled());
    EXPECT_EQ(giveText(), "Watered 1 tray");
    tickRow(1);
    EXPECT_FALSE(give->isEnabled());
}

TEST_F(BetweenDialogTest, ListsGrowingTraysAloneInWalkingOrder)
{
    ASSERT_TRUE(journal->trays().discard(trays[1], "mould", clock.now()));
    openDialog({});
    ASSERT_EQ(list().count(), 2);
    EXPECT_TRUE(list().item(0)->text().startsWith("BR001"));
    EXPECT_TRUE(list().item(1)->text().startsWith("BR003"));
    EXPECT_TRUE(list().item(0)->text().contains(nameOf(sheetOf("BR001").spot)));
}

TEST_F(BetweenDialogTest, EscapeAsksWhereSomethingWasTypedAndChangesNothing)
{
    openDialog({trays[0]});
    press(Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_TRUE(ask.questions.isEmpty()) << "what was proposed is not typed";

    openDialog({trays[0]});
    write(*dialog, "betweenAmount", "120");
    ask.agrees = false;
    press(Qt::Key_Escape);
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_TRUE(dialog->isVisible());
    ask.agrees = true;
    press(Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_TRUE(wateringsOf(trays[0]).empty());
    EXPECT_EQ(given, 0);
}

TEST_F(BetweenDialogTest, UsUnitsAreAskedForAndStoredInMillilitres)
{
    Room room = journal->room().layout()->room;
    room.units = UnitSystem::UsCustomary;
    ASSERT_TRUE(journal->room().changeRoom(room));
    openDialog({trays[0]});
    write(*dialog, "betweenAmount", "4");
    press(Qt::Key_Return);
    ASSERT_EQ(wateringsOf(trays[0]).size(), 1U) << refusal().toStdString();
    // 1 US fl oz is 29.5735 mL (NIST SP 811).
    EXPECT_NEAR(inMillilitres(*wateringsOf(trays[0]).front().amount), 118.29, 0.01);
}

TEST_F(BetweenDialogTest, ATrayCodeWithMarksIsShownAsItIs)
{
    SowingDraft draft = broccoli(1, kTwoDaysAgo);
    draft.code = "<b>X</b>";
    ASSERT_EQ(sow(draft).size(), 1U);
    openDialog({trayOf("<b>X</b>")});
    EXPECT_EQ(textsWithMarks(*dialog).join('\n').toStdString(), "");
    EXPECT_TRUE(list().item(3)->text().startsWith("<b>X</b>"));
}

TEST_F(BetweenDialogTest, CanBeReadAndReachedAtEveryLook)
{
    const auto faults = faultsOfDialog([this] { return new BetweenDialog(*journal, ask, trays); });
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
