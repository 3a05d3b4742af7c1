#include "ui/page/message_bar.h"

#include <QLabel>
#include <QPushButton>
#include <QTest>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

// The bar inside a shown widget, as in the window.
class MessageBarTest : public ::testing::Test
{
protected:
    QWidget window;
    MessageBar* bar = new MessageBar(&window);
    QPushButton* action = bar->findChild<QPushButton*>("messageAction");

    void SetUp() override
    {
        ASSERT_NE(action, nullptr);
        bar->resize(600, 40);
        window.resize(640, 80);
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    }
};

TEST_F(MessageBarTest, IsHiddenWhileThereIsNothingToSay)
{
    EXPECT_FALSE(bar->isVisible());
    EXPECT_EQ(bar->text(), "");
    bar->tell("Weighed RD029.");
    EXPECT_TRUE(bar->isVisible());
    EXPECT_EQ(bar->text(), "Weighed RD029.");
    EXPECT_FALSE(bar->isRefusal());
    EXPECT_FALSE(action->isVisible());
    bar->clear();
    EXPECT_FALSE(bar->isVisible());
    EXPECT_EQ(bar->text(), "");
}

TEST_F(MessageBarTest, DoesItsActionOnceAndIsGone)
{
    int times = 0;
    bar->tell("Weighed RD029.", "Undo", [&times] { ++times; });
    ASSERT_TRUE(action->isVisible());
    EXPECT_EQ(action->text(), "Undo");
    QTest::mouseClick(action, Qt::LeftButton);
    EXPECT_EQ(times, 1);
    EXPECT_FALSE(bar->isVisible());
    action->click();
    EXPECT_EQ(times, 1);
}

TEST_F(MessageBarTest, LetsTheActionTellSomethingItself)
{
    bar->tell("Weighed RD029.", "Undo", [this] {
        bar->tell("Taken back.", "Redo", [this] { bar->tell("Weighed again."); });
    });
    QTest::mouseClick(action, Qt::LeftButton);
    EXPECT_EQ(bar->text(), "Taken back.");
    ASSERT_TRUE(action->isVisible());
    EXPECT_EQ(action->text(), "Redo");
    QTest::mouseClick(action, Qt::LeftButton);
    EXPECT_EQ(bar->text(), "Weighed again.");
    EXPECT_FALSE(action->isVisible());
}

TEST_F(MessageBarTest, SetsARefusalApartAndOffersNothingWithIt)
{
    int times = 0;
    bar->tell("Weighed RD029.", "Undo", [&times] { ++times; });
    bar->refuse("That place is taken.");
    EXPECT_TRUE(bar->isRefusal());
    EXPECT_EQ(bar->text(), "That place is taken.");
    EXPECT_EQ(bar->findChild<QLabel*>("messageText")->property("role").toString(), "warning");
    EXPECT_FALSE(action->isVisible());
    action->click();
    EXPECT_EQ(times, 0);
    bar->tell("Done.");
    EXPECT_FALSE(bar->isRefusal());
    EXPECT_NE(bar->findChild<QLabel*>("messageText")->property("role").toString(), "warning");
}

TEST_F(MessageBarTest, IsClosedByHandAndNeverTakesTheFocus)
{
    bar->tell("Weighed RD029.", "Undo", [] {});
    QPushButton* close = nullptr;
    for (QPushButton* each : bar->findChildren<QPushButton*>()) {
        EXPECT_EQ(each->focusPolicy(), Qt::NoFocus) << each->text().toStdString();
        if (each != action) {
            close = each;
        }
    }
    ASSERT_NE(close, nullptr);
    QTest::mouseClick(close, Qt::LeftButton);
    EXPECT_FALSE(bar->isVisible());
}

} // namespace
} // namespace plumule::ui
