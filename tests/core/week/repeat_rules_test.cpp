#include "core/week/repeat_rules.h"

#include "core/week/week_reason.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const Date kSaturday = date(2026, 11, 28);

Repeat everyTuesday()
{
    Repeat repeat;
    repeat.trays = 4;
    repeat.weekdays = weekdayBit(1);
    repeat.from = kSaturday - 30;
    return repeat;
}

TEST(RepeatRules, KnowsTheWeekdays)
{
    EXPECT_EQ(weekdayOf(date(1970, 1, 1)), 3) << "a Thursday";
    EXPECT_EQ(weekdayOf(kSaturday), 5);
    EXPECT_EQ(weekdayOf(date(2026, 11, 30)), 0);
    EXPECT_EQ(weekdayOf(date(1969, 12, 31)), 2) << "before the first day that is counted";
}

TEST(RepeatRules, EveryTuesdayFallsOnTuesdaysFromItsFirstDayOn)
{
    Repeat repeat = everyTuesday();
    EXPECT_TRUE(isDayOf(repeat, date(2026, 12, 1)));
    EXPECT_FALSE(isDayOf(repeat, date(2026, 12, 2)));
    EXPECT_FALSE(isDayOf(repeat, date(2026, 10, 27))) << "before it began";
    repeat.until = date(2026, 12, 7);
    EXPECT_TRUE(isDayOf(repeat, date(2026, 12, 1)));
    EXPECT_FALSE(isDayOf(repeat, date(2026, 12, 8))) << "after its last day";
}

TEST(RepeatRules, EveryTenDaysCountsFromTheFirst)
{
    Repeat repeat;
    repeat.everyDays = 10;
    repeat.from = kSaturday;
    EXPECT_TRUE(isDayOf(repeat, kSaturday));
    EXPECT_TRUE(isDayOf(repeat, kSaturday + 10));
    EXPECT_FALSE(isDayOf(repeat, kSaturday + 9));
    EXPECT_FALSE(isDayOf(repeat, kSaturday - 10));
}

TEST(RepeatRules, AsksForTheDaysToComeAndTheLastOneLetPass)
{
    const Repeat repeat = everyTuesday();
    EXPECT_THAT(openDays(repeat, {}, kSaturday, kSaturday + 13),
                ElementsAre(date(2026, 11, 24), date(2026, 12, 1), date(2026, 12, 8)));
    EXPECT_THAT(
        openDays(repeat, {date(2026, 11, 24), date(2026, 12, 1)}, kSaturday, kSaturday + 13),
        ElementsAre(date(2026, 12, 8)));
    // On the next Tuesday the one before is no longer asked for, answered or not.
    EXPECT_THAT(openDays(repeat, {}, date(2026, 12, 1), date(2026, 12, 7)),
                ElementsAre(date(2026, 12, 1)));
    EXPECT_THAT(openDays(repeat, {date(2026, 12, 1)}, date(2026, 12, 1), date(2026, 12, 7)),
                IsEmpty());
}

TEST(RepeatRules, ADayLetPassIsAskedForAWeekAndNoLonger)
{
    Repeat repeat;
    repeat.everyDays = 30;
    repeat.from = kSaturday;
    EXPECT_THAT(openDays(repeat, {}, kSaturday + kDaysLate, kSaturday + 20),
                ElementsAre(kSaturday));
    EXPECT_THAT(openDays(repeat, {}, kSaturday + kDaysLate + 1, kSaturday + 20), IsEmpty());
}

TEST(RepeatRules, RefusesWhatIsNoRhythm)
{
    const auto reasonOf = [](const Repeat& repeat) {
        const Done checked = checkRepeat(repeat);
        return checked ? std::optional<Reason>() : std::optional(checked.error().reason);
    };
    EXPECT_FALSE(reasonOf(everyTuesday()));
    Repeat both = everyTuesday();
    both.everyDays = 3;
    EXPECT_EQ(reasonOf(both), Reason(WeekReason::RhythmMissing));
    Repeat none = everyTuesday();
    none.weekdays = 0;
    EXPECT_EQ(reasonOf(none), Reason(WeekReason::RhythmMissing));
    Repeat never = everyTuesday();
    never.weekdays.reset();
    never.everyDays = 0;
    EXPECT_EQ(reasonOf(never), Reason(WeekReason::DaysBeyond));
    Repeat nothing = everyTuesday();
    nothing.trays = 0;
    EXPECT_EQ(reasonOf(nothing), Reason(WeekReason::TraysBeyond));
    Repeat ended = everyTuesday();
    ended.until = ended.from - 1;
    EXPECT_EQ(reasonOf(ended), Reason(WeekReason::EndsBeforeStart));
}

TEST(RepeatRules, AnswersAreKeptByTheirWords)
{
    for (const RepeatAnswer answer : {RepeatAnswer::Sown, RepeatAnswer::Skipped}) {
        RepeatAnswer read{};
        ASSERT_TRUE(fromText(toText(answer), read));
        EXPECT_EQ(read, answer);
    }
    RepeatAnswer read{};
    EXPECT_FALSE(fromText("perhaps", read));
}

} // namespace
} // namespace plumule
