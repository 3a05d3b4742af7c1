#include "ui/widget/master_detail.h"

#include <QListWidget>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

class MasterDetailTest : public ::testing::Test
{
protected:
    MasterDetail records{"New variety"};
    QListWidget* list = records.findChild<QListWidget*>("records");
    QSignalSpy chosen{&records, &MasterDetail::chosenByHand};

    [[nodiscard]] QPushButton* press(const char* name) const
    {
        auto* found = records.findChild<QPushButton*>(name);
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
};

TEST_F(MasterDetailTest, BeginsWithTheFirstRecordAndEmitsNothing)
{
    records.setItems({{7, "Arugula", {}}, {9, "Basil", {}}});
    EXPECT_EQ(records.chosen(), 7);
    EXPECT_EQ(list->currentRow(), 0);
    EXPECT_EQ(chosen.count(), 0);
}

TEST_F(MasterDetailTest, KeepsTheChosenRecordWhenTheListIsReadAgain)
{
    records.setItems({{7, "Arugula", {}}, {9, "Basil", {}}});
    records.choose(9);
    records.setItems({{5, "Amaranth", {}}, {7, "Arugula", {}}, {9, "Basil", {}}});
    EXPECT_EQ(records.chosen(), 9);
    EXPECT_EQ(list->currentRow(), 2);
    records.setItems({{5, "Amaranth", {}}, {7, "Arugula", {}}});
    EXPECT_EQ(records.chosen(), 5);
    EXPECT_EQ(chosen.count(), 0);
}

TEST_F(MasterDetailTest, LeavesANewRecordNewWhenTheListIsReadAgain)
{
    records.setItems({{7, "Arugula", {}}});
    QTest::mouseClick(press("newRecord"), Qt::LeftButton);
    ASSERT_EQ(chosen.count(), 1);
    EXPECT_EQ(chosen.front().front().toLongLong(), 0);
    EXPECT_FALSE(press("removeRecord")->isEnabled());
    records.setItems({{7, "Arugula", {}}, {9, "Basil", {}}});
    EXPECT_EQ(records.chosen(), 0);
    EXPECT_LT(list->currentRow(), 0);
}

TEST_F(MasterDetailTest, IsWalkedByTheArrowKeys)
{
    records.setItems({{7, "Arugula", {}}, {9, "Basil", {}}});
    QTest::keyClick(list, Qt::Key_Down);
    ASSERT_EQ(chosen.count(), 1);
    EXPECT_EQ(chosen.front().front().toLongLong(), 9);
    EXPECT_EQ(records.chosen(), 9);
}

TEST_F(MasterDetailTest, AsksToSaveAndToRemove)
{
    const QSignalSpy saves(&records, &MasterDetail::saveAsked);
    const QSignalSpy removals(&records, &MasterDetail::removeAsked);
    records.setItems({{7, "Arugula", {}}});
    QTest::mouseClick(press("saveRecord"), Qt::LeftButton);
    QTest::mouseClick(press("removeRecord"), Qt::LeftButton);
    EXPECT_EQ(saves.count(), 1);
    EXPECT_EQ(removals.count(), 1);
}

TEST_F(MasterDetailTest, TheFormHasTheWholeWidthWhereTheListWouldLeaveItTooLittle)
{
    records.setItems({{7, "Arugula", {}}, {9, "Basil", {}}});
    auto* save = press("saveRecord");
    const auto sides = [&](int wide) {
        records.resize(wide, 600);
        records.show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&records));
        QCoreApplication::sendPostedEvents();
        const auto placeOf = [&](QWidget* each) { return each->mapTo(&records, QPoint(0, 0)); };
        return placeOf(list).x() + list->width() < placeOf(save).x() &&
               placeOf(list).y() + 200 > placeOf(save).y() - 600 && list->width() < wide / 2;
    };
    EXPECT_TRUE(sides(900));
    EXPECT_FALSE(sides(400));
    EXPECT_GT(list->width(), 300) << "the list stands above, as wide as there is room";
}

} // namespace
} // namespace plumule::ui
