#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "ui/trial/trial_dialog.h"

#include <QClipboard>
#include <QComboBox>

namespace plumule::ui {
namespace {

class TrialDialogTest : public GrowingTest
{
protected:
    std::unique_ptr<TrialDialog> dialog;

    [[nodiscard]] Trial stored(const char* name)
    {
        Trial trial;
        trial.name = name;
        trial.question = "Which bed gives most?";
        trial.margin = grams(12.5);
        trial.note = "by the window";
        const auto saved = journal->trials().save(trial);
        EXPECT_TRUE(saved);
        return saved.value_or(Trial());
    }
    void openDialog(const Trial& trial)
    {
        dialog = std::make_unique<TrialDialog>(*journal, services(), trial);
        dialog->open();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }
    [[nodiscard]] Trial known(TrialId id)
    {
        const auto all = journal->trials().all().value();
        for (const Trial& each : all) {
            if (each.id == id) {
                return each;
            }
        }
        return {};
    }
    [[nodiscard]] QString refusal()
    {
        const auto* shown = find<QLabel>(*dialog, "refusal");
        return shown->isVisible() ? shown->text() : QString();
    }
    void pressUndo()
    {
        auto* undo = messages.findChild<QPushButton*>("messageAction");
        ASSERT_TRUE(undo->isVisible()) << messages.text().toStdString();
        click(undo);
    }
};

TEST_F(TrialDialogTest, ShowsWhatIsStoredAndSavesItUntouchedAsNoChange)
{
    const Trial trial = stored("Two beds");
    openDialog(trial);
    EXPECT_EQ(find<QLineEdit>(*dialog, "trialCode")->text(), "T1");
    EXPECT_EQ(find<QLineEdit>(*dialog, "trialName")->text(), "Two beds");
    EXPECT_EQ(find<QLineEdit>(*dialog, "trialQuestion")->text(), "Which bed gives most?");
    EXPECT_EQ(find<QLineEdit>(*dialog, "trialMargin")->text(), "12.5");
    EXPECT_EQ(find<QComboBox>(*dialog, "trialControl")->currentText(), "none");
    EXPECT_EQ(find<QLineEdit>(*dialog, "trialNote")->text(), "by the window");
    const int before = actsIn(*journal);
    find<QLineEdit>(*dialog, "trialName")->setFocus();
    press(Qt::Key_Return);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_EQ(known(trial.id), trial);
    EXPECT_EQ(actsIn(*journal), before);
}

TEST_F(TrialDialogTest, EverythingTypedIsSavedAsOneActThatIsTakenBackAsOne)
{
    const Trial trial = stored("Two beds");
    openDialog(trial);
    write(*dialog, "trialCode", "R7");
    write(*dialog, "trialName", "Three beds");
    write(*dialog, "trialQuestion", "Is mesh as good as mix?");
    write(*dialog, "trialMargin", "20,5");
    write(*dialog, "trialNote", "on rack B");
    auto* control = find<QComboBox>(*dialog, "trialControl");
    control->setFocus();
    press(Qt::Key_Down);
    const QString chosen = control->currentText();
    const int before = actsIn(*journal);
    press(Qt::Key_Return);
    ASSERT_FALSE(dialog->isVisible()) << refusal().toStdString();
    const Trial changed = known(trial.id);
    EXPECT_EQ(changed.code, "R7");
    EXPECT_EQ(changed.name, "Three beds");
    EXPECT_EQ(changed.question, "Is mesh as good as mix?");
    EXPECT_EQ(changed.margin, grams(20.5));
    EXPECT_EQ(changed.note, "on rack B");
    ASSERT_TRUE(changed.control);
    EXPECT_EQ(journal->media().all()->front().name, chosen.toStdString());
    EXPECT_EQ(actsIn(*journal), before + 1);
    EXPECT_TRUE(messages.text().contains("R7"));
    pressUndo();
    EXPECT_EQ(known(trial.id), trial);
}

TEST_F(TrialDialogTest, RefusesInWordsWhatIsMissingTakenOrNoNumber)
{
    const Trial other = stored("Other");
    const Trial trial = stored("Two beds");
    openDialog(trial);
    write(*dialog, "trialName", "  ");
    press(Qt::Key_Return);
    EXPECT_FALSE(refusal().isEmpty()) << "no name";
    write(*dialog, "trialName", "Two beds");
    write(*dialog, "trialCode", QString::fromStdString(other.code));
    press(Qt::Key_Return);
    EXPECT_TRUE(refusal().contains(QString::fromStdString(other.code))) << "a code that is taken";
    write(*dialog, "trialCode", "T9");
    for (const char* typed : {"1,234", "a lot", "0", "-4"}) {
        write(*dialog, "trialMargin", typed);
        press(Qt::Key_Return);
        EXPECT_FALSE(refusal().isEmpty()) << typed;
        EXPECT_TRUE(dialog->isVisible()) << typed;
    }
    EXPECT_EQ(known(trial.id), trial);
    write(*dialog, "trialMargin", "");
    press(Qt::Key_Return);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_FALSE(known(trial.id).margin) << "an emptied margin is none";
}

TEST_F(TrialDialogTest, InOuncesWhatIsNotTouchedStaysToTheLastMilligram)
{
    Trial trial = stored("Two beds");
    trial.margin = grams(331.5);
    ASSERT_TRUE(journal->trials().save(trial));
    Room room = journal->room().layout()->room;
    room.units = UnitSystem::UsCustomary;
    ASSERT_TRUE(journal->room().changeRoom(room));
    openDialog(trial);
    write(*dialog, "trialNote", "changed");
    press(Qt::Key_Return);
    EXPECT_EQ(known(trial.id).note, "changed");
    EXPECT_EQ(known(trial.id).margin, grams(331.5));
}

TEST_F(TrialDialogTest, RemovesItOnceAgreedSaysSoAndOffersItBack)
{
    const Trial trial = stored("Two beds");
    openDialog(trial);
    ask.agrees = false;
    click(find<QPushButton>(*dialog, "trialRemove"));
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_EQ(known(trial.id), trial);
    ask.agrees = true;
    click(find<QPushButton>(*dialog, "trialRemove"));
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_TRUE(journal->trials().all()->empty());
    EXPECT_TRUE(messages.text().contains("T1")) << messages.text().toStdString();
    pressUndo();
    EXPECT_EQ(known(trial.id), trial);
}

TEST_F(TrialDialogTest, ATrialWithTraysIsNotRemovedAndSaysWhy)
{
    const Trial trial = stored("Two beds");
    SowingDraft draft = broccoli(1, kTwoDaysAgo);
    draft.trial = trial.id;
    ASSERT_EQ(sow(draft).size(), 1U);
    openDialog(trial);
    click(find<QPushButton>(*dialog, "trialRemove"));
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_FALSE(refusal().isEmpty());
    EXPECT_EQ(known(trial.id), trial);
}

TEST_F(TrialDialogTest, EscapeAsksWhereSomethingWasTypedAndChangesNothing)
{
    const Trial trial = stored("Two beds");
    openDialog(trial);
    press(Qt::Key_Escape);
    EXPECT_TRUE(ask.questions.isEmpty());
    EXPECT_FALSE(dialog->isVisible());
    openDialog(trial);
    write(*dialog, "trialName", "Half typed");
    ask.agrees = false;
    press(Qt::Key_Escape);
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_EQ(find<QLineEdit>(*dialog, "trialName")->text(), "Half typed");
    ask.agrees = true;
    press(Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_EQ(known(trial.id), trial);
}

TEST_F(TrialDialogTest, NamesAreKeptAsTheyAreTyped)
{
    const Trial trial = stored("Two beds");
    for (const HostileText& each : hostileTexts()) {
        openDialog(known(trial.id));
        putInto(*dialog, "trialName", each.text);
        putInto(*dialog, "trialQuestion", each.text);
        press(Qt::Key_Return);
        ASSERT_FALSE(dialog->isVisible()) << each.what << ": " << refusal().toStdString();
        EXPECT_EQ(QString::fromStdString(known(trial.id).name), each.text) << each.what;
        EXPECT_EQ(QString::fromStdString(known(trial.id).question), each.text) << each.what;
    }
}

TEST_F(TrialDialogTest, ANameIsOneLine)
{
    const Trial trial = stored("Two beds");
    openDialog(trial);
    auto* name = find<QLineEdit>(*dialog, "trialName");
    name->setFocus();
    name->selectAll();
    QGuiApplication::clipboard()->setText("Mesh\nagainst mix");
    press(Qt::Key_V, Qt::ControlModifier);
    press(Qt::Key_Return);
    EXPECT_EQ(known(trial.id).name, "Mesh against mix");
}

TEST_F(TrialDialogTest, CanBeReadAndReachedAtEveryLook)
{
    const Trial trial = stored("Two beds");
    const auto faults =
        faultsOfDialog([&] { return new TrialDialog(*journal, services(), trial); });
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
