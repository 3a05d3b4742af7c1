#include "core/base/work_reason.h"
#include "core/journal/harvest/harvest_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/ui/window/window_fixture.h"
#include "ui/page/clock_watch.h"
#include "ui/tray/sow_dialog.h"
#include "ui/widget/date_field.h"
#include "ui/widget/theme.h"

#include <QDialog>
#include <QMenu>
#include <QProgressBar>
#include <QScrollArea>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTableView>

#include <thread>

namespace plumule::ui {
namespace {

TEST_F(WindowTest, PagesAreReachedByCtrlAndTheirNumber)
{
    openWindow();
    const QStringList names = window->pageNames();
    ASSERT_EQ(names,
              QStringList({"Round", "Weigh-in", "Racks", "Week", "Orders", "Forecast", "Trays",
                           "Trials", "Season", "Costs", "Stock", "History", "Set-up"}));
    EXPECT_EQ(shownPage(), "Round");
    for (const int number : {2, 3, 4, 5, 6, 7, 8, 9, 1}) {
        pressCtrl(Qt::Key_0 + number);
        const QString name = names[number - 1];
        EXPECT_EQ(shownPage(), name);
        EXPECT_TRUE(window->findChild<QPushButton*>("nav" + name)->isChecked());
    }
    click(window->findChild<QPushButton*>("navTrays"));
    EXPECT_EQ(shownPage(), "Trays");
    pressCtrl(Qt::Key_PageDown);
    EXPECT_EQ(shownPage(), "Trials");
    click(window->findChild<QPushButton*>("navSet-up"));
    pressCtrl(Qt::Key_PageDown);
    EXPECT_EQ(shownPage(), "Round") << "from the last one to the first";
    pressCtrl(Qt::Key_PageUp);
    EXPECT_EQ(shownPage(), "Set-up");
}

// What was never looked at costs nothing at the start; the pages with a badge follow by themselves.
TEST_F(WindowTest, APageIsBuiltWhenItIsShownFirst)
{
    growDueTrays(3);
    window = std::make_unique<MainWindow>(*journal, ask, preferences);
    const auto isBuilt = [this](const char* name) { return window->isBuilt(name); };
    EXPECT_TRUE(isBuilt("Round"));
    EXPECT_FALSE(isBuilt("Weigh-in"));
    show(*window);
    EXPECT_TRUE(soon([&] { return isBuilt("Weigh-in"); }));
    EXPECT_TRUE(soon([&] { return badgeOf("Weigh-in") == "3"; }));
    for (const char* later : {"Trays", "Trials", "Season", "History", "Set-up"}) {
        EXPECT_FALSE(isBuilt(later)) << later;
    }
    window->showPage("Trays");
    EXPECT_TRUE(isBuilt("Trays"));
    auto* table = window->findChild<QTableView*>("trays");
    ASSERT_NE(table, nullptr);
    EXPECT_TRUE(table->isVisible());
    EXPECT_EQ(table->model()->rowCount(), 3);
    EXPECT_FALSE(isBuilt("Season"));
    EXPECT_FALSE(isBuilt("nothing"));
}

TEST_F(WindowTest, FitsASmallScreenAlsoInLargeType)
{
    useSample();
    applyTheme(*qApp, Ground::Light, 1.5);
    openWindow({1024, 768});
    for (const QString& name : window->pageNames()) {
        EXPECT_LE(window->page(name)->minimumSizeHint().width(), 1024 - 240) << name.toStdString();
    }
    EXPECT_EQ(window->width(), 1024);
    window.reset();
    applyTheme(*qApp, Ground::Light);
}

TEST_F(WindowTest, BadgesCountWhatIsOpenOnPagesThatAreNotInFront)
{
    growDueTrays(3);
    sow(broccoli(2, kTwoDaysAgo));
    openWindow();
    const int toWater = static_cast<int>(journal->watering().roundNow()->trays.size());
    ASSERT_GE(toWater, 2);
    EXPECT_TRUE(soon([&] { return badgeOf("Weigh-in") == "3"; }))
        << badgeOf("Weigh-in").toStdString();
    const int open = badgeOf("Round").toInt();
    EXPECT_GE(open, toWater);
    goTo("Trays");
    ASSERT_TRUE(journal->watering().tick(trayOf("BR004"), clock.today(), Slot::Morning));
    EXPECT_TRUE(soon([&] { return badgeOf("Round").toInt() == open - 1; }));
    WeighingDraft weighing;
    weighing.bowls = {{grams(300), grams(0)}};
    weighing.at = clock.now();
    for (const char* code : {"BR001", "BR002", "BR003"}) {
        weighing.tray = trayOf(code);
        weighing.accepted = {Doubt::DecimalSlip, Doubt::OutsideExpected};
        ASSERT_TRUE(journal->harvests().record(weighing));
    }
    EXPECT_TRUE(soon([&] { return badgeOf("Weigh-in").isEmpty(); }));
}

TEST_F(WindowTest, CtrlZTakesTheLastActBackAndCtrlShiftZDoesItAgain)
{
    sow(broccoli(1, kTwoDaysAgo));
    openWindow();
    goTo("Trays");
    ASSERT_TRUE(journal->trays().discard(trayOf("BR001"), "mould", clock.now()));
    ASSERT_EQ(nameOfFocus(), "search"); // which keeps no undo of its own while it is empty
    pressCtrl(Qt::Key_Z);
    EXPECT_EQ(sheetOf("BR001").record.tray.state, TrayState::Growing);
    EXPECT_TRUE(window->messages().text().startsWith("Taken back"));
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(sheetOf("BR001").record.tray.state, TrayState::Discarded);
    click(window->messages().findChild<QPushButton*>("messageAction"));
    EXPECT_EQ(sheetOf("BR001").record.tray.state, TrayState::Growing);
}

TEST_F(WindowTest, CtrlZTakesTypedTextBackFirst)
{
    sow(broccoli(1, kTwoDaysAgo));
    openWindow();
    goTo("Trays");
    type("xyz");
    pressCtrl(Qt::Key_Z);
    EXPECT_EQ(fieldText("Trays", "search"), "");
    EXPECT_EQ(journal->trays().list({})->size(), 1U);
    pressCtrl(Qt::Key_Z);
    EXPECT_EQ(journal->trays().list({})->size(), 0U);
}

TEST_F(WindowTest, SaysThatThereIsNothingToTakeBack)
{
    openWindow();
    pressCtrl(Qt::Key_Z);
    EXPECT_TRUE(window->messages().isRefusal());
    EXPECT_FALSE(window->messages().text().isEmpty());
}

TEST_F(WindowTest, AScannedLabelOpensItsTrayAndLeavesNoLettersInTheField)
{
    growDueTrays(3);
    openWindow();
    goTo("Trays");
    type("mesh");
    scan("BR002");
    EXPECT_TRUE(sheetShows("BR002"));
    press(Qt::Key_Escape);
    EXPECT_EQ(fieldText("Trays", "search"), "mesh");
}

TEST_F(WindowTest, ACodeTypedByHandStaysInTheField)
{
    growDueTrays(3);
    openWindow();
    goTo("Trays");
    type("BR002");
    EXPECT_EQ(fieldText("Trays", "search"), "BR002");
    EXPECT_EQ(find<QTableView>(pageOf("Trays"), "trays")->model()->rowCount(), 1);
}

// Its letters are keys of the rack's page: B nothing, R "ready".
TEST_F(WindowTest, AScannedLabelIsNoCommandOnTheRacksPageAndItsTrayComesInHand)
{
    const Moment threeDaysAgo{date(2026, 3, 9), 7 * 60 + 30};
    sow(broccoli(3, threeDaysAgo));
    openWindow();
    ASSERT_EQ(journal->watering().roundNow()->decisions.size(), 3U);
    scan("BR002");
    EXPECT_EQ(shownPage(), "Round");
    EXPECT_EQ(nameOfFocus(), "trayBR002");
    settleDown();
    const StagePlan plan = sheetOf("BR002").plan;
    EXPECT_EQ(plan.spans[plan.current.value()].stage, Stage::UnderWeight);
    EXPECT_EQ(journal->watering().roundNow()->doneCount(), 0);
    scan("br001");
    EXPECT_EQ(nameOfFocus(), "trayBR001");
}

TEST_F(WindowTest, AScanIntoANoteOfTheRoundGoesToItsTray)
{
    sow(broccoli(3, kTwoDaysAgo));
    openWindow();
    press(Qt::Key_T);
    ASSERT_TRUE(soon([] { return nameOfFocus() == "note"; }));
    type("pale");
    scan("BR003");
    EXPECT_EQ(nameOfFocus(), "trayBR003");
    ASSERT_EQ(sheetOf("BR001").notes.size(), 1U);
    EXPECT_EQ(sheetOf("BR001").notes.front().text, "pale");
}

TEST_F(WindowTest, AScanIntoANoteOfASheetOpensTheOtherTrayAndTheNoteStaysWithItsOwn)
{
    sow(broccoli(2, kTwoDaysAgo));
    openWindow();
    goTo("Trays");
    enter("BR001");
    auto* note = find<QLineEdit>(*find<QWidget>(*window, "traySheet"), "note");
    note->setFocus();
    type("pale");
    scan("BR002");
    EXPECT_TRUE(sheetShows("BR002"));
    EXPECT_EQ(note->text(), "");
    ASSERT_EQ(sheetOf("BR001").notes.size(), 1U);
    EXPECT_EQ(sheetOf("BR001").notes.front().text, "pale");
    EXPECT_TRUE(sheetOf("BR002").notes.empty());
}

TEST_F(WindowTest, AScanWithTheScannersSignsIsReadOnEveryPage)
{
    growDueTrays(2);
    preferences.set(Preference::ScanBefore, "*");
    preferences.set(Preference::ScanAfter, "*");
    openWindow();
    for (const int number : {3, 4, 5, 6}) {
        pressCtrl(Qt::Key_0 + number);
        scan("*BR002*");
        EXPECT_EQ(shownPage(), "Trays") << number;
        EXPECT_TRUE(sheetShows("BR002")) << number;
        click(find<QPushButton>(*window, "backToList"));
    }
    goTo("Weigh-in");
    scan("*BR001*");
    EXPECT_EQ(fieldText("Weigh-in", "code"), "BR001");
}

TEST_F(WindowTest, AStrangersBarcodeIsSaidToBeUnknownAndLandsNowhere)
{
    growDueTrays(1);
    openWindow();
    for (const int number : {1, 2, 3, 4, 5, 6}) {
        pressCtrl(Qt::Key_0 + number);
        window->messages().clear();
        const QString page = shownPage();
        const auto* field = qobject_cast<QLineEdit*>(QApplication::focusWidget());
        const QString held = field == nullptr ? QString() : field->text();
        scan("4006381333931");
        EXPECT_TRUE(window->messages().isRefusal()) << number;
        EXPECT_TRUE(window->messages().text().contains("4006381333931")) << number;
        EXPECT_EQ(shownPage(), page);
        EXPECT_EQ(field == nullptr ? QString() : field->text(), held) << number;
    }
}

// What a scale with a keyboard plug sends is as fast as a scanner.
TEST_F(WindowTest, AWeightFromTheScaleIsNoCode)
{
    growDueTrays(1);
    openWindow();
    goTo("Weigh-in");
    scan("BR001");
    ASSERT_EQ(nameOfFocus(), "gross");
    scan("340.5");
    EXPECT_EQ(sheetOf("BR001").harvests.size(), 1U);
}

TEST_F(WindowTest, AScannedLabelIsTheTrayToWeighAtTheScale)
{
    growDueTrays(3);
    openWindow();
    goTo("Weigh-in");
    ASSERT_EQ(nameOfFocus(), "code");
    scan("br003"); // whatever the letter case
    EXPECT_EQ(shownPage(), "Weigh-in");
    EXPECT_EQ(fieldText("Weigh-in", "code"), "BR003");
    ASSERT_EQ(nameOfFocus(), "gross");
    type("12");
    scan("BR001"); // the weight was another tray's
    EXPECT_EQ(fieldText("Weigh-in", "code"), "BR001");
    EXPECT_EQ(fieldText("Weigh-in", "gross"), "");
    EXPECT_TRUE(sheetOf("BR003").harvests.empty());
}

TEST_F(WindowTest, AScannedLabelLeavesThePageUnderADialogAsItIs)
{
    growDueTrays(1);
    openWindow();
    goTo("Trays");
    click(find<QPushButton>(pageOf("Trays"), "sow"));
    auto* dialog = find<SowDialog>(*window, "sowDialog");
    ASSERT_NE(dialog, nullptr);
    dialog->activateWindow();
    ASSERT_TRUE(soon([&] { return QApplication::activeWindow() == dialog; }));
    auto* person = find<QLineEdit>(*dialog, "person");
    person->setFocus();
    ASSERT_EQ(nameOfFocus(), "person");
    type("Mo");
    ASSERT_EQ(person->text(), "Mo");
    scan("BR001");
    EXPECT_EQ(person->text(), "Mo");
    EXPECT_TRUE(window->messages().text().contains("BR001 was scanned"));
    scan("4006381333931");
    EXPECT_EQ(person->text(), "Mo");
    EXPECT_TRUE(window->messages().text().contains("4006381333931"));
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_FALSE(find<QWidget>(*window, "traySheet")->isVisible());
}

TEST_F(WindowTest, AChangeIsShownInFrontSoonAndElsewhereWhenItIsOpened)
{
    growDueTrays(2);
    openWindow();
    goTo("Weigh-in");
    goTo("Trays");
    const auto* list = find<QTableView>(pageOf("Trays"), "trays");
    ASSERT_EQ(list->model()->rowCount(), 2);
    sow(broccoli(1, clock.now()));
    EXPECT_TRUE(soon([&] { return list->model()->rowCount() == 3; }));
    ASSERT_TRUE(journal->trays().discard(trayOf("BR001"), "mould", clock.now()));
    goTo("Weigh-in");
    EXPECT_TRUE(find<QLabel>(pageOf("Weigh-in"), "pageSubtitle")->text().contains("1 of 1 tray "));
}

TEST_F(WindowTest, TheSheetLeadsToTheScaleWithItsTray)
{
    growDueTrays(2);
    openWindow();
    goTo("Trays");
    enter("BR002");
    ASSERT_TRUE(sheetShows("BR002"));
    click(find<QPushButton>(*window, "weigh"));
    EXPECT_EQ(shownPage(), "Weigh-in");
    EXPECT_EQ(fieldText("Weigh-in", "code"), "BR002");
    EXPECT_EQ(nameOfFocus(), "gross");
}

TEST_F(WindowTest, SaysWhichRoomItIsAndWhetherItMayBeWritten)
{
    openWindow();
    EXPECT_EQ(find<QLabel>(*window, "roomName")->text(), "Test room");
    EXPECT_FALSE(find<QLabel>(*window, "readOnly")->isVisible());
    window.reset();
    const std::filesystem::path path = journal->path();
    journal.reset();
    auto opened = Journal::open(path, clock, Access::ReadOnly);
    ASSERT_TRUE(opened);
    journal = std::move(*opened);
    openWindow();
    EXPECT_TRUE(find<QLabel>(*window, "readOnly")->isVisible());
    goTo("Trays");
    click(find<QPushButton>(pageOf("Trays"), "sow"));
    auto* dialog = find<SowDialog>(*window, "sowDialog");
    click(find<QPushButton>(*dialog, "sowNow"));
    EXPECT_FALSE(find<QLabel>(*dialog, "refusal")->text().isEmpty());
    EXPECT_EQ(journal->trays().list({})->size(), 0U);
}

TEST_F(WindowTest, AtMidnightThePagesFollowTheDate)
{
    sow(broccoli(1, kTwelveDaysAgo));
    growDueTrays(1);
    openWindow();
    auto* clockWatch = window->findChild<ClockWatch*>();
    ASSERT_NE(clockWatch, nullptr);
    goTo("Season");
    const auto* until = find<DateField>(pageOf("Season"), "to");
    EXPECT_EQ(until->date(), date(2026, 3, 12));
    goTo("Weigh-in");
    auto* subtitle = find<QLabel>(pageOf("Weigh-in"), "pageSubtitle");
    ASSERT_TRUE(subtitle->text().contains("Thursday 12 March"));
    clock.set({clock.today() + 1, 0});
    clockWatch->look();
    EXPECT_TRUE(soon([&] { return subtitle->text().contains("Friday 13 March"); }));
    goTo("Season");
    EXPECT_EQ(until->date(), date(2026, 3, 13));
    goTo("Round");
    EXPECT_TRUE(find<QLabel>(pageOf("Round"), "pageSubtitle")->text().contains("Friday 13 March"));
}

TEST_F(WindowTest, ASheetGivesItsTrayWaterAsNeeded)
{
    sow(broccoli(2, kTwoDaysAgo));
    openWindow();
    goTo("Trays");
    enter("BR002");
    ASSERT_TRUE(sheetShows("BR002"));
    click(find<QPushButton>(*window, "giveWater"));
    auto* dialog = find<QDialog>(*window, "betweenDialog");
    ASSERT_NE(dialog, nullptr);
    ASSERT_TRUE(soon([&] { return QApplication::activeWindow() == dialog; }));
    ASSERT_EQ(nameOfFocus(), "betweenAmount");
    press(Qt::Key_A, Qt::ControlModifier);
    type("80");
    press(Qt::Key_Return);
    ASSERT_EQ(sheetOf("BR002").waterings.size(), 1U);
    EXPECT_TRUE(sheetOf("BR002").waterings.front().isBetween);
    EXPECT_EQ(sheetOf("BR002").waterings.front().amount, millilitres(80));
    EXPECT_TRUE(sheetOf("BR001").waterings.empty());
    EXPECT_TRUE(window->messages().text().contains("BR002"));
}

TEST_F(WindowTest, ShowsLongWorkAndStopsIt)
{
    openWindow();
    auto* bar = window->findChild<QProgressBar*>("workProgress");
    ASSERT_NE(bar, nullptr);
    EXPECT_FALSE(bar->isVisible());
    bool wasStopped = false;
    window->tasks().run(
        "Counting leaves",
        [](const Progress& progress) -> Result<int> {
            while (!progress.isStopped()) {
                progress.report(0.5);
                std::this_thread::yield();
            }
            return fail(ErrorKind::Cancelled, WorkReason::Stopped);
        },
        window.get(), [&](const Result<int>& answer) { wasStopped = !answer; });
    EXPECT_TRUE(soon([&] { return bar->isVisible() && bar->value() == 500; }));
    EXPECT_TRUE(textsIn(*window).contains("Counting leaves"));
    click(find<QPushButton>(*window, "workStop"));
    EXPECT_TRUE(soon([&] { return wasStopped && !bar->isVisible(); }));
}

TEST_F(WindowTest, TellsOfWorkOnlyWhereItsStopCanBeReached)
{
    openWindow();
    auto* line = find<QProgressBar>(*window, "workProgress")->parentWidget();
    QDialog dialog(window.get());
    dialog.open();
    window->tasks().run(
        "Slow",
        [](const Progress& progress) -> Result<bool> {
            while (!progress.isStopped()) {
                std::this_thread::sleep_for(std::chrono::milliseconds(1));
            }
            return true;
        },
        window.get(), [](const Result<bool>&) {});
    QTest::qWait(800);
    EXPECT_TRUE(line->isHidden()) << "a dialog stands before it";
    dialog.reject();
    EXPECT_TRUE(soon([&] { return line->isVisible(); }));
    click(find<QPushButton>(*window, "workStop"));
    EXPECT_TRUE(soon([&] { return line->isHidden(); }));
}

TEST_F(WindowTest, RemembersItsSizeAndIsNeverSmallerThanItCanBeUsed)
{
    openWindow({1100, 700});
    window->resize(1010, 640);
    window->close();
    ASSERT_TRUE(soon([&] { return !window->isVisible(); }));
    window.reset();
    MainWindow again(*journal, ask, preferences);
    EXPECT_EQ(again.size(), QSize(1010, 640));
    EXPECT_EQ(again.minimumSize(), QSize(900, 600));
}

TEST_F(WindowTest, AsksBeforeItClosesOverSomethingThatIsNotSaved)
{
    openWindow();
    window->showPage("Set-up");
    settleDown();
    write(pageOf("Set-up"), "roomName", "Cellar");
    ask.agrees = false;
    window->close();
    settleDown();
    EXPECT_TRUE(window->isVisible());
    ASSERT_EQ(ask.questions.size(), 1);
    EXPECT_TRUE(ask.questions.front().contains("Set-up"));
    ask.agrees = true;
    window->close();
    EXPECT_TRUE(soon([&] { return !window->isVisible(); }));
}

TEST_F(WindowTest, ClosesAtOnceWhereAllIsSaved)
{
    openWindow();
    window->showPage("Set-up");
    settleDown();
    window->close();
    EXPECT_TRUE(soon([&] { return !window->isVisible(); }));
    EXPECT_TRUE(ask.questions.isEmpty());
}

TEST_F(WindowTest, CtrlFSearchesTheTraysFromEveryPageButTheHistory)
{
    growDueTrays(2);
    openWindow();
    for (const QString& name : window->pageNames()) {
        window->showPage(name);
        settleDown();
        if (QApplication::focusWidget() == nullptr) {
            window->setFocus();
        }
        pressCtrl(Qt::Key_F);
        const bool hasItsOwn = name == "History";
        EXPECT_EQ(shownPage(), hasItsOwn ? "History" : "Trays") << name.toStdString();
        EXPECT_EQ(nameOfFocus(), hasItsOwn ? "historySearch" : "search") << name.toStdString();
    }
    type("BR002");
    pressCtrl(Qt::Key_F);
    type("BR001");
    EXPECT_EQ(fieldText("Trays", "search"), "BR001") << "typed over what was sought before";
}

TEST_F(WindowTest, APageBeginsAtItsTopHoweverFarTheLastOneWasScrolled)
{
    openWindow();
    window->resize(900, 600);
    window->showPage("Set-up");
    settleDown();
    QScrollBar* bar = nullptr;
    for (QWidget* within = window->page("Set-up"); within != nullptr && bar == nullptr;
         within = within->parentWidget()) {
        if (auto* area = qobject_cast<QScrollArea*>(within)) {
            bar = area->verticalScrollBar();
        }
    }
    ASSERT_NE(bar, nullptr);
    bar->setRange(0, 300);
    bar->setValue(200);
    window->showPage("Trays");
    EXPECT_EQ(bar->value(), 0);
}

TEST_F(WindowTest, F1ShowsTheKeysAndTheWords)
{
    openWindow();
    press(Qt::Key_F1);
    auto* help = find<QDialog>(*window, "helpDialog");
    ASSERT_NE(help, nullptr);
    EXPECT_TRUE(help->isVisible());
    const QString all = textsIn(*help).join(' ');
    for (const char* word : {"Ctrl+F", "F5", "F4", "residue", "protocol", "margin"}) {
        EXPECT_TRUE(all.contains(word)) << word;
    }
    QTest::keyClick(help, Qt::Key_Escape);
    EXPECT_FALSE(help->isVisible());
}

TEST_F(WindowTest, F5ReadsTheJournalAgain)
{
    openWindow();
    press(Qt::Key_F5);
    EXPECT_EQ(window->messages().text(), "Read again from the journal.");
}

TEST_F(WindowTest, CtrlPPrintsTheSheetOfThePageOrSaysThatThereIsNone)
{
    growDueTrays(2);
    openWindow();
    pressCtrl(Qt::Key_P);
    auto* sheet = find<QMenu>(pageOf("Round"), "sheetMenu");
    ASSERT_TRUE(sheet->isVisible()) << "the round has a sheet";
    sheet->close();
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    window->showPage("Trays");
    settleDown();
    pressCtrl(Qt::Key_P);
    EXPECT_TRUE(find<QDialog>(*window, "labelDialog")->isVisible());
    QTest::keyClick(find<QDialog>(*window, "labelDialog"), Qt::Key_Escape);
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    window->showPage("Set-up");
    settleDown();
    find<QLineEdit>(pageOf("Set-up"), "roomName")->setFocus();
    pressCtrl(Qt::Key_P);
    EXPECT_TRUE(window->messages().text().contains("no sheet to print"));
}

TEST_F(WindowTest, AnEmptyRoomIsToldHowToBegin)
{
    openWindow();
    auto* bar = find<QWidget>(*window, "beginBar");
    EXPECT_TRUE(bar->isVisible());
    window->showPage("Trays");
    EXPECT_FALSE(bar->isVisible());
    window->showPage("Season");
    EXPECT_TRUE(bar->isVisible());
    EXPECT_TRUE(find<QLabel>(*window, "beginWords")->text().contains("nothing to compare"));
    click(find<QPushButton>(*window, "beginImport"));
    EXPECT_EQ(ask.questions, QStringList("Import a table"));
    const QSignalSpy asked(window.get(), &MainWindow::journalAsked);
    ask.fileAnswer = folder.path() + "/sample.plumule";
    click(find<QPushButton>(*window, "beginSample"));
    ASSERT_EQ(asked.count(), 1) << window->messages().text().toStdString();
    EXPECT_TRUE(QFile::exists(ask.fileAnswer));
    window->showPage("Round");
    click(find<QPushButton>(*window, "beginSow"));
    EXPECT_TRUE(find<QDialog>(*window, "sowDialog")->isVisible());
}

TEST_F(WindowTest, ARoomWithTraysIsNot)
{
    sow(broccoli(1, kTwoDaysAgo));
    openWindow();
    EXPECT_FALSE(find<QWidget>(*window, "beginBar")->isVisible());
    window->showPage("Season");
    EXPECT_TRUE(find<QWidget>(*window, "beginBar")->isVisible()) << "none was harvested";
}

TEST_F(WindowTest, LargeTypeInTheSmallestWindowScrollsThePageRatherThanSqueezeIt)
{
    applyTheme(*qApp, Ground::Light, 2.0);
    growDueTrays(2);
    openWindow();
    window->resize(900, 600);
    settleDown();
    EXPECT_GE(pageOf("Round").height(), scaled(400));
    EXPECT_LE(window->height(), 600);
    window.reset();
    applyTheme(*qApp, Ground::Light);
}

} // namespace
} // namespace plumule::ui
