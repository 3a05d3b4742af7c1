#include "tests/ui/support/dialog_check.h"
#include "tests/ui/support/growing.h"
#include "ui/tray/start_dialog.h"

namespace plumule::ui {
namespace {

class StartDialogTest : public GrowingTest
{
protected:
    std::unique_ptr<StartDialog> dialog;
    std::vector<Moment> chosen;

    void openDialog(const QString& what = "blackout")
    {
        dialog = std::make_unique<StartDialog>(ask, what, Moment{date(2026, 3, 4), 7 * 60 + 30});
        QObject::connect(dialog.get(), &StartDialog::chosen, [this](Date on, int minute) {
            chosen.push_back({on, minute});
        });
        dialog->open();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }
    [[nodiscard]] QString refusal()
    {
        const auto* shown = find<QLabel>(*dialog, "refusal");
        return shown->isVisible() ? shown->text() : QString();
    }
};

TEST_F(StartDialogTest, GivesBackWhatWasTyped)
{
    openDialog();
    EXPECT_EQ(find<QLineEdit>(*dialog, "startTime")->text(), "07:30");
    give(*dialog, "startDay", "5 Mar 2026");
    EXPECT_EQ(nameOfFocus(), "startTime") << "Tab leaves a day with one press";
    type("615");
    press(Qt::Key_Return);
    ASSERT_EQ(chosen.size(), 1U);
    EXPECT_EQ(chosen.front(), (Moment{date(2026, 3, 5), 6 * 60 + 15}));
    EXPECT_FALSE(dialog->isVisible());
}

TEST_F(StartDialogTest, ADayOrATimeThatIsNoneIsRefusedInWords)
{
    openDialog();
    for (const char* typed : {"soon", "2026-02-30", "31.31.2026", ""}) {
        write(*dialog, "startDay", typed);
        press(Qt::Key_Return);
        EXPECT_FALSE(refusal().isEmpty()) << typed;
        EXPECT_TRUE(dialog->isVisible()) << typed;
    }
    write(*dialog, "startDay", "2026-03-05");
    for (const char* typed : {"25:00", "7:99", "noon", ""}) {
        write(*dialog, "startTime", typed);
        press(Qt::Key_Return);
        EXPECT_TRUE(refusal().contains("07:30")) << typed;
        EXPECT_TRUE(dialog->isVisible()) << typed;
    }
    EXPECT_TRUE(chosen.empty());
    write(*dialog, "startTime", "7.45 pm");
    press(Qt::Key_Return);
    ASSERT_EQ(chosen.size(), 1U);
    EXPECT_EQ(chosen.front(), (Moment{date(2026, 3, 5), 19 * 60 + 45}));
}

TEST_F(StartDialogTest, ArrowsStepTheDayAndTheTime)
{
    openDialog();
    find<QLineEdit>(*dialog, "startDay")->setFocus();
    press(Qt::Key_Up);
    press(Qt::Key_Up);
    press(Qt::Key_Down);
    find<QLineEdit>(*dialog, "startTime")->setFocus();
    press(Qt::Key_Down);
    press(Qt::Key_Return);
    ASSERT_EQ(chosen.size(), 1U);
    EXPECT_EQ(chosen.front(), (Moment{date(2026, 3, 5), 7 * 60 + 15}));
}

TEST_F(StartDialogTest, EscapeAsksWhereSomethingWasTypedAndGivesNothing)
{
    openDialog();
    press(Qt::Key_Escape);
    EXPECT_TRUE(ask.questions.isEmpty());
    openDialog();
    write(*dialog, "startTime", "9");
    press(Qt::Key_Escape);
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_TRUE(chosen.empty());
}

TEST_F(StartDialogTest, CanBeReadAndReachedAtEveryLook)
{
    const auto faults = faultsOfDialog([this] {
        return new StartDialog(ask, "light", Moment{date(2026, 3, 4), 7 * 60 + 30});
    });
    EXPECT_EQ(faults.join('\n').toStdString(), "");
}

} // namespace
} // namespace plumule::ui
