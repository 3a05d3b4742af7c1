#include "tests/ui/support/ui_fixture.h"
#include "ui/widget/still_wheel.h"

#include <QComboBox>
#include <QSpinBox>
#include <QVBoxLayout>
#include <QWheelEvent>

namespace plumule::ui {
namespace {

// Fields as applyTheme() sets them up.
class StillWheelTest : public UiTest
{
protected:
    QWidget form;
    QComboBox* box = new QComboBox;
    QSpinBox* number = new QSpinBox;

    void SetUp() override
    {
        UiTest::SetUp();
        auto* column = new QVBoxLayout(&form);
        box->addItems({"year, month, day", "day, month, year", "month, day, year"});
        number->setValue(7);
        column->addWidget(box);
        column->addWidget(number);
        show(form, {400, 300});
    }
    // Whether the field took it: what it did not take scrolls what it stands in.
    static bool isTurnedByTheWheel(QWidget& field)
    {
        const QPointF at(5, 5);
        QWheelEvent turn(at, field.mapToGlobal(at), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                         Qt::NoScrollPhase, false);
        QApplication::sendEvent(&field, &turn);
        return turn.isAccepted();
    }
};

TEST_F(StillWheelTest, ScrollsPastADropDownAndLeavesWhatIsChosen)
{
    box->setFocus();
    EXPECT_FALSE(isTurnedByTheWheel(*box));
    EXPECT_EQ(box->currentIndex(), 0);
}

TEST_F(StillWheelTest, ScrollsPastANumberAndLeavesIt)
{
    number->setFocus();
    EXPECT_FALSE(isTurnedByTheWheel(*number));
    EXPECT_EQ(number->value(), 7);
}

TEST_F(StillWheelTest, KeysStillTurnThem)
{
    QTest::keyClick(box, Qt::Key_Down);
    QTest::keyClick(number, Qt::Key_Up);
    EXPECT_EQ(box->currentIndex(), 1);
    EXPECT_EQ(number->value(), 8);
}

} // namespace
} // namespace plumule::ui
