#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "tests/ui/support/dialog_check.h"
#include "tests/ui/window/window_fixture.h"
#include "ui/setup/setup_page.h"
#include "ui/tray/trays_page.h"
#include "ui/widget/widgets.h"
#include "ui/window/begin_bar.h"

#include <QDialog>
#include <QSignalSpy>
#include <QToolTip>

namespace plumule::ui {
namespace {

// What a person loses or keeps when pages and the window are left by keys.
class WindowKeysTest : public WindowTest
{
protected:
    void closeWindow()
    {
        window->close();
        settleDown();
    }
    void write(const char* pageName, const char* field, const QString& text)
    {
        auto* found = find<QLineEdit>(pageOf(pageName), field);
        found->setFocus();
        found->selectAll();
        QTest::keyClicks(found, text);
    }
    void openSheetOf(const char* code)
    {
        goTo("Trays");
        enter(code);
        ASSERT_TRUE(sheetShows(code));
    }
    // Whether closing the window asks for what is typed on that page.
    bool asksFor(const QString& page)
    {
        ask.questions.clear();
        closeWindow();
        EXPECT_TRUE(window->isVisible()) << page.toStdString();
        EXPECT_EQ(ask.questions.size(), 1) << page.toStdString();
        return ask.questions.join(' ').contains(page);
    }
    void takeUpReadOnly()
    {
        const std::filesystem::path path = journal->path();
        journal.reset();
        auto opened = Journal::open(path, clock, Access::ReadOnly);
        ASSERT_TRUE(opened);
        journal = std::move(*opened);
    }
};

TEST_F(WindowKeysTest, ClosingAsksForWhatIsTypedOnEveryPage)
{
    growDueTrays(2);
    sow(broccoli(1, kTwoDaysAgo));
    ask.agrees = false;
    openWindow();
    press(Qt::Key_Home);
    press(Qt::Key_End);
    press(Qt::Key_T);
    ASSERT_TRUE(soon([] { return nameOfFocus() == "note"; }));
    type("pale");
    EXPECT_TRUE(asksFor("Round"));
    press(Qt::Key_Return);
    goTo("Weigh-in");
    enter("BR001");
    type("325");
    EXPECT_TRUE(asksFor("Weigh-in"));
    press(Qt::Key_Escape);
    openSheetOf("BR002");
    write("Trays", "note", "thin");
    EXPECT_TRUE(asksFor("Trays"));
    press(Qt::Key_Return);
    goTo("Trials");
    click(find<QPushButton>(pageOf("Trials"), "newTrial"));
    write("Trials", "planQuestion", "Which?");
    EXPECT_TRUE(asksFor("Trials"));
    ask.whenUnsaved = ScriptedAsk::Unsaved::Leave;
    press(Qt::Key_Escape);
    goTo("Set-up");
    write("Set-up", "roomName", "Cellar");
    EXPECT_TRUE(asksFor("Set-up"));
    ask.agrees = true;
    closeWindow();
    EXPECT_TRUE(soon([this] { return !window->isVisible(); }));
    EXPECT_EQ(journal->room().layout()->room.name, "Test room");
}

TEST_F(WindowKeysTest, WhatIsTypedStaysWhileOtherPagesAreLookedAt)
{
    growDueTrays(1);
    sow(broccoli(1, kTwoDaysAgo));
    openWindow();
    openSheetOf("BR001");
    write("Trays", "note", "half a no");
    goTo("Season");
    goTo("Weigh-in");
    enter("BR001");
    type("32");
    goTo("Set-up");
    write("Set-up", "roomName", "Cel");
    goTo("Round");
    goTo("Weigh-in");
    EXPECT_EQ(fieldText("Weigh-in", "gross"), "32");
    goTo("Trays");
    EXPECT_EQ(fieldText("Trays", "note"), "half a no");
    goTo("Set-up");
    EXPECT_EQ(fieldText("Set-up", "roomName"), "Cel");
    ask.agrees = true;
    closeWindow();
}

TEST_F(WindowKeysTest, EnterPressesTheButtonThatHasTheFocusOnEveryPage)
{
    sow(broccoli(1, kTwoDaysAgo));
    openWindow();
    goTo("Trays");
    auto* sowing = find<QPushButton>(pageOf("Trays"), "sow");
    sowing->setFocus();
    press(Qt::Key_Return);
    ASSERT_TRUE(soon([] {
        const QWidget* asked = QApplication::activeModalWidget();
        return asked != nullptr && asked->isActiveWindow();
    }));
    QTest::keyClick(QApplication::activeModalWidget(), Qt::Key_Escape);
    ASSERT_TRUE(soon([] { return QApplication::activeModalWidget() == nullptr; }));
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    goTo("History");
    press(Qt::Key_Home);
    press(Qt::Key_Return);
    ASSERT_EQ(nameOfFocus(), "takeBackAct");
    press(Qt::Key_Return);
    EXPECT_TRUE(journal->trays().list(TrayFilter())->empty()) << "the second Enter takes it back";
    auto* round = find<QPushButton>(*window, "navRound");
    round->setFocus();
    press(Qt::Key_Enter);
    EXPECT_EQ(shownPage(), "Round");
}

// The size of type and the palette are this computer's: they are stored only once nothing is lost.
TEST_F(WindowKeysTest, ALookIsStoredOnlyAfterTheQuestionAboutWhatIsTyped)
{
    openWindow();
    const QSignalSpy changed(window.get(), &MainWindow::lookChanged);
    goTo("Set-up");
    write("Set-up", "roomName", "Cellar");
    auto* setup = qobject_cast<SetupPage*>(window->page("Set-up"));
    ask.agrees = false;
    Q_EMIT setup->lookAsked("dark", 1.5);
    EXPECT_EQ(ask.questions.size(), 1);
    EXPECT_EQ(changed.count(), 0);
    EXPECT_EQ(preferences.get(Preference::Look).toString(), "light");
    EXPECT_EQ(preferences.get(Preference::FontScale).toDouble(), 1);
    ask.agrees = true;
    Q_EMIT setup->lookAsked("dark", 1.5);
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(preferences.get(Preference::Look).toString(), "dark");
    EXPECT_EQ(preferences.get(Preference::FontScale).toDouble(), 1.5);
}

TEST_F(WindowKeysTest, UndoAndRedoGoThroughSeveralActsOfSeveralPages)
{
    growDueTrays(2);
    const int before = actsIn(*journal);
    openWindow();
    goTo("Weigh-in");
    enter("BR001");
    enter("325");
    ASSERT_EQ(sheetOf("BR001").harvests.size(), 1U);
    openSheetOf("BR002");
    write("Trays", "note", "pale");
    press(Qt::Key_Return);
    ASSERT_EQ(sheetOf("BR002").notes.size(), 1U);
    pressCtrl(Qt::Key_Z);
    EXPECT_TRUE(sheetOf("BR002").notes.empty());
    pressCtrl(Qt::Key_Z);
    EXPECT_TRUE(sheetOf("BR001").harvests.empty());
    EXPECT_EQ(actsIn(*journal), before);
    for (int i = 0; i < 2; ++i) {
        press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    }
    EXPECT_EQ(sheetOf("BR001").harvests.size(), 1U);
    EXPECT_EQ(sheetOf("BR002").notes.size(), 1U);
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(window->messages().isRefusal()) << "nothing more to do again";
}

TEST_F(WindowKeysTest, TheNavigationIsWalkedByTabAndSpace)
{
    openWindow();
    auto* season = find<QPushButton>(*window, "navSeason");
    season->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(shownPage(), "Season");
    EXPECT_TRUE(season->isChecked());
    EXPECT_FALSE(find<QPushButton>(*window, "navRound")->isChecked());
}

TEST_F(WindowKeysTest, AReadOnlyJournalRefusesEveryActInWords)
{
    growDueTrays(1);
    sow(broccoli(1, kTwoDaysAgo));
    takeUpReadOnly();
    openWindow();
    const auto isRefused = [this](const char* what) {
        const bool was = window->messages().isRefusal() && !window->messages().text().isEmpty();
        EXPECT_TRUE(was) << what;
        window->messages().clear();
    };
    press(Qt::Key_End);
    press(Qt::Key_Space);
    isRefused("a tick");
    goTo("Weigh-in");
    enter("BR001");
    enter("325");
    isRefused("a weight");
    press(Qt::Key_Escape);
    openSheetOf("BR002");
    write("Trays", "note", "pale");
    press(Qt::Key_Return);
    isRefused("a note");
    EXPECT_EQ(fieldText("Trays", "note"), "pale") << "what was typed is still there";
    click(find<QPushButton>(*window, "moveOn"));
    isRefused("a stage");
    goTo("Set-up");
    write("Set-up", "roomName", "Cellar");
    press(Qt::Key_Return);
    isRefused("the room");
    pressCtrl(Qt::Key_Z);
    EXPECT_TRUE(sheetOf("BR001").harvests.empty());
    ask.agrees = true;
    closeWindow();
}

TEST_F(WindowKeysTest, ARoomWithAHostileNameIsShownAsItIsAndLeavesTheWindowItsSize)
{
    for (const HostileText& each : hostileTexts()) {
        Room room = journal->room().layout()->room;
        room.name = each.text.toStdString();
        if (!journal->room().changeRoom(room)) {
            continue; // refused, and its form says why
        }
        openWindow({900, 600});
        EXPECT_EQ(find<QLabel>(*window, "roomName")->text(), each.text) << each.what;
        EXPECT_EQ(textsWithMarks(*window).join('\n').toStdString(), "") << each.what;
        EXPECT_LE(window->width(), 900) << each.what;
        window.reset();
    }
}

TEST_F(WindowKeysTest, VarietiesMediaAndTrialsWithHostileNamesAreShownAsTheyAre)
{
    for (const HostileText& each : hostileTexts()) {
        Medium medium = inertMedium();
        medium.name = each.text.toStdString();
        ASSERT_TRUE(journal->media().save(medium)) << each.what;
        auto protocol = journal->varieties().protocol(journal->varieties().all()->front().id);
        protocol->variety.name = each.text.toStdString();
        ASSERT_TRUE(journal->varieties().save(*protocol)) << each.what;
        SowingDraft draft = broccoli(1, kTwoDaysAgo);
        draft.variety = protocol->variety.id;
        draft.medium = medium.id;
        ASSERT_EQ(sow(draft).size(), 1U);
        openWindow({1024, 768});
        for (const QString& page : window->pageNames()) {
            window->showPage(page);
            EXPECT_TRUE(QTest::qWaitFor([&] { return !window->tasks().isBusy(); }, 20'000));
            settleDown();
            EXPECT_EQ(textsWithMarks(*window).join('\n').left(300).toStdString(), "")
                << each.what << " on " << page.toStdString();
        }
        window.reset();
    }
}

TEST_F(WindowKeysTest, APlaceKeptForAScreenThatIsGoneIsBroughtBackIntoSight)
{
    openWindow({1000, 700});
    window->move(5000, 4000);
    closeWindow();
    window.reset();
    openWindow({1000, 700});
    const QRect screen = window->screen()->availableGeometry();
    EXPECT_TRUE(screen.intersects(window->geometry()))
        << window->geometry().x() << ',' << window->geometry().y();
}

TEST_F(WindowKeysTest, TheBeginBarLeadsToTheSameDialogsAsTheirPages)
{
    BeginBar bar;
    QSignalSpy sows(&bar, &BeginBar::sowAsked);
    QSignalSpy imports(&bar, &BeginBar::importAsked);
    QSignalSpy samples(&bar, &BeginBar::sampleAsked);
    bar.say("Nothing grows here yet.");
    show(bar, {700, 140});
    click(find<QPushButton>(bar, "beginSow"));
    click(find<QPushButton>(bar, "beginImport"));
    click(find<QPushButton>(bar, "beginSample"));
    EXPECT_EQ(sows.count(), 1);
    EXPECT_EQ(imports.count(), 1);
    EXPECT_EQ(samples.count(), 1);
    bar.say({});
    EXPECT_FALSE(bar.isVisible());
}

} // namespace
} // namespace plumule::ui
