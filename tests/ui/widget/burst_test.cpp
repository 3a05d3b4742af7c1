#include "tests/ui/support/growing.h"
#include "ui/widget/burst.h"

#include <QComboBox>
#include <QLineEdit>
#include <QListWidget>
#include <QSignalSpy>
#include <QSpinBox>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

// A window with fields and a reader that knows one code.
class BurstTest : public GrowingTest
{
protected:
    QWidget window;
    QLineEdit line;
    QSpinBox number;
    QComboBox choice;
    BurstReader reader{[](const QString& text) {
        return text.toUpper() == "RD029"                ? BurstReader::Kind::Ours
               : text.contains('.') || text == "a1long" ? BurstReader::Kind::Typed
                                                        : BurstReader::Kind::Strange;
    }};
    QSignalSpy scanned{&reader, &BurstReader::scanned};
    QSignalSpy strange{&reader, &BurstReader::strangerScanned};
    qint64 now = 0;
    qint64 gap = 5;

    void SetUp() override
    {
        GrowingTest::SetUp();
        auto* column = new QVBoxLayout(&window);
        for (QWidget* each : std::initializer_list<QWidget*>{&line, &number, &choice}) {
            column->addWidget(each);
        }
        reader.clock().setSource([this] { return now += gap; });
        qApp->installEventFilter(&reader);
        show(window, {300, 200});
        window.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        now = 1000;
    }
    void TearDown() override
    {
        qApp->removeEventFilter(&reader);
        for (QWidget* each : std::initializer_list<QWidget*>{&line, &number, &choice}) {
            each->setParent(nullptr);
        }
    }
    void send(QWidget& field, const QString& text)
    {
        field.setFocus();
        now += 500;
        enter(text);
    }
};

TEST_F(BurstTest, ALabelIsReadAndTheFieldHoldsWhatItHeld)
{
    line.setText("331.5");
    send(line, "RD029");
    ASSERT_EQ(scanned.count(), 1);
    EXPECT_EQ(scanned.front().front().toString(), "RD029");
    EXPECT_EQ(line.text(), "331.5");
}

TEST_F(BurstTest, WhatWasMarkedInTheFieldComesBack)
{
    line.setText("331.5");
    line.setFocus();
    line.selectAll();
    send(line, "RD029");
    EXPECT_EQ(scanned.count(), 1);
    EXPECT_EQ(line.text(), "331.5");
}

TEST_F(BurstTest, DigitsOfALabelDoNotStayInANumber)
{
    number.setRange(0, 99999);
    number.setValue(4);
    send(number, "RD029");
    EXPECT_EQ(scanned.count(), 1);
    EXPECT_EQ(number.value(), 4);
}

TEST_F(BurstTest, LettersOfALabelDoNotChooseAnotherItem)
{
    choice.addItems({"Coir mix", "Rockwool", "Dry felt"});
    send(choice, "RD029");
    EXPECT_EQ(scanned.count(), 1);
    EXPECT_EQ(choice.currentText(), "Coir mix");
}

TEST_F(BurstTest, APersonIsSlowerAndKeepsTheText)
{
    gap = 30;
    QSignalSpy entered(&line, &QLineEdit::returnPressed);
    send(line, "RD029");
    EXPECT_EQ(scanned.count(), 0);
    EXPECT_EQ(line.text(), "RD029");
    EXPECT_EQ(entered.count(), 1);
}

TEST_F(BurstTest, OneKeyUnderTheThirtiethOfASecondIsStillFast)
{
    gap = 29;
    send(line, "RD029");
    EXPECT_EQ(scanned.count(), 1);
}

TEST_F(BurstTest, ACodeOfSomethingElseIsSaidAndLandsInNoField)
{
    line.setText("dry at the rim");
    QSignalSpy entered(&line, &QLineEdit::returnPressed);
    send(line, "4006381333931");
    EXPECT_EQ(scanned.count(), 0);
    ASSERT_EQ(strange.count(), 1);
    EXPECT_EQ(strange.front().front().toString(), "4006381333931");
    EXPECT_EQ(line.text(), "dry at the rim");
    EXPECT_EQ(entered.count(), 0);
}

TEST_F(BurstTest, WhatAScaleSendsAndWordsStayInTheField)
{
    for (const char* typed :
         {"331.55 g", "331.557", "RD30", "dry at rim 3", "seedling", "a1long"}) {
        QSignalSpy entered(&line, &QLineEdit::returnPressed);
        line.clear();
        send(line, typed);
        EXPECT_EQ(line.text(), typed);
        EXPECT_EQ(entered.count(), 1) << typed;
    }
    EXPECT_EQ(scanned.count(), 0);
    EXPECT_EQ(strange.count(), 0);
}

// As a keyboard on X11 sends capitals: Shift goes down before each letter.
TEST_F(BurstTest, ShiftBetweenTheLettersBelongsToTheLabel)
{
    line.setFocus();
    now += 500;
    for (const char capital : {'R', 'D'}) {
        QTest::keyPress(&line, Qt::Key_Shift);
        QTest::keyClick(&line, capital, Qt::ShiftModifier);
        QTest::keyRelease(&line, Qt::Key_Shift);
    }
    enter("029");
    ASSERT_EQ(scanned.count(), 1);
    EXPECT_EQ(scanned.front().front().toString(), "RD029");
    EXPECT_EQ(line.text(), "");
}

TEST_F(BurstTest, TabEndsALabelTooAndMovesNoFocus)
{
    line.setFocus();
    now += 500;
    type("RD029");
    press(Qt::Key_Tab);
    EXPECT_EQ(scanned.count(), 1);
    EXPECT_TRUE(line.hasFocus());
    EXPECT_EQ(line.text(), "");
}

TEST_F(BurstTest, TheScannersOwnSignsAreTakenOff)
{
    reader.setMarks([] { return BurstReader::Marks{"~+", "#"}; });
    for (const char* sent : {"RD029", "~+RD029", "RD029#", "~+RD029#", "]C1RD029", "~+]Q3RD029#"}) {
        scanned.clear();
        send(line, sent);
        ASSERT_EQ(scanned.count(), 1) << sent;
        EXPECT_EQ(scanned.front().front().toString(), "RD029");
    }
    EXPECT_EQ(line.text(), "");
    send(line, "~+4006381333931#");
    ASSERT_EQ(strange.count(), 1);
    EXPECT_EQ(strange.front().front().toString(), "4006381333931");
}

TEST_F(BurstTest, CapitalsLockedGiveTheSameLabel)
{
    send(line, "rd029");
    ASSERT_EQ(scanned.count(), 1);
    EXPECT_EQ(scanned.front().front().toString(), "rd029");
}

TEST_F(BurstTest, TheCursorTheMarkedTextAndWhetherItWasTypedComeBack)
{
    line.setFocus();
    gap = 200;
    type("331.5");
    line.setSelection(1, 2);
    gap = 5;
    send(line, "RD029");
    ASSERT_EQ(scanned.count(), 1);
    EXPECT_EQ(line.text(), "331.5");
    EXPECT_EQ(line.selectedText(), "31");
    EXPECT_TRUE(line.isModified());
}

TEST_F(BurstTest, LettersOfALabelDoNotMoveThroughAList)
{
    QListWidget list(&window);
    list.addItems({"Broccoli", "Radish", "Dill"});
    list.setCurrentRow(0);
    list.show();
    send(list, "RD029");
    EXPECT_EQ(scanned.count(), 1);
    EXPECT_EQ(list.currentRow(), 0);
}

TEST_F(BurstTest, ALabelClosesAListThatDroppedDown)
{
    choice.addItems({"Coir mix", "Rockwool", "Dry felt"});
    choice.setFocus();
    choice.showPopup();
    ASSERT_TRUE(soon([] { return QApplication::activePopupWidget() != nullptr; }));
    now += 500;
    QWidget* popup = QApplication::activePopupWidget();
    QWidget* keys = popup->focusWidget() != nullptr ? popup->focusWidget() : popup;
    QTest::keyClicks(keys, "RD029");
    QTest::keyClick(keys, Qt::Key_Return);
    EXPECT_EQ(scanned.count(), 1);
    EXPECT_EQ(QApplication::activePopupWidget(), nullptr);
    EXPECT_EQ(choice.currentText(), "Coir mix");
}

TEST_F(BurstTest, WithoutEnterNothingIsRead)
{
    line.setFocus();
    now += 500;
    type("RD029");
    EXPECT_EQ(scanned.count(), 0);
    gap = 500;
    press(Qt::Key_Return);
    EXPECT_EQ(scanned.count(), 0);
    EXPECT_EQ(line.text(), "RD029");
}

TEST_F(BurstTest, ABusyComputerMayHandTheEnterOnLate)
{
    line.setFocus();
    now += 500;
    type("RD029");
    gap = 99;
    press(Qt::Key_Return);
    ASSERT_EQ(scanned.count(), 1);
    EXPECT_EQ(line.text(), "");
    now += 500;
    gap = 5;
    type("RD029");
    gap = 100;
    press(Qt::Key_Return);
    EXPECT_EQ(scanned.count(), 1);
}

TEST_F(BurstTest, ALetterTypedBeforeByHandIsNoPartOfTheLabel)
{
    line.setFocus();
    gap = 200;
    type("x");
    now += 500;
    gap = 5;
    enter("RD029");
    EXPECT_EQ(scanned.count(), 1);
    EXPECT_EQ(line.text(), "x");
}

TEST_F(BurstTest, TwoLabelsInARowAreTwo)
{
    send(line, "RD029");
    send(line, "RD029");
    EXPECT_EQ(scanned.count(), 2);
    EXPECT_EQ(line.text(), "");
}

// A widget that leaves keys alone hands them to its parents: each is one key all the same.
TEST_F(BurstTest, KeysThatNobodyTakesAreReadOnce)
{
    auto* inner = new QWidget(&window);
    inner->setFocusPolicy(Qt::StrongFocus);
    inner->show();
    send(*inner, "RD029");
    EXPECT_EQ(scanned.count(), 1);
}

} // namespace
} // namespace plumule::ui
