#include "core/journal/tray/tray_entries.h"
#include "tests/ui/support/look_check.h"
#include "tests/ui/watering/round_part_fixture.h"
#include "ui/watering/tray_panel.h"
#include "ui/widget/widgets.h"

#include <QSignalSpy>

namespace plumule::ui {
namespace {

class TrayPanelTest : public RoundPartTest
{
protected:
    // A tray in light, which is watered from below with an amount.
    TrayId growOne()
    {
        const auto trays = sowBroccoli(1, kInLight);
        bringIntoLight(trays, kInLight);
        return trays.front();
    }
};

TEST_F(TrayPanelTest, EscapeLeavesAnEmptyPanelAtOnce)
{
    const TrayId tray = growOne();
    open();
    openPanelBy(Qt::Key_T, "note");
    press(Qt::Key_Escape);
    EXPECT_FALSE(panel().isVisible());
    EXPECT_TRUE(ask.questions.isEmpty());
    EXPECT_EQ(rowInHand(), shownRow(*page, "trayBR001")) << "the row has the focus again";
    EXPECT_TRUE(sheetOf(tray).notes.empty());
}

TEST_F(TrayPanelTest, EscapeAsksBeforeWhatWasTypedIsLost)
{
    const TrayId tray = growOne();
    open();
    openPanelBy(Qt::Key_T, "note");
    QTest::keyClicks(QApplication::focusWidget(), "yellow edge");
    ask.agrees = false;
    press(Qt::Key_Escape);
    ASSERT_EQ(ask.questions.size(), 1);
    EXPECT_TRUE(ask.questions.front().contains("BR001"));
    EXPECT_TRUE(panel().isVisible());
    EXPECT_EQ(find<QLineEdit>(*page, "note")->text(), "yellow edge");
    ask.agrees = true;
    pressButton("closePanel");
    EXPECT_EQ(ask.questions.size(), 2) << "its button asks too";
    EXPECT_FALSE(panel().isVisible());
    EXPECT_TRUE(sheetOf(tray).notes.empty());
}

TEST_F(TrayPanelTest, EachMeasureAloneIsReasonEnoughToAsk)
{
    growOne();
    open();
    ask.agrees = true;
    for (const char* field : {"note", "height", "given", "ph", "ec"}) {
        ask.questions.clear();
        openPanelBy(Qt::Key_T, "note");
        auto* edit = find<QLineEdit>(*page, field);
        edit->setFocus();
        QTest::keyClicks(edit, "6");
        EXPECT_TRUE(page->hasUnsaved()) << field;
        QTest::keyClick(edit, Qt::Key_Escape);
        EXPECT_EQ(ask.questions.size(), 1) << field;
        EXPECT_FALSE(page->hasUnsaved()) << field;
    }
}

TEST_F(TrayPanelTest, AnotherTraysPanelKeepsWhatWasTypedAboutTheFirst)
{
    const auto trays = sowBroccoli(2, kUnderWeight);
    open();
    openPanelBy(Qt::Key_T, "note");
    QTest::keyClicks(QApplication::focusWidget(), "first");
    click(page->findChild<QPushButton*>("moreBR002"));
    EXPECT_TRUE(soon([&] { return !sheetOf(trays[0]).notes.empty(); }));
    EXPECT_EQ(sheetOf(trays[0]).notes.front().text, "first");
    EXPECT_TRUE(panel().isVisible());
    EXPECT_EQ(find<QLineEdit>(*page, "note")->text(), "");
    QTest::keyClicks(find<QLineEdit>(*page, "note"), "second");
    pressButton("savePanel");
    ASSERT_EQ(sheetOf(trays[1]).notes.size(), 1U);
    EXPECT_EQ(sheetOf(trays[1]).notes.front().text, "second");
    EXPECT_EQ(sheetOf(trays[0]).notes.size(), 1U);
}

TEST_F(TrayPanelTest, ALetterInAFieldIsTextAndTicksNothing)
{
    sowBroccoli(4, kUnderWeight);
    open();
    openPanelBy(Qt::Key_T, "note");
    QTest::keyClicks(QApplication::focusWidget(), "srn udalfhwmp");
    EXPECT_EQ(find<QLineEdit>(*page, "note")->text(), "srn udalfhwmp");
    settleDown();
    EXPECT_EQ(doneCount(), 0);
    EXPECT_EQ(find<QLabel>(*page, "pageTitle")->text(), "Morning round");
}

TEST_F(TrayPanelTest, AHeightIsReadFromTheRimWhereThatIsChosen)
{
    const TrayId tray = growOne();
    open();
    openPanelBy(Qt::Key_H, "height");
    click(find<Segmented>(*page, "readFrom")->segment(1));
    find<QLineEdit>(*page, "height")->setFocus();
    QTest::keyClicks(find<QLineEdit>(*page, "height"), "31.5");
    press(Qt::Key_Return);
    ASSERT_EQ(sheetOf(tray).heights.size(), 1U) << messages.text().toStdString();
    EXPECT_EQ(sheetOf(tray).heights.front().from, ReadFrom::Rim);
    EXPECT_EQ(sheetOf(tray).heights.front().reading, millimetres(31.5));
}

TEST_F(TrayPanelTest, WhatIsNoNumberOrBeyondItsRangeIsMarkedAndSaid)
{
    const TrayId tray = growOne();
    open();
    openPanelBy(Qt::Key_W, "given");
    const std::pair<const char*, const char*> wrong[] = {
        {"given", "1,234"}, {"given", "-5"}, {"ph", "15"}, {"ph", "acid"}, {"ec", "30000"}};
    const std::size_t before = acts();
    for (const auto& [field, typed] : wrong) {
        messages.clear();
        write(*page, field, typed);
        press(Qt::Key_Return);
        EXPECT_TRUE(messages.isRefusal()) << field << ' ' << typed;
        EXPECT_TRUE(panel().isVisible()) << field << ' ' << typed;
        EXPECT_EQ(nameOfFocus(), field) << typed;
        EXPECT_TRUE(find<QLineEdit>(*page, field)->property("wrong").toBool()) << typed;
        write(*page, field, "");
        EXPECT_FALSE(find<QLineEdit>(*page, field)->property("wrong").toBool());
    }
    EXPECT_EQ(acts(), before);
    EXPECT_TRUE(sheetOf(tray).waterings.empty());
}

TEST_F(TrayPanelTest, TheAmountGivenStandsThereToBeCorrected)
{
    const TrayId tray = growOne();
    open();
    press(Qt::Key_Space);
    const auto asked = sheetOf(tray).waterings.front().amount;
    ASSERT_TRUE(asked);
    press(Qt::Key_Up);
    openPanelBy(Qt::Key_W, "given");
    EXPECT_NEAR(find<QLineEdit>(*page, "given")->text().toDouble(), inMillilitres(*asked), 0.06);
    EXPECT_FALSE(page->hasUnsaved()) << "what stood there is not typed";
    write(*page, "given", "140");
    press(Qt::Key_Return);
    ASSERT_EQ(sheetOf(tray).waterings.size(), 1U) << "corrected, and not given twice";
    EXPECT_EQ(sheetOf(tray).waterings.front().amount, millilitres(140));
}

TEST_F(TrayPanelTest, SavingWithNothingTypedClosesItAndIsNoAct)
{
    growOne();
    open();
    const std::size_t before = acts();
    openPanelBy(Qt::Key_T, "note");
    press(Qt::Key_Return);
    EXPECT_FALSE(panel().isVisible());
    EXPECT_EQ(acts(), before);
    EXPECT_FALSE(messages.isRefusal());
}

// What is hidden can't be saved or left, and every way on would wait for it.
TEST_F(TrayPanelTest, ATrayThatLeavesTheRoundTakesItsPanelAlongAndKeepsTheNote)
{
    const auto trays = sowBroccoli(2, kUnderWeight);
    open();
    openPanelBy(Qt::Key_T, "note");
    QTest::keyClicks(QApplication::focusWidget(), "mould at the rim");
    ASSERT_TRUE(journal->trays().discard(trays[0], "mould", clock.now()));
    EXPECT_TRUE(soon([&] { return shownRow(*page, "trayBR001") == nullptr; }));
    EXPECT_FALSE(panel().isVisible());
    ASSERT_EQ(sheetOf(trays[0]).notes.size(), 1U);
    EXPECT_EQ(sheetOf(trays[0]).notes.front().text, "mould at the rim");
    pressButton("dayBefore");
    EXPECT_TRUE(words("pageSubtitle").startsWith("Yesterday")) << "the way on is free";
}

TEST_F(TrayPanelTest, AnotherRoundKeepsWhatWasTypedInTheOneBefore)
{
    const auto trays = sowBroccoli(1, kUnderWeight);
    open();
    openPanelBy(Qt::Key_T, "note");
    QTest::keyClicks(QApplication::focusWidget(), "dry corner");
    pressButton("dayBefore");
    EXPECT_TRUE(words("pageSubtitle").startsWith("Yesterday"));
    EXPECT_FALSE(panel().isVisible());
    ASSERT_EQ(sheetOf(trays[0]).notes.size(), 1U);
    EXPECT_EQ(sheetOf(trays[0]).notes.front().on, clock.today());
}

TEST_F(TrayPanelTest, ANumberThatIsNoneKeepsTheGrowerOnItsRound)
{
    sowBroccoli(1, kUnderWeight);
    open();
    openPanelBy(Qt::Key_H, "height");
    QTest::keyClicks(QApplication::focusWidget(), "tall");
    pressButton("dayBefore");
    EXPECT_FALSE(words("pageSubtitle").startsWith("Yesterday"));
    EXPECT_TRUE(panel().isVisible());
    EXPECT_TRUE(messages.isRefusal());
}

TEST_F(TrayPanelTest, ItsLinksLeadToTheSheetAndToAPhotograph)
{
    const TrayId tray = growOne();
    open();
    QSignalSpy sheets(page.get(), &Page::trayAsked);
    openPanelBy(Qt::Key_T, "note");
    pressButton("openSheet");
    ASSERT_EQ(sheets.count(), 1);
    EXPECT_EQ(qvariant_cast<TrayId>(sheets.front().front()), tray);
    const QString file = folder.filePath("seen.png");
    QImage picture(20, 20, QImage::Format_RGB32);
    picture.fill(Qt::darkGreen);
    ASSERT_TRUE(picture.save(file));
    ask.fileAnswer = file;
    pressButton("attachPhoto");
    EXPECT_EQ(sheetOf(tray).photos.size(), 1U) << messages.text().toStdString();
    EXPECT_TRUE(panel().isVisible()) << "what is being written stays";
}

TEST_F(TrayPanelTest, ANoteWithMarksIsKeptAsItIsTyped)
{
    const TrayId tray = growOne();
    open();
    for (const QString& text : {QString("<b>bold</b> & %1 %n"), QString(10'000, 'm'),
                                QString("edge ") + QChar(0x202E) + "txet"}) {
        openPanelBy(Qt::Key_T, "note");
        find<QLineEdit>(*page, "note")->setText(text);
        press(Qt::Key_Return);
        ASSERT_FALSE(panel().isVisible()) << messages.text().toStdString();
        EXPECT_EQ(QString::fromStdString(sheetOf(tray).notes.back().text), text);
    }
    EXPECT_EQ(textsWithMarks(*page).join('\n').toStdString(), "");
}

TEST_F(TrayPanelTest, AReadOnlyJournalSaysSoAndKeepsWhatWasTyped)
{
    growOne();
    const std::filesystem::path path = journal->path();
    journal.reset();
    auto opened = Journal::open(path, clock, Access::ReadOnly);
    ASSERT_TRUE(opened);
    journal = std::move(*opened);
    open();
    openPanelBy(Qt::Key_T, "note");
    QTest::keyClicks(QApplication::focusWidget(), "curled");
    press(Qt::Key_Return);
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(panel().isVisible());
    EXPECT_EQ(find<QLineEdit>(*page, "note")->text(), "curled");
}

} // namespace
} // namespace plumule::ui
