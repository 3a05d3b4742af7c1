#include "ui/widget/key_clock.h"

#include <QKeyEvent>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

// A key that came at that many milliseconds.
class KeyAt : public QKeyEvent
{
public:
    explicit KeyAt(quint64 milliseconds)
        : QKeyEvent(QEvent::KeyPress, Qt::Key_A, Qt::NoModifier)
    {
        setTimestamp(milliseconds);
    }
};

TEST(KeyClock, GoesByTheStampOfTheKey)
{
    const KeyClock clock;
    EXPECT_EQ(clock.timeOf(KeyAt(4321)), 4321);
    EXPECT_EQ(clock.timeOf(KeyAt(4330)) - clock.timeOf(KeyAt(4321)), 9);
}

TEST(KeyClock, WithoutAStampGoesByItsOwnTimeThatNeverRunsBack)
{
    const KeyClock clock;
    const qint64 first = clock.timeOf(KeyAt(0));
    const qint64 second = clock.timeOf(KeyAt(0));
    EXPECT_GE(first, 0);
    EXPECT_GE(second, first);
}

TEST(KeyClock, ATestsTimeComesBeforeAnyStamp)
{
    KeyClock clock;
    qint64 now = 7;
    clock.setSource([&] { return now; });
    EXPECT_EQ(clock.timeOf(KeyAt(4321)), 7);
    now = 30;
    EXPECT_EQ(clock.timeOf(KeyAt(0)), 30);
}

} // namespace
} // namespace plumule::ui
