#include "core/cost/work_time.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

WorkTime begunAt(Moment moment, int second)
{
    WorkTime work;
    work.on = moment.date;
    work.minute = moment.minute;
    work.second = second;
    return work;
}

constexpr Moment kMorning{{20'000}, 430};

TEST(WorkTime, IsCountedInSeconds)
{
    const WorkTime work = begunAt(kMorning, 50);
    EXPECT_EQ(secondsUntil(work, {kMorning + 1, 5}), 15);
    EXPECT_EQ(secondsUntil(work, {kMorning + kMinutesPerDay, 50}), 86'400);
    EXPECT_EQ(secondsUntil(work, {kMorning + -5, 0}), 0) << "a clock that went back";
}

TEST(WorkTime, IsForgottenAfterHours)
{
    WorkTime work = begunAt(kMorning, 0);
    EXPECT_FALSE(isForgotten(work, {kMorning + 240, 0}));
    EXPECT_TRUE(isForgotten(work, {kMorning + 240, 1}));
    work.seconds = 60;
    EXPECT_FALSE(isForgotten(work, {kMorning + 9999, 0})) << "it ended";
}

TEST(WorkTime, TakesTheSecondFromTheClock)
{
    const FixedClock clock(kMorning);
    EXPECT_EQ(workMomentOf(clock), (WorkMoment{kMorning, 0}));
}

TEST(MeasuredTask, HasTheMeanOfAllThatWasDone)
{
    const MeasuredTask task{LabourKind::Watering, 2, 300, 25};
    EXPECT_DOUBLE_EQ(*task.mean(), 12);
    EXPECT_FALSE(MeasuredTask().mean());
}

} // namespace
} // namespace plumule
