#include "core/watering/round_key.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

// Rounds at 07:00 and 18:00.
const Room kTwoRounds = [] {
    Room room;
    room.morningMinute = 7 * 60;
    room.eveningMinute = 18 * 60;
    return room;
}();
const Date kFirstOfMarch = date(2026, 3, 1);

Moment at(int hour, int minute = 0)
{
    return {kFirstOfMarch, hour * 60 + minute};
}

TEST(RoundKey, FollowOneAnotherAcrossMidnightMonthsAndYears)
{
    const RoundKey morning{kFirstOfMarch, Slot::Morning};
    EXPECT_EQ(roundAfter(morning), (RoundKey{kFirstOfMarch, Slot::Evening}));
    EXPECT_EQ(roundBefore(morning), (RoundKey{date(2026, 2, 28), Slot::Evening}));
    EXPECT_EQ(roundBefore({date(2028, 3, 1), Slot::Morning}),
              (RoundKey{date(2028, 2, 29), Slot::Evening}));
    EXPECT_EQ(roundAfter({date(2025, 12, 31), Slot::Evening}),
              (RoundKey{date(2026, 1, 1), Slot::Morning}));
    RoundKey round = morning;
    for (int i = 0; i < 800; ++i) {
        const RoundKey next = roundAfter(round);
        EXPECT_LT(round, next);
        EXPECT_EQ(roundBefore(next), round);
        round = next;
    }
    EXPECT_EQ(round, (RoundKey{kFirstOfMarch + 400, Slot::Morning}));
}

TEST(RoundKey, BelongToTheRoundThatIsNearer)
{
    EXPECT_EQ(roundOf(kTwoRounds, at(0)).slot, Slot::Morning);
    EXPECT_EQ(roundOf(kTwoRounds, at(12, 29)).slot, Slot::Morning);
    EXPECT_EQ(roundOf(kTwoRounds, at(12, 30)).slot, Slot::Evening);
    EXPECT_EQ(roundOf(kTwoRounds, at(23, 59)), (RoundKey{kFirstOfMarch, Slot::Evening}));
}

TEST(RoundKey, AreWalkedAtTheRoomsOwnTimes)
{
    EXPECT_EQ(timeOf(kTwoRounds, {kFirstOfMarch, Slot::Morning}), at(7));
    EXPECT_EQ(timeOf(kTwoRounds, {kFirstOfMarch, Slot::Evening}), at(18));
    for (const Slot slot : {Slot::Morning, Slot::Evening}) {
        const RoundKey round{kFirstOfMarch, slot};
        EXPECT_EQ(roundOf(kTwoRounds, timeOf(kTwoRounds, round)), round);
    }
}

// What falls due up to three hours after a round's time is shown in it.
TEST(RoundKey, ShowWhatIsDueInTheFirstRoundThatCan)
{
    const struct
    {
        Moment due;
        RoundKey shown;
    } table[] = {
        {at(0), {kFirstOfMarch, Slot::Morning}},
        {at(7, 30), {kFirstOfMarch, Slot::Morning}},
        {at(10), {kFirstOfMarch, Slot::Morning}},
        {at(10, 1), {kFirstOfMarch, Slot::Evening}},
        {at(21), {kFirstOfMarch, Slot::Evening}},
        {at(21, 1), {kFirstOfMarch + 1, Slot::Morning}},
        {at(23, 59), {kFirstOfMarch + 1, Slot::Morning}},
    };
    for (const auto& row : table) {
        EXPECT_EQ(roundShowing(kTwoRounds, row.due), row.shown) << row.due.minute;
    }
}

TEST(RoundKey, NeverShowLaterWhatIsDueEarlier)
{
    for (const int evening : {8 * 60, 18 * 60, 23 * 60 + 59}) {
        Room room = kTwoRounds;
        room.eveningMinute = evening;
        RoundKey shown = roundShowing(room, at(0));
        for (int minute = 1; minute < kMinutesPerDay; ++minute) {
            const RoundKey next = roundShowing(room, {kFirstOfMarch, minute});
            EXPECT_LE(shown, next) << evening << ' ' << minute;
            shown = next;
        }
    }
}

} // namespace
} // namespace plumule
