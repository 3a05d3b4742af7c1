#include "tests/ui/support/ui_fixture.h"
#include "ui/widget/still_wheel.h"

#include <QComboBox>
#include <QScrollArea>
#include <QScrollBar>
#include <QSpinBox>
#include <QVBoxLayout>
#include <QWheelEvent>

namespace plumule::ui {
namespace {

// A form that is longer than its window, as applyTheme() sets fields up.
class StillWheelTest : public UiTest
{
protected:
    QScrollArea area;
    QComboBox* box = new QComboBox;
    QSpinBox* number = new QSpinBox;

    void SetUp() override
    {
        UiTest::SetUp();
        auto* form = new QWidget;
        auto* column = new QVBoxLayout(form);
        box->addItems({"year, month, day", "day, month, year", "month, day, year"});
        number->setValue(7);
        column->addWidget(box);
        column->addWidget(number);
        column->addSpacing(2000);
        area.setWidget(form);
        area.setWidgetResizable(true);
        show(area, {400, 300});
    }
    static void turnWheelOver(QWidget& field)
    {
        const QPointF at(5, 5);
        QWheelEvent turn(at, field.mapToGlobal(at), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                         Qt::NoScrollPhase, false);
        QApplication::sendEvent(&field, &turn);
    }
    [[nodiscard]] int scrolled() const { return area.verticalScrollBar()->value(); }
};

TEST_F(StillWheelTest, ScrollsPastADropDownAndLeavesWhatIsChosen)
{
    box->setFocus();
    turnWheelOver(*box);
    EXPECT_EQ(box->currentIndex(), 0);
    EXPECT_GT(scrolled(), 0);
}

TEST_F(StillWheelTest, ScrollsPastANumberAndLeavesIt)
{
    number->setFocus();
    turnWheelOver(*number);
    EXPECT_EQ(number->value(), 7);
    EXPECT_GT(scrolled(), 0);
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
