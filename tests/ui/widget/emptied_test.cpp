#include "ui/widget/emptied.h"

#include <QLineEdit>
#include <QTest>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

TEST(Emptied, IsNotFilledAgainByTheFieldsOwnUndo)
{
    QLineEdit field;
    QTest::keyClicks(&field, "RD029");
    ASSERT_TRUE(field.isUndoAvailable());
    emptyForGood(field);
    EXPECT_EQ(field.text(), "");
    EXPECT_FALSE(field.isUndoAvailable());
    field.undo();
    EXPECT_EQ(field.text(), "");
    QTest::keyClicks(&field, "PE0");
    EXPECT_EQ(field.text(), "PE0") << "it is typed into as ever";
}

} // namespace
} // namespace plumule::ui
