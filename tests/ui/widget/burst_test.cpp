#include "tests/ui/support/growing.h"
#include "ui/widget/burst.h"

#include <QComboBox>
#include <QLineEdit>
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
    BurstReader reader{[](const QString& text) { return text == "RD029"; }};
    QSignalSpy scanned{&reader, &BurstReader::scanned};
    qint64 now = 0;
    qint64 gap = 5;

    void SetUp() override
    {
        GrowingTest::SetUp();
        auto* column = new QVBoxLayout(&window);
        for (QWidget* each : std::initializer_list<QWidget*>{&line, &number, &choice}) {
            column->addWidget(each);
        }
        reader.setTimeSource([this] { return now += gap; });
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

TEST_F(BurstTest, WhatIsNoCodeOfOursStaysInTheField)
{
    QSignalSpy entered(&line, &QLineEdit::returnPressed);
    send(line, "RD030");
    EXPECT_EQ(scanned.count(), 0);
    EXPECT_EQ(line.text(), "RD030");
    EXPECT_EQ(entered.count(), 1);
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
