#include "core/journal/room/room_entries.h"
#include "ui/page/clock_watch.h"

#include "tests/ui/support/growing.h"

#include <QSignalSpy>

namespace plumule::ui {
namespace {

class ClockWatchTest : public GrowingTest
{
protected:
    ClockWatch& watch()
    {
        if (m_watch == nullptr) {
            m_watch = std::make_unique<ClockWatch>(*journal);
            turned = std::make_unique<QSignalSpy>(m_watch.get(), &ClockWatch::turned);
        }
        return *m_watch;
    }
    // How often it told so far, once it has looked at that time.
    int toldAt(Moment moment)
    {
        watch();
        clock.set(moment);
        watch().look();
        return static_cast<int>(turned->count());
    }

    std::unique_ptr<QSignalSpy> turned;

private:
    std::unique_ptr<ClockWatch> m_watch;
};

// The room's rounds are at 7:00 and 18:00: the evening's begins half-way, at 12:30.
TEST_F(ClockWatchTest, TellsOnceWhenAnotherRoundBegins)
{
    EXPECT_EQ(toldAt({clock.today(), 7 * 60 + 11}), 0);
    EXPECT_EQ(toldAt({clock.today(), 12 * 60 + 29}), 0);
    EXPECT_EQ(toldAt({clock.today(), 12 * 60 + 30}), 1);
    EXPECT_EQ(toldAt({clock.today(), 18 * 60}), 1);
    EXPECT_EQ(toldAt({clock.today(), 23 * 60 + 59}), 1);
    EXPECT_EQ(toldAt({clock.today() + 1, 0}), 2);
    EXPECT_EQ(toldAt({clock.today(), 7 * 60}), 2);
}

TEST_F(ClockWatchTest, TellsAfterALongSleepAndOfAClockThatIsSetBack)
{
    EXPECT_EQ(toldAt({clock.today() + 9, 7 * 60 + 10}), 1);
    EXPECT_EQ(toldAt({clock.today() - 20, 7 * 60 + 10}), 2);
    EXPECT_EQ(toldAt(clock.now()), 2);
}

TEST_F(ClockWatchTest, FollowsTheRoomsOwnTimes)
{
    Room room = journal->room().layout()->room;
    room.morningMinute = 4 * 60;
    room.eveningMinute = 10 * 60;
    ASSERT_TRUE(journal->room().changeRoom(room));
    // 7:10 is the evening round's already, which the watch saw when it was made.
    EXPECT_EQ(toldAt(clock.now()), 0);
    EXPECT_EQ(toldAt({clock.today(), 18 * 60}), 0);
    EXPECT_EQ(toldAt({clock.today() + 1, 4 * 60}), 1);
}

} // namespace
} // namespace plumule::ui
