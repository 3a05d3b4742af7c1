#include "tests/ui/watering/round_part_fixture.h"
#include "ui/watering/round_head.h"
#include "ui/widget/widgets.h"

#include <QProgressBar>
#include <QScrollArea>
#include <QScrollBar>

namespace plumule::ui {
namespace {

class RoundHeadTest : public RoundPartTest
{
protected:
    [[nodiscard]] QString title() { return words("pageTitle"); }
    [[nodiscard]] QString subtitle() { return words("pageSubtitle"); }
    void chooseSlot(int which) { click(find<Segmented>(*page, "slot")->segment(which)); }
};

TEST_F(RoundHeadTest, GoesDayByDayAndBackToNow)
{
    sowBroccoli(1, kUnderWeight);
    open();
    EXPECT_FALSE(isShown("backToNow"));
    pressButton("dayBefore");
    EXPECT_TRUE(subtitle().startsWith("Yesterday, Wednesday 11 March")) << subtitle().toStdString();
    EXPECT_TRUE(isShown("backToNow"));
    pressButton("dayBefore");
    EXPECT_TRUE(subtitle().startsWith("Tuesday 10 March"));
    pressButton("backToNow");
    EXPECT_TRUE(subtitle().startsWith("Thursday 12 March"));
    EXPECT_FALSE(isShown("backToNow"));
    pressButton("dayAfter");
    EXPECT_TRUE(subtitle().startsWith("Tomorrow, Friday 13 March"));
    EXPECT_TRUE(subtitle().contains("as planned"));
}

TEST_F(RoundHeadTest, LooksAheadNoFurtherThanItsDaysArePlanned)
{
    open();
    auto* after = find<QPushButton>(*page, "dayAfter");
    int steps = 0;
    while (after->isEnabled() && steps < 100) {
        click(after);
        ++steps;
    }
    EXPECT_EQ(steps, 14);
    EXPECT_TRUE(subtitle().startsWith("Thursday 26 March")) << subtitle().toStdString();
}

TEST_F(RoundHeadTest, TheOtherRoundOfTheDayIsChosenByItsButton)
{
    const auto trays = sowBroccoli(1, kUnderWeight);
    open();
    EXPECT_EQ(find<Segmented>(*page, "slot")->chosen(), 0);
    chooseSlot(1);
    EXPECT_EQ(title(), "Evening round");
    EXPECT_TRUE(subtitle().contains("as planned"));
    pressButton("backToNow");
    EXPECT_EQ(title(), "Morning round");
    EXPECT_EQ(find<Segmented>(*page, "slot")->chosen(), 0);
    pressButton("dayBefore");
    chooseSlot(1);
    click(shownRow(*page, "trayBR001"));
    const auto given = sheetOf(trays.front()).waterings;
    ASSERT_EQ(given.size(), 1U);
    EXPECT_EQ(given.front().on, date(2026, 3, 11));
    EXPECT_EQ(given.front().slot, Slot::Evening);
}

TEST_F(RoundHeadTest, CountsTraysMinutesAndDecisions)
{
    sowBroccoli(5, kUnderWeight);
    sowBroccoli(1, kDueNow);
    open();
    EXPECT_TRUE(subtitle().contains("0 of 6 trays done")) << subtitle().toStdString();
    EXPECT_TRUE(subtitle().contains("1 to decide"));
    EXPECT_TRUE(subtitle().contains("left"));
    auto* progress = find<QProgressBar>(*page, "roundProgress");
    EXPECT_EQ(progress->maximum(), 6);
    click(shownRow(*page, "trayBR001"));
    EXPECT_TRUE(soon([&] { return progress->value() == 1; }));
    EXPECT_TRUE(subtitle().contains("1 of 6 trays done"));
}

TEST_F(RoundHeadTest, OneTrayIsOneTray)
{
    sowBroccoli(1, kUnderWeight);
    open();
    EXPECT_TRUE(subtitle().contains("0 of 1 tray done")) << subtitle().toStdString();
    click(shownRow(*page, "trayBR001"));
    EXPECT_TRUE(soon([&] { return subtitle().contains("1 of 1 tray done"); }));
    EXPECT_FALSE(subtitle().contains("left")) << "nothing is left to do";
}

TEST_F(RoundHeadTest, UndoSaysWhatItWouldTakeBackAndTakesThatBack)
{
    sowBroccoli(2, kUnderWeight);
    open();
    auto* undo = find<QPushButton>(*page, "undo");
    click(shownRow(*page, "trayBR002"));
    EXPECT_TRUE(soon([&] { return undo->toolTip().contains("BR002"); }))
        << undo->toolTip().toStdString();
    pressButton("undo");
    EXPECT_EQ(doneCount(), 0);
    EXPECT_TRUE(messages.text().startsWith("Taken back"));
    auto* redo = find<QPushButton>(messages, "messageAction");
    EXPECT_EQ(redo->text(), "Redo");
    click(redo);
    EXPECT_EQ(doneCount(), 1);
}

TEST_F(RoundHeadTest, WithNothingDoneThereIsNothingToUndo)
{
    open();
    EXPECT_FALSE(find<QPushButton>(*page, "undo")->isEnabled());
    letter(Qt::Key_U, [&] { return !messages.text().isEmpty(); });
    EXPECT_TRUE(messages.isRefusal());
}

TEST_F(RoundHeadTest, DecisionsAloneHasAButtonWhereThereAreAny)
{
    sowBroccoli(2, kUnderWeight);
    open();
    EXPECT_FALSE(isShown("decisionsAlone"));
    sowBroccoli(1, kDueNow);
    EXPECT_TRUE(soon([&] { return isShown("decisionsAlone"); }));
    pressButton("decisionsAlone");
    EXPECT_EQ(shownRow(*page, "trayBR001"), nullptr);
    EXPECT_EQ(find<QPushButton>(*page, "decisionsAlone")->text(), "All trays");
    settleDown(); // till the rows before are gone
    EXPECT_TRUE(find<DecisionRow>(*page, "decisionBR003")->isVisible());
    pressButton("readyBR003");
    EXPECT_TRUE(soon([&] { return page->findChild<DecisionRow*>("decisionBR003") == nullptr; }));
    EXPECT_TRUE(isShown("decisionsAlone")) << "there is a way back to all trays";
    pressButton("decisionsAlone");
    EXPECT_NE(shownRow(*page, "trayBR001"), nullptr);
}

TEST_F(RoundHeadTest, ShowingDecisionsAloneKeepsWhatWasBeingTyped)
{
    const auto trays = sowBroccoli(2, kUnderWeight);
    sowBroccoli(1, kDueNow);
    open();
    page->takeInHand(trays[0]);
    openPanelBy(Qt::Key_W, "given");
    QTest::keyClicks(QApplication::focusWidget(), "60");
    pressButton("decisionsAlone");
    EXPECT_FALSE(panel().isVisible());
    ASSERT_EQ(sheetOf(trays[0]).waterings.size(), 1U) << messages.text().toStdString();
    EXPECT_EQ(sheetOf(trays[0]).waterings.front().amount, millilitres(60));
    pressButton("decisionsAlone");
    pressButton("dayBefore");
    EXPECT_TRUE(subtitle().startsWith("Yesterday")) << "the way on is free";
}

TEST_F(RoundHeadTest, AnotherRoundBeginsAtItsTop)
{
    sowBroccoli(30, kUnderWeight);
    open({1000, 640});
    press(Qt::Key_End);
    auto* bar = find<QScrollArea>(*page, "roundScroll")->verticalScrollBar();
    EXPECT_TRUE(soon([&] { return bar->value() > 0; }));
    chooseSlot(1);
    EXPECT_EQ(bar->value(), 0);
    press(Qt::Key_Home);
    pressButton("backToNow");
    EXPECT_EQ(bar->value(), 0);
    EXPECT_EQ(rowInHand(), shownRow(*page, "trayBR001"));
}

} // namespace
} // namespace plumule::ui
