#include "core/journal/cost/work_time_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/ui/watering/round_fixture.h"
#include "ui/watering/round_side.h"

#include <QDialog>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QProgressBar>
#include <QScrollArea>
#include <QScrollBar>

#include <set>

namespace plumule::ui {
namespace {

const Moment kTwoDaysAgo{date(2026, 3, 10), 7 * 60 + 30};
const Moment kThreeDaysAgo{date(2026, 3, 9), 7 * 60 + 30};
const Moment kTwelveDaysAgo{date(2026, 2, 28), 7 * 60 + 30};
const Moment kEightDaysAgo{date(2026, 3, 4), 7 * 60 + 30};

QStringList labelsOf(const QWidget& within)
{
    QStringList texts;
    for (const QLabel* each : within.findChildren<QLabel*>()) {
        // Amounts are kept on one line by marks that are not seen.
        texts << each->text().remove(QChar(0x2060)).replace(QChar(QChar::Nbsp), ' ');
    }
    return texts;
}

TEST_F(RoundTest, TimesTheWateringByOneKey)
{
    sowBroccoli(4, kTwelveDaysAgo);
    const auto page = openPage();
    press(Qt::Key_F8);
    const auto running = journal->workTimes().running().value();
    ASSERT_TRUE(running);
    EXPECT_EQ(running->task, LabourKind::Watering);
    clock.set(clock.now() + 2);
    press(Qt::Key_F8);
    // Nothing was watered yet: it asks, and runs on until it is answered.
    EXPECT_NE(page->findChild<QDialog*>("workTimeDialog"), nullptr);
    EXPECT_TRUE(journal->workTimes().running().value());
}

TEST_F(RoundTest, ShowsTheMorningRoundByTheClockInWalkingOrder)
{
    sowBroccoli(6, kTwoDaysAgo);
    const auto page = openPage();
    EXPECT_EQ(find<QLabel>(*page, "pageTitle")->text(), "Morning round");
    EXPECT_TRUE(find<QLabel>(*page, "pageSubtitle")->text().contains("Thursday 12 March"));
    EXPECT_TRUE(find<QLabel>(*page, "pageSubtitle")->text().contains("0 of 6 trays done"));
    EXPECT_TRUE(find<QLabel>(*page, "pageSubtitle")->text().contains("left"));
    EXPECT_NE(page->findChild<QWidget*>("shelfRack A · shelf 1"), nullptr);
    EXPECT_NE(page->findChild<QWidget*>("shelfRack A · shelf 2"), nullptr);
    QStringList walked;
    for (int i = 0; i < 6; ++i) {
        ASSERT_NE(rowInHand(), nullptr);
        walked << rowInHand()->objectName();
        press(Qt::Key_Down);
    }
    EXPECT_EQ(walked, QStringList({"trayBR001", "trayBR002", "trayBR003", "trayBR004", "trayBR005",
                                   "trayBR006"}));
}

TEST_F(RoundTest, TicksFortyTraysBySpaceAlone)
{
    sowBroccoli(40, kTwoDaysAgo);
    const auto page = openPage({1232, 700});
    std::set<TrayId> ticked;
    for (int i = 0; i < 40; ++i) {
        ASSERT_NE(rowInHand(), nullptr) << i;
        EXPECT_FALSE(rowInHand()->tray().isDone()) << i;
        ticked.insert(rowInHand()->tray().tray);
        press(Qt::Key_Space);
        QCoreApplication::sendPostedEvents();
    }
    EXPECT_EQ(ticked.size(), 40U);
    EXPECT_EQ(doneCount(), 40);
    EXPECT_TRUE(soon([&] { return find<QProgressBar>(*page, "roundProgress")->value() == 40; }));
    EXPECT_TRUE(find<QLabel>(*page, "pageSubtitle")->text().contains("40 of 40 trays done"));
}

TEST_F(RoundTest, BringsTheRowInHandIntoView)
{
    sowBroccoli(40, kTwoDaysAgo);
    const auto page = openPage({1232, 700});
    auto* scroll = find<QScrollArea>(*page, "roundScroll");
    EXPECT_EQ(scroll->verticalScrollBar()->value(), 0);
    press(Qt::Key_End);
    ASSERT_NE(rowInHand(), nullptr);
    EXPECT_EQ(rowInHand()->objectName(), "trayBR040");
    EXPECT_TRUE(soon([&] {
        const QPoint top = rowInHand()->mapTo(scroll->viewport(), QPoint());
        return top.y() > 0 && top.y() + rowInHand()->height() <= scroll->viewport()->height();
    }));
    EXPECT_GT(scroll->verticalScrollBar()->value(), 0);
}

TEST_F(RoundTest, APressAnywhereOnARowTicksItAndAnotherTakesTheTickOff)
{
    const auto trays = sowBroccoli(3, kTwoDaysAgo);
    const auto page = openPage();
    auto* row = shownRow(*page, "trayBR002");
    EXPECT_GE(row->height(), 44);
    QTest::mouseClick(row, Qt::LeftButton, Qt::NoModifier,
                      QPoint(row->width() / 2, row->height() / 2));
    EXPECT_TRUE(row->isChecked());
    EXPECT_EQ(doneCount(), 1);
    EXPECT_TRUE(messages.text().contains("BR002"));
    EXPECT_EQ(rowInHand(), row);
    QTest::mouseClick(row, Qt::LeftButton, Qt::NoModifier, QPoint(10, 10));
    EXPECT_FALSE(row->isChecked());
    EXPECT_EQ(doneCount(), 0);
}

TEST_F(RoundTest, KeepsItsRowsTheFocusAndTheScrollOverATick)
{
    sowBroccoli(40, kTwoDaysAgo);
    const auto page = openPage({1232, 700});
    auto* scroll = find<QScrollArea>(*page, "roundScroll");
    auto* row = shownRow(*page, "trayBR020");
    row->setFocus();
    EXPECT_TRUE(soon([&] { return scroll->verticalScrollBar()->value() > 0; }));
    const int before = scroll->verticalScrollBar()->value();
    QTest::mouseClick(row, Qt::LeftButton);
    EXPECT_TRUE(
        soon([&] { return find<QLabel>(*page, "pageSubtitle")->text().contains("1 of 40"); }));
    EXPECT_EQ(shownRow(*page, "trayBR020"), row);
    EXPECT_EQ(rowInHand(), row);
    EXPECT_EQ(scroll->verticalScrollBar()->value(), before);
}

TEST_F(RoundTest, TicksTheShelfAndTakesItBackByTheirLetters)
{
    sowBroccoli(6, kTwoDaysAgo);
    const auto page = openPage();
    press(Qt::Key_S);
    EXPECT_TRUE(soon([&] { return doneCount() == 4; }));
    ASSERT_NE(rowInHand(), nullptr);
    EXPECT_EQ(rowInHand()->objectName(), "trayBR005");
    press(Qt::Key_U);
    EXPECT_TRUE(soon([&] { return doneCount() == 0; }));
    EXPECT_TRUE(messages.text().startsWith("Taken back"));
}

TEST_F(RoundTest, LettersThatAScannerTypesAreNoCommands)
{
    sowBroccoli(4, kTwoDaysAgo);
    const auto page = openPage();
    keys.scan([] {
        for (const Qt::Key key : {Qt::Key_S, Qt::Key_U, Qt::Key_0, Qt::Key_1, Qt::Key_S}) {
            press(key);
        }
    });
    EXPECT_FALSE(page->findChild<LoneKey*>()->isWaiting());
    EXPECT_EQ(doneCount(), 0);
}

TEST_F(RoundTest, AScannedTrayIsTheOneInHandAndScrolledTo)
{
    const auto sown = sowBroccoli(32, kTwoDaysAgo);
    const auto page = openPage({1000, 640});
    page->takeInHand(sown[30]);
    ASSERT_NE(rowInHand(), nullptr);
    EXPECT_EQ(rowInHand()->tray().tray, sown[30]);
    auto* scroll = find<QScrollArea>(*page, "roundScroll");
    EXPECT_TRUE(soon([&] {
        const QRect row(rowInHand()->mapTo(scroll->viewport(), QPoint()), rowInHand()->size());
        return scroll->viewport()->rect().contains(row);
    }));
    EXPECT_EQ(doneCount(), 0);
}

TEST_F(RoundTest, AScannedTrayThatNeedsNothingIsSaidToNeedNothing)
{
    const auto later = sowBroccoli(1, {clock.today(), 7 * 60 + 5});
    sowBroccoli(2, kTwoDaysAgo);
    const auto page = openPage();
    ASSERT_EQ(shownRow(*page, "trayBR001"), nullptr);
    page->takeInHand(later.front());
    EXPECT_EQ(messages.text(), "BR001 needs nothing in this round.");
    EXPECT_EQ(rowInHand(), shownRow(*page, "trayBR002"));
}

TEST_F(RoundTest, AScanKeepsWhatWasTypedAboutTheOtherTray)
{
    const auto sown = sowBroccoli(3, kTwoDaysAgo);
    const auto page = openPage();
    press(Qt::Key_T);
    ASSERT_TRUE(soon([&] { return find<QWidget>(*page, "trayPanel")->isVisible(); }));
    QTest::keyClicks(QApplication::focusWidget(), "slow on one side");
    page->takeInHand(sown[2]);
    EXPECT_FALSE(find<QWidget>(*page, "trayPanel")->isVisible());
    ASSERT_EQ(journal->trays().sheet(sown[0])->notes.size(), 1U);
    EXPECT_TRUE(journal->trays().sheet(sown[2])->notes.empty());
    EXPECT_EQ(rowInHand(), shownRow(*page, "trayBR003"));
}

TEST_F(RoundTest, SaysWhatWasMissed)
{
    const auto trays = sowBroccoli(1, kTwoDaysAgo);
    ASSERT_TRUE(journal->watering().tick(trays[0], clock.today() - 1, Slot::Morning));
    const auto page = openPage();
    EXPECT_TRUE(shownRow(*page, "trayBR001")->accessibleName().contains("missed p.m."));
    clock.set({date(2026, 3, 12), 18 * 60});
    const auto evening = openPage();
    EXPECT_EQ(find<QLabel>(*evening, "pageTitle")->text(), "Evening round");
    EXPECT_TRUE(shownRow(*evening, "trayBR001")->accessibleName().contains("missed a.m."));
}

TEST_F(RoundTest, ReadyMovesTheTrayOn)
{
    const auto trays = sowBroccoli(1, kThreeDaysAgo);
    const auto page = openPage();
    ASSERT_NE(page->findChild<DecisionRow*>("decisionBR001"), nullptr);
    press(Qt::Key_R);
    EXPECT_TRUE(soon([&] {
        const StagePlan plan = planOf(trays.front());
        return plan.spans[*plan.current].stage == Stage::Blackout;
    }));
    EXPECT_TRUE(soon([&] { return page->findChild<DecisionRow*>("decisionBR001") == nullptr; }));
    EXPECT_TRUE(messages.text().contains("BR001"));
}

TEST_F(RoundTest, NotYetMovesAllThatFollowsByARound)
{
    const auto trays = sowBroccoli(1, kThreeDaysAgo);
    const auto page = openPage();
    const Moment before = planOf(trays.front()).harvest;
    QTest::mouseClick(find<QPushButton>(*page, "notYetBR001"), Qt::LeftButton);
    EXPECT_EQ(planOf(trays.front()).harvest - before, 11 * 60);
    EXPECT_TRUE(messages.text().contains("Asked again this evening"));
    EXPECT_TRUE(soon([&] { return page->findChild<DecisionRow*>("decisionBR001") == nullptr; }));
    EXPECT_NE(shownRow(*page, "trayBR001"), nullptr);
    QTest::mouseClick(find<QPushButton>(*page, "undo"), Qt::LeftButton);
    EXPECT_EQ(planOf(trays.front()).harvest, before);
}

TEST_F(RoundTest, AHarvestLeadsToTheScaleOrWaitsADay)
{
    const auto trays = sowBroccoli(1, kTwelveDaysAgo);
    bringIntoLight(trays, kTwelveDaysAgo);
    const auto page = openPage();
    ASSERT_EQ(shownRow(*page, "trayBR001"), nullptr);
    QSignalSpy asked(page.get(), &Page::weighingAsked);
    press(Qt::Key_R);
    ASSERT_TRUE(soon([&] { return asked.count() == 1; }));
    EXPECT_EQ(asked.front().front().toString(), "BR001");
    const Moment before = planOf(trays.front()).harvest;
    press(Qt::Key_N);
    EXPECT_TRUE(soon([&] { return planOf(trays.front()).harvest - before == kMinutesPerDay; }));
    // It grows on, so that it is watered.
    EXPECT_TRUE(soon([&] { return shownRow(*page, "trayBR001") != nullptr; }));
}

TEST_F(RoundTest, TheFirstPressLeadsToADecisionThatIsNotInHand)
{
    sowBroccoli(4, kTwoDaysAgo);
    const auto due = sowBroccoli(1, kThreeDaysAgo);
    const auto page = openPage();
    ASSERT_EQ(rowInHand()->objectName(), "trayBR001");
    press(Qt::Key_R);
    EXPECT_TRUE(soon([&] { return find<DecisionRow>(*page, "decisionBR005")->hasFocus(); }));
    EXPECT_EQ(*planOf(due.front()).current, 0U);
    press(Qt::Key_R);
    EXPECT_TRUE(soon([&] { return *planOf(due.front()).current == 1U; }));
}

TEST_F(RoundTest, NamesThoseWithoutWaterOnTopAndTakesTheWorstInHand)
{
    const auto trays = sowBroccoli(8, {date(2026, 3, 6), 7 * 60});
    for (const TrayId tray : trays) {
        ASSERT_TRUE(journal->trays().notYet(tray, 10 * kMinutesPerDay));
        const Date last = tray == trays[6] ? date(2026, 3, 8) : clock.today() - 1;
        ASSERT_TRUE(journal->watering().tick(tray, last, Slot::Evening));
    }
    const auto page = openPage();
    auto* bar = find<QWidget>(*page, "forgotten");
    ASSERT_TRUE(bar->isVisible());
    EXPECT_TRUE(
        find<QLabel>(*page, "forgottenWords")->text().startsWith("Not watered for 4 days: BR007"));
    QTest::mouseClick(find<QPushButton>(*page, "takeForgotten"), Qt::LeftButton);
    ASSERT_NE(rowInHand(), nullptr);
    EXPECT_EQ(rowInHand()->objectName(), "trayBR007");
    EXPECT_TRUE(rowInHand()->accessibleName().contains("4 days dry"));
    press(Qt::Key_Space);
    EXPECT_TRUE(soon([&] { return !bar->isVisible(); }));
}

TEST_F(RoundTest, DecisionsAreMadeWithTheirShelfTogetherOrOneByOne)
{
    sowBroccoli(4, kTwoDaysAgo);
    const auto due = sowBroccoli(3, kThreeDaysAgo);
    const auto page = openPage();
    auto* together = find<DecisionRow>(*page, "decisionBR005");
    EXPECT_EQ(together->codes(), QString::fromUtf8("BR005–007"));
    EXPECT_EQ(together->readyText(), "Ready, all 3");
    EXPECT_GT(together->mapTo(page.get(), QPoint()).y(),
              shownRow(*page, "trayBR004")->mapTo(page.get(), QPoint()).y());
    EXPECT_LT(together->mapTo(page.get(), QPoint()).y(),
              shownRow(*page, "trayBR005")->mapTo(page.get(), QPoint()).y());
    // With one tray in hand its own decision alone.
    shownRow(*page, "trayBR006")->setFocus();
    press(Qt::Key_N);
    EXPECT_TRUE(
        soon([&] { return find<DecisionRow>(*page, "decisionBR005")->codes() == "BR005, BR007"; }));
    EXPECT_TRUE(messages.text().startsWith("BR006: not yet"));
    QTest::mouseClick(find<QPushButton>(*page, "oneByOneBR005"), Qt::LeftButton);
    ASSERT_TRUE(soon([&] { return page->findChild<DecisionRow*>("decisionBR007") != nullptr; }));
    QTest::mouseClick(find<QPushButton>(*page, "readyBR007"), Qt::LeftButton);
    EXPECT_EQ(planOf(due[2]).current, 1U);
    EXPECT_EQ(planOf(due[0]).current, 0U);
}

TEST_F(RoundTest, AllOfADecisionIsOneAct)
{
    const auto due = sowBroccoli(3, kThreeDaysAgo);
    const auto page = openPage();
    ASSERT_TRUE(find<DecisionRow>(*page, "decisionBR001")->hasFocus());
    press(Qt::Key_R);
    EXPECT_TRUE(soon([&] { return planOf(due[2]).current == 1U; }));
    EXPECT_TRUE(soon([&] { return rowInHand() == shownRow(*page, "trayBR001"); }))
        << "what stands after it is in hand next";
    QTest::mouseClick(find<QPushButton>(*page, "undo"), Qt::LeftButton);
    EXPECT_EQ(planOf(due[0]).current, 0U);
    EXPECT_EQ(planOf(due[2]).current, 0U);
}

TEST_F(RoundTest, TheShelfIsTickedAlsoWithADecisionInHand)
{
    sowBroccoli(4, kThreeDaysAgo);
    const auto page = openPage();
    ASSERT_TRUE(find<DecisionRow>(*page, "decisionBR001")->hasFocus());
    press(Qt::Key_S);
    EXPECT_TRUE(soon([&] { return doneCount() == 4; }));
}

TEST_F(RoundTest, DecisionsAloneAreShownAtALetter)
{
    sowBroccoli(4, kTwoDaysAgo);
    sowBroccoli(1, kThreeDaysAgo);
    const auto page = openPage();
    press(Qt::Key_L);
    EXPECT_TRUE(soon([&] { return shownRow(*page, "trayBR001") == nullptr; }));
    EXPECT_TRUE(find<DecisionRow>(*page, "decisionBR005")->hasFocus());
    press(Qt::Key_L);
    EXPECT_TRUE(soon([&] { return shownRow(*page, "trayBR001") != nullptr; }));
}

TEST_F(RoundTest, SaysThatANewerRoundIsDueAndTicksTheOneThatIsLookedAt)
{
    const auto trays = sowBroccoli(2, kTwoDaysAgo);
    const auto page = openPage();
    auto* due = find<QWidget>(*page, "dueBar");
    EXPECT_FALSE(due->isVisible());
    clock.set({clock.today(), 18 * 60});
    page->followClock();
    EXPECT_TRUE(soon([&] { return due->isVisible(); }));
    EXPECT_TRUE(find<QLabel>(*page, "dueWords")->text().contains("this evening"));
    EXPECT_EQ(find<QLabel>(*page, "pageTitle")->text(), "Morning round");
    press(Qt::Key_Space);
    const auto given = journal->trays().sheet(trays[0])->waterings;
    ASSERT_EQ(given.size(), 1U);
    EXPECT_EQ(given.front().slot, Slot::Morning);
    QCoreApplication::sendPostedEvents();
    EXPECT_EQ(find<QLabel>(*page, "pageTitle")->text(), "Morning round");
    QTest::mouseClick(find<QPushButton>(*page, "goToDue"), Qt::LeftButton);
    EXPECT_FALSE(due->isVisible());
    EXPECT_EQ(find<QLabel>(*page, "pageTitle")->text(), "Evening round");
    EXPECT_EQ(rowInHand(), shownRow(*page, "trayBR001")) << "at the top";
}

TEST_F(RoundTest, AtMidnightTheRoundOfTheEveningStaysUntilTheGrowerLeavesIt)
{
    sowBroccoli(1, kTwoDaysAgo);
    clock.set({clock.today(), 23 * 60 + 50});
    const auto page = openPage();
    clock.set({clock.today() + 1, 0});
    page->followClock();
    EXPECT_TRUE(soon([&] { return find<QWidget>(*page, "dueBar")->isVisible(); }));
    EXPECT_TRUE(find<QLabel>(*page, "pageSubtitle")->text().startsWith("Yesterday"));
    press(Qt::Key_Space);
    EXPECT_EQ(journal->watering().round(clock.today() - 1, Slot::Evening)->doneCount(), 1);
    EXPECT_EQ(doneCount(), 0);
    page->begin();
    EXPECT_EQ(find<QLabel>(*page, "pageTitle")->text(), "Morning round");
}

TEST_F(RoundTest, AsksOfATrayWateredAsNeededWhetherItNeedsWater)
{
    makeAsNeeded(Stage::UnderWeight);
    sowBroccoli(4, {clock.today() - 1, 6 * 60});
    const auto page = openPage({1300, 900});
    auto* row = shownRow(*page, "trayBR001");
    ASSERT_TRUE(row->asksWhetherNeeded());
    EXPECT_GE(row->wateredArea().height(), 44);
    EXPECT_GE(row->notNeededArea().height(), 44);
    EXPECT_FALSE(row->wateredArea().intersects(row->notNeededArea()));
    const auto pressAt = [](TrayRow* at, QRect area) {
        QTest::mouseClick(at, Qt::LeftButton, Qt::NoModifier, area.center());
    };
    QTest::mouseClick(row, Qt::LeftButton, Qt::NoModifier, QPoint(60, row->height() / 2));
    EXPECT_EQ(doneCount(), 0) << "beside its two answers a press is none";
    pressAt(row, row->wateredArea());
    EXPECT_EQ(doneCount(), 1);
    ASSERT_TRUE(row->tray().given);
    auto* second = shownRow(*page, "trayBR002");
    pressAt(second, second->notNeededArea());
    EXPECT_EQ(doneCount(), 2);
    EXPECT_TRUE(second->tray().looked);
    EXPECT_TRUE(second->accessibleName().contains("not needed 07:10"));
    ASSERT_EQ(rowInHand()->objectName(), "trayBR003");
    press(Qt::Key_D);
    EXPECT_TRUE(soon([&] { return doneCount() == 3; }));
    press(Qt::Key_S); // none needed on this shelf
    EXPECT_TRUE(soon([&] { return doneCount() == 4; }));
    EXPECT_TRUE(shownRow(*page, "trayBR004")->tray().looked);
    EXPECT_TRUE(
        journal->trays().sheet(shownRow(*page, "trayBR004")->tray().tray)->waterings.empty());
}

TEST_F(RoundTest, WaterBetweenRoundsIsGivenAtALetterAndShownInItsRow)
{
    const auto trays = sowBroccoli(3, kTwoDaysAgo);
    const auto page = openPage();
    clock.set({clock.today(), 10 * 60 + 40});
    press(Qt::Key_A);
    ASSERT_TRUE(soon([&] { return page->findChild<QDialog*>("betweenDialog") != nullptr; }));
    auto* dialog = page->findChild<QDialog*>("betweenDialog");
    auto* list = find<QListWidget>(*dialog, "betweenTrays");
    ASSERT_EQ(list->count(), 3);
    EXPECT_EQ(list->item(0)->checkState(), Qt::Checked);
    list->item(2)->setCheckState(Qt::Checked);
    auto* give = find<QPushButton>(*dialog, "giveBetween");
    EXPECT_EQ(give->text(), "Watered 2 trays");
    auto* amount = find<QLineEdit>(*dialog, "betweenAmount");
    amount->setText("150");
    QTest::mouseClick(give, Qt::LeftButton);
    const auto given = journal->trays().sheet(trays[2])->waterings;
    ASSERT_EQ(given.size(), 1U);
    EXPECT_TRUE(given.front().isBetween);
    EXPECT_EQ(given.front().amount, millilitres(150));
    EXPECT_EQ(given.front().minute, 10 * 60 + 40);
    EXPECT_TRUE(journal->trays().sheet(trays[1])->waterings.empty());
    EXPECT_EQ(doneCount(), 0);
    EXPECT_TRUE(soon(
        [&] { return shownRow(*page, "trayBR001")->accessibleName().contains("given 10:40"); }));
    EXPECT_TRUE(shownRow(*page, "trayBR001")->toolTip().contains("150 mL"));
}

TEST_F(RoundTest, TheBarAtTheFootSaysWhatIsInHandAndDoesIt)
{
    sowBroccoli(4, kTwoDaysAgo);
    const auto due = sowBroccoli(2, kThreeDaysAgo);
    const auto page = openPage({1300, 900});
    page->takeInHand(due[1]);
    EXPECT_EQ(find<QLabel>(*page, "inHand")->text(), "BR006");
    EXPECT_TRUE(find<QLabel>(*page, "inHandWhere")->text().contains("under weight"));
    EXPECT_EQ(find<QWidget>(*page, "handBar")->property("role").toString(), "scanned");
    for (const char* name : {"handTick", "handReady", "handNotYet", "openNote", "putDown"}) {
        EXPECT_GE(find<QPushButton>(*page, name)->height(), 44) << name;
    }
    QTest::mouseClick(find<QPushButton>(*page, "handReady"), Qt::LeftButton);
    EXPECT_EQ(planOf(due[1]).current, 1U);
    EXPECT_EQ(planOf(due[0]).current, 0U);
    ASSERT_TRUE(soon([&] { return rowInHand() == shownRow(*page, "trayBR006"); }));
    QTest::mouseClick(find<QPushButton>(*page, "handTick"), Qt::LeftButton);
    EXPECT_EQ(doneCount(), 1);
    press(Qt::Key_Escape);
    EXPECT_FALSE(find<QWidget>(*page, "putDown")->isVisible());
    press(Qt::Key_Down);
    EXPECT_NE(rowInHand(), nullptr);
}

TEST_F(RoundTest, KeepsANoteAndAHeightWrittenUnderTheRow)
{
    const auto trays = sowBroccoli(2, kTwoDaysAgo);
    const auto page = openPage();
    press(Qt::Key_T);
    auto* note = find<QLineEdit>(*page, "note");
    ASSERT_TRUE(soon([&] { return note->hasFocus(); }));
    QTest::keyClicks(note, "Some seed stuck");
    auto* height = find<QLineEdit>(*page, "height");
    height->setFocus();
    QTest::keyClicks(height, "4,5");
    QTest::keyClick(height, Qt::Key_Return);
    const auto sheet = journal->trays().sheet(trays.front());
    ASSERT_EQ(sheet->notes.size(), 1U);
    EXPECT_EQ(sheet->notes.front().text, "Some seed stuck");
    ASSERT_EQ(sheet->heights.size(), 1U);
    EXPECT_EQ(sheet->heights.front().reading, millimetres(4.5));
    EXPECT_EQ(sheet->heights.front().from, ReadFrom::Surface);
    // Letters in a field are text.
    EXPECT_EQ(doneCount(), 0);
    EXPECT_FALSE(find<QWidget>(*page, "trayPanel")->isVisible());
    EXPECT_EQ(rowInHand()->objectName(), "trayBR001");
}

TEST_F(RoundTest, WaterGivenTicksTheTrayWithItsAmount)
{
    const auto trays = sowBroccoli(1, kEightDaysAgo);
    bringIntoLight(trays, kEightDaysAgo);
    const auto page = openPage();
    press(Qt::Key_W);
    auto* given = find<QLineEdit>(*page, "given");
    ASSERT_TRUE(soon([&] { return given->hasFocus(); }));
    QTest::keyClicks(given, "150");
    find<QLineEdit>(*page, "ph")->setText("5.8");
    QTest::keyClick(given, Qt::Key_Return);
    const auto round = journal->watering().roundNow();
    ASSERT_TRUE(round->trays.front().given.has_value());
    EXPECT_EQ(round->trays.front().given->amount, millilitres(150));
    EXPECT_TRUE(shownRow(*page, "trayBR001")->accessibleName().contains("150 mL"));
}

TEST_F(RoundTest, ASaveOfThePanelIsOneActAndOneUndo)
{
    const auto trays = sowBroccoli(1, kEightDaysAgo);
    bringIntoLight(trays, kEightDaysAgo);
    const auto page = openPage();
    const std::size_t before = journal->latestEntries(1000)->size();
    press(Qt::Key_W);
    auto* given = find<QLineEdit>(*page, "given");
    ASSERT_TRUE(soon([&] { return given->hasFocus(); }));
    QTest::keyClicks(given, "150");
    find<QLineEdit>(*page, "note")->setText("Leaves curl");
    find<QLineEdit>(*page, "height")->setText("42");
    find<QLineEdit>(*page, "ph")->setText("5.8");
    find<QLineEdit>(*page, "ec")->setText("1400");
    QTest::keyClick(given, Qt::Key_Return);
    ASSERT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_EQ(messages.text(), "Wrote down what was seen of BR001.");
    EXPECT_EQ(journal->latestEntries(1000)->size(), before + 1);
    const auto sheet = journal->trays().sheet(trays.front());
    EXPECT_EQ(sheet->notes.size(), 1U);
    EXPECT_EQ(sheet->heights.size(), 1U);
    EXPECT_EQ(sheet->waterings.size(), 1U);
    find<QPushButton>(messages, "messageAction")->click();
    const auto undone = journal->trays().sheet(trays.front());
    EXPECT_TRUE(undone->notes.empty());
    EXPECT_TRUE(undone->heights.empty());
    EXPECT_TRUE(undone->waterings.empty());
}

TEST_F(RoundTest, WhereOneFieldIsRefusedNothingOfThePanelIsKept)
{
    const auto trays = sowBroccoli(1, kTwoDaysAgo);
    const auto page = openPage();
    press(Qt::Key_H);
    auto* height = find<QLineEdit>(*page, "height");
    ASSERT_TRUE(soon([&] { return height->hasFocus(); }));
    find<QLineEdit>(*page, "note")->setText("Kept in the field");
    QTest::keyClicks(height, "4000"); // four metres
    QTest::keyClick(height, Qt::Key_Return);
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(journal->trays().sheet(trays.front())->notes.empty());
    EXPECT_EQ(find<QLineEdit>(*page, "note")->text(), "Kept in the field");
}

TEST_F(RoundTest, ANumberThatIsNoneKeepsThePanelOpen)
{
    const auto trays = sowBroccoli(1, kTwoDaysAgo);
    const auto page = openPage();
    press(Qt::Key_H);
    auto* height = find<QLineEdit>(*page, "height");
    ASSERT_TRUE(soon([&] { return height->hasFocus(); }));
    find<QLineEdit>(*page, "note")->setText("Kept");
    QTest::keyClicks(height, "4x");
    QTest::keyClick(height, Qt::Key_Return);
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(find<QWidget>(*page, "trayPanel")->isVisible());
    EXPECT_TRUE(journal->trays().sheet(trays.front())->notes.empty());
    QTest::keyClick(height, Qt::Key_Escape);
    EXPECT_FALSE(find<QWidget>(*page, "trayPanel")->isVisible());
}

TEST_F(RoundTest, WhatIsTypedOutlivesAChangeOfTheRound)
{
    sowBroccoli(2, kTwoDaysAgo);
    const auto page = openPage();
    press(Qt::Key_T);
    auto* note = find<QLineEdit>(*page, "note");
    ASSERT_TRUE(soon([&] { return note->hasFocus(); }));
    QTest::keyClicks(note, "half");
    sowBroccoli(1, kTwoDaysAgo);
    ASSERT_TRUE(soon([&] { return shownRow(*page, "trayBR003") != nullptr; }));
    settleDown(); // till the rows before are gone
    EXPECT_TRUE(note->isVisible());
    EXPECT_TRUE(note->hasFocus());
    EXPECT_EQ(note->text(), "half");
}

// Check value, common practice, no source: sixteen waterings of half a US cup (118 mL) take 1.89 L
// and, at 11.72 mL/L, 22.2 mL of concentrate.
TEST_F(RoundTest, SaysWhatToMix)
{
    const auto trays = sowBroccoli(16, kEightDaysAgo);
    bringIntoLight(trays, kEightDaysAgo);
    const auto page = openPage();
    const QStringList mix = labelsOf(*find<QWidget>(*page, "mix"));
    EXPECT_TRUE(mix.contains("Nutrient mix")) << mix.join('|').toStdString();
    EXPECT_TRUE(mix.contains("1.89 L"));
    EXPECT_TRUE(mix.contains("22.2 mL"));
    EXPECT_TRUE(mix.filter("11.72 mL/L").size() == 1);
    EXPECT_TRUE(mix.filter(QString::fromUtf8("pH 5.5–6.0")).size() == 1);
}

TEST_F(RoundTest, NotesAReadingOfTheMix)
{
    const auto trays = sowBroccoli(1, kEightDaysAgo);
    bringIntoLight(trays, kEightDaysAgo);
    const auto page = openPage();
    press(Qt::Key_M);
    auto* ph = find<QLineEdit>(*page, "mixPh");
    ASSERT_TRUE(soon([&] { return ph->hasFocus(); }));
    QTest::keyClicks(ph, "6.9");
    QTest::keyClick(ph, Qt::Key_Return);
    const auto round = journal->watering().roundNow();
    ASSERT_EQ(round->mix.size(), 1U);
    ASSERT_TRUE(round->mix.front().lastReading.has_value());
    EXPECT_EQ(round->mix.front().lastReading->ph, 6.9);
    EXPECT_TRUE(soon([&] {
        return labelsOf(*find<QWidget>(*page, "mix")).filter("out of the band").size() == 1;
    }));
}

TEST_F(RoundTest, SaysThatNoTrayNeedsWater)
{
    clock.set({date(2026, 3, 12), 18 * 60});
    const auto page = openPage();
    EXPECT_TRUE(find<QLabel>(*page, "nothingToWater")
                    ->text()
                    .startsWith("No tray needs water this evening."));
}

TEST_F(RoundTest, CountsWhatIsOpenOnItsBadge)
{
    sowBroccoli(3, kTwoDaysAgo);
    sowBroccoli(1, kThreeDaysAgo);
    RoundPage page(*journal, services());
    QSignalSpy badge(&page, &Page::badgeChanged);
    show(page);
    ASSERT_FALSE(badge.isEmpty());
    EXPECT_EQ(badge.back().front().toInt(), 5); // four waterings and one decision
    page.hide();
    const auto round = journal->watering().roundNow();
    ASSERT_TRUE(journal->watering().tick(round->trays.front().tray, round->date, round->slot));
    EXPECT_TRUE(soon([&] { return badge.back().front().toInt() == 4; }));
}

TEST_F(RoundTest, TheDayAfterIsShownAsPlannedAndNotTicked)
{
    sowBroccoli(1, kTwoDaysAgo);
    const auto page = openPage();
    QTest::mouseClick(find<QPushButton>(*page, "dayAfter"), Qt::LeftButton);
    EXPECT_TRUE(find<QLabel>(*page, "pageSubtitle")->text().contains("as planned"));
    QTest::mouseClick(shownRow(*page, "trayBR001"), Qt::LeftButton);
    EXPECT_TRUE(messages.isRefusal());
    QTest::mouseClick(find<QPushButton>(*page, "backToNow"), Qt::LeftButton);
    QTest::mouseClick(shownRow(*page, "trayBR001"), Qt::LeftButton);
    EXPECT_EQ(doneCount(), 1);
}

TEST_F(RoundTest, APastRoundIsFilledInAtItsOwnTime)
{
    const auto trays = sowBroccoli(1, kTwoDaysAgo);
    const auto page = openPage();
    QTest::mouseClick(find<QPushButton>(*page, "dayBefore"), Qt::LeftButton);
    QTest::mouseClick(shownRow(*page, "trayBR001"), Qt::LeftButton);
    const auto sheet = journal->trays().sheet(trays.front());
    ASSERT_EQ(sheet->waterings.size(), 1U);
    EXPECT_EQ(sheet->waterings.front().on, date(2026, 3, 11));
    EXPECT_EQ(sheet->waterings.front().minute, 7 * 60);
}

TEST_F(RoundTest, SavesTheSheetAsPdf)
{
    sowBroccoli(2, kTwoDaysAgo);
    const auto page = openPage();
    ask.fileAnswer = folder.path() + "/sheet.pdf";
    press(Qt::Key_P);
    ASSERT_TRUE(soon([&] { return page->findChild<QMenu*>("sheetMenu") != nullptr; }));
    auto* menu = page->findChild<QMenu*>("sheetMenu");
    menu->findChild<QAction*>("sheetToPdf")->trigger();
    menu->close();
    QFile file(ask.fileAnswer);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().startsWith("%PDF"));
    EXPECT_TRUE(messages.text().contains("sheet.pdf"));
}

TEST_F(RoundTest, FitsASmallWindowWithoutScrollingSideways)
{
    sowBroccoli(6, kTwoDaysAgo);
    sowBroccoli(1, kThreeDaysAgo);
    const auto page = openPage({816, 700});
    press(Qt::Key_T);
    ASSERT_TRUE(soon([&] { return find<QLineEdit>(*page, "note")->hasFocus(); }));
    settleDown();
    auto* scroll = find<QScrollArea>(*page, "roundScroll");
    EXPECT_LE(scroll->widget()->minimumSizeHint().width(), scroll->viewport()->width());
    EXPECT_LE(page->minimumSizeHint().width(), 816);
    const auto* side = find<QWidget>(*page, "mix");
    EXPECT_LE(side->mapTo(scroll->viewport(), QPoint(side->width(), 0)).x(),
              scroll->viewport()->width());
}

// A scroll bar that comes with a message takes a little of the width: the sides stay where they
// are.
TEST_F(RoundTest, WhatIsMixedStaysBesideOrBelowWhileTheWidthWaversALittle)
{
    sowBroccoli(2, kTwoDaysAgo);
    const auto page = openPage();
    const auto isBeside = [&](int width) {
        page->resize(width, 700);
        settleDown();
        const auto* list = page->findChild<RoundList*>();
        const auto* side = page->findChild<RoundSide*>();
        return side->mapTo(page.get(), QPoint()).x() >=
               list->mapTo(page.get(), QPoint()).x() + list->width();
    };
    EXPECT_TRUE(isBeside(scaled(56 + 760)));
    EXPECT_TRUE(isBeside(scaled(56 + 730)));
    EXPECT_FALSE(isBeside(scaled(56 + 700)));
    EXPECT_FALSE(isBeside(scaled(56 + 730)));
    EXPECT_TRUE(isBeside(scaled(56 + 760)));
}

} // namespace
} // namespace plumule::ui
