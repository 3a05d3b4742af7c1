#include "tests/ui/support/ui_fixture.h"
#include "ui/widget/choice_menu.h"

#include <QMenu>
#include <QSignalSpy>

namespace plumule::ui {
namespace {

class ChoiceMenuTest : public UiTest
{
protected:
    ChoiceMenu menu{"All varieties",
                    [](int count) { return QStringLiteral("%1 varieties").arg(count); }};
    QSignalSpy chosen{&menu, &ChoiceMenu::chosenByHand};

    void SetUp() override
    {
        UiTest::SetUp();
        menu.setItems({{3, "Arugula"}, {5, "Broccoli"}, {8, "Mesh & <b>mix</b>"}});
        show(menu, {260, 40});
    }
    // By the keyboard, as an open menu is walked: the row counts from "All" on.
    void pressRow(int row)
    {
        menu.menu()->popup(menu.mapToGlobal(QPoint(0, menu.height())));
        ASSERT_TRUE(QTest::qWaitForWindowExposed(menu.menu()));
        menu.menu()->setActiveAction(nullptr);
        for (int i = 0; i <= row; ++i) {
            QTest::keyClick(menu.menu(), Qt::Key_Down);
        }
        QTest::keyClick(menu.menu(), Qt::Key_Return);
        EXPECT_FALSE(menu.menu()->isVisible());
    }
};

TEST_F(ChoiceMenuTest, TicksAndUnticksByTheKeyboard)
{
    pressRow(1);
    EXPECT_EQ(menu.chosen(), std::vector<qint64>({3}));
    EXPECT_EQ(menu.text(), "Arugula");
    pressRow(2);
    EXPECT_EQ(menu.chosen(), std::vector<qint64>({3, 5}));
    EXPECT_EQ(menu.text(), "Arugula, Broccoli");
    pressRow(3);
    EXPECT_EQ(menu.text(), "3 varieties");
    pressRow(2);
    EXPECT_EQ(menu.chosen(), std::vector<qint64>({3, 8}));
    EXPECT_EQ(chosen.count(), 4);
    pressRow(0);
    EXPECT_TRUE(menu.chosen().empty());
    EXPECT_EQ(menu.text(), "All varieties");
    for (const QAction* each : menu.menu()->actions()) {
        EXPECT_FALSE(each->isChecked()) << each->text().toStdString();
    }
}

TEST_F(ChoiceMenuTest, NamesKeepTheSignThatMenusTakeForAKey)
{
    EXPECT_EQ(menu.menu()->actions().back()->text(), "Mesh && <b>mix</b>")
        << "drawn as one sign, with no letter underlined";
    menu.choose({8});
    EXPECT_EQ(menu.text(), "Mesh && <b>mix</b>");
    EXPECT_EQ(chosen.count(), 0) << "what the program chooses is not told";
}

TEST_F(ChoiceMenuTest, WhatIsTickedStaysWhenTheListIsReadAgain)
{
    menu.choose({5});
    menu.setItems({{5, "Broccoli, calabrese"}, {9, "Cress"}});
    EXPECT_EQ(menu.chosen(), std::vector<qint64>({5}));
    EXPECT_EQ(menu.text(), "Broccoli, calabrese");
    EXPECT_EQ(chosen.count(), 0);
}

TEST_F(ChoiceMenuTest, EscapeChoosesNothing)
{
    menu.menu()->popup(menu.mapToGlobal(QPoint(0, menu.height())));
    ASSERT_TRUE(QTest::qWaitForWindowExposed(menu.menu()));
    QTest::keyClick(menu.menu(), Qt::Key_Down);
    QTest::keyClick(menu.menu(), Qt::Key_Escape);
    EXPECT_FALSE(menu.menu()->isVisible());
    EXPECT_TRUE(menu.chosen().empty());
    EXPECT_EQ(chosen.count(), 0);
}

} // namespace
} // namespace plumule::ui
