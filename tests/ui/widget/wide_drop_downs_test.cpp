#include "tests/ui/support/look_check.h"
#include "tests/ui/support/ui_fixture.h"
#include "ui/widget/wide_drop_downs.h"

namespace plumule::ui {
namespace {

// The program's own drop-downs, as applyTheme() sets them up.
class WideDropDownsTest : public UiTest
{
protected:
    QWidget window;
    QComboBox* box = new QComboBox(&window);

    void SetUp() override
    {
        UiTest::SetUp();
        box->setFixedWidth(90);
        show(window, {400, 120});
    }
};

TEST_F(WideDropDownsTest, ANarrowBoxOpensWholeRows)
{
    box->addItems({"A", "Nutrient-bearing and inert", "Half-year by half-year beside the other"});
    EXPECT_EQ(poorDropDowns(window).join('\n').toStdString(), "");
    EXPECT_EQ(box->width(), 90) << "the box itself stays as it is";
}

TEST_F(WideDropDownsTest, AListThatScrollsHasRoomForItsBarToo)
{
    for (int i = 0; i < 60; ++i) {
        box->addItem(QString("Variety number %1, grown for its colour").arg(i));
    }
    EXPECT_EQ(poorDropDowns(window).join('\n').toStdString(), "");
}

TEST_F(WideDropDownsTest, AWideBoxKeepsItsWidth)
{
    box->setFixedWidth(380);
    box->addItems({"A", "B"});
    box->showPopup();
    EXPECT_GE(box->view()->window()->width(), 380);
    box->hidePopup();
}

TEST_F(WideDropDownsTest, AtTheEdgeOfTheScreenItStaysOnIt)
{
    box->addItems({QString("A medium with a very long name of its own ").repeated(3)});
    const QRect screen = window.screen()->availableGeometry();
    window.move(screen.right() - 120, 40);
    box->showPopup();
    const QRect list = box->view()->window()->geometry();
    EXPECT_GE(list.left(), screen.left());
    EXPECT_LE(list.right(), screen.right() + 1);
    box->hidePopup();
}

} // namespace
} // namespace plumule::ui
