#include "tests/ui/support/look_check.h"
#include "ui/widget/key_button.h"
#include "ui/widget/theme.h"

#include <QSignalSpy>

namespace plumule::ui {
namespace {

class KeyButtonTest : public ::testing::Test
{
protected:
    static QString spokenName(QWidget& widget)
    {
        return QAccessible::queryAccessibleInterface(&widget)->text(QAccessible::Name);
    }
    static void show(QWidget& widget)
    {
        widget.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&widget));
    }
    void TearDown() override { applyTheme(*qApp, Ground::Light); }
};

TEST_F(KeyButtonTest, IsTallEnoughForAWetFingerAtEverySizeOfType)
{
    for (const double type : {1.0, 1.5, 2.0}) {
        applyTheme(*qApp, Ground::Light, type);
        const KeyButton made("Watered", "Space");
        EXPECT_GE(made.sizeHint().height(), 44) << type;
        EXPECT_EQ(made.minimumSizeHint(), made.sizeHint()) << "it is never squeezed";
    }
}

TEST_F(KeyButtonTest, HasRoomForItsWordsAndItsKey)
{
    const KeyButton letter("Watered", 'S');
    const KeyButton word("Watered", "Space");
    EXPECT_GT(word.sizeHint().width(), letter.sizeHint().width());
    const QFontMetrics metrics(letter.font());
    EXPECT_GT(letter.sizeHint().width(),
              metrics.horizontalAdvance("Watered") + metrics.horizontalAdvance("S"));
    KeyButton checkable("Watered", 'S');
    checkable.setCheckable(true);
    EXPECT_GT(checkable.sizeHint().width(), letter.sizeHint().width()) << "and for its box";
}

TEST_F(KeyButtonTest, IsSpokenAsItReadsAlsoOnceItsWordsChange)
{
    KeyButton made("Watered", "Space");
    show(made);
    EXPECT_EQ(spokenName(made), "Watered");
    EXPECT_EQ(made.accessibleDescription(), "Key Space");
    made.setText("Take back");
    EXPECT_EQ(spokenName(made), "Take back");
    made.setAccessibleName("BR001 Take back");
    EXPECT_EQ(spokenName(made), "BR001 Take back");
}

TEST_F(KeyButtonTest, HidesItsKeyWithoutChangingItsSize)
{
    KeyButton made("Ready", 'R');
    show(made);
    const QSize before = made.size();
    const QImage with = made.grab().toImage();
    made.setKeyShown(false);
    const QImage without = made.grab().toImage();
    EXPECT_NE(with, without);
    EXPECT_EQ(made.sizeHint(), before.expandedTo(made.sizeHint()));
}

TEST_F(KeyButtonTest, ACheckableOneShowsWhetherItIsOn)
{
    for (const Ground ground : {Ground::Light, Ground::Dark}) {
        applyTheme(*qApp, ground);
        KeyButton made("Cut again later", "F4");
        made.setCheckable(true);
        show(made);
        const QImage off = made.grab().toImage();
        QSignalSpy toggled(&made, &QPushButton::toggled);
        QTest::mouseClick(&made, Qt::LeftButton);
        EXPECT_EQ(toggled.count(), 1);
        const QImage on = made.grab().toImage();
        EXPECT_NE(off, on) << static_cast<int>(ground);
        EXPECT_GE(contrastIn(on.convertToFormat(QImage::Format_RGB32), on.rect()), 3.0)
            << static_cast<int>(ground);
    }
}

TEST_F(KeyButtonTest, ADisabledOneIsNotPressed)
{
    KeyButton made("Undo", 'U');
    show(made);
    QSignalSpy clicked(&made, &QPushButton::clicked);
    made.setEnabled(false);
    QTest::mouseClick(&made, Qt::LeftButton);
    EXPECT_EQ(clicked.count(), 0);
    made.setEnabled(true);
    QTest::mouseClick(&made, Qt::LeftButton);
    EXPECT_EQ(clicked.count(), 1);
}

} // namespace
} // namespace plumule::ui
