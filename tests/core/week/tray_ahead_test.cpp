#include "core/week/tray_ahead.h"

#include "tests/core/watering/round_samples.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const Moment kSown{date(2026, 11, 28), 7 * 60 + 30};

RoundKey morningOf(Date day)
{
    return {day, Slot::Morning};
}

std::vector<TaskAhead> aheadOf(const std::vector<TrayStage>& stages, Moment now,
                               const std::vector<Moment>& cuts = {})
{
    return tasksAhead(stages, cuts, Room(), now);
}

TEST(TrayAhead, ChainsWhatComesFromTheStageThatBegan)
{
    const auto stages = stagesFor(broccoli(), inertMat(), kSown, FirstStage::AfterSoak);
    EXPECT_THAT(aheadOf(stages, kSown),
                ElementsAre(TaskAhead{WeekTask::Uncover, morningOf(kSown.date + 3)},
                            TaskAhead{WeekTask::Light, morningOf(kSown.date + 4)},
                            TaskAhead{WeekTask::Cut, morningOf(kSown.date + 12)}));
}

TEST(TrayAhead, ANotYetMovesEverythingAfterIt)
{
    auto stages = stagesFor(broccoli(), inertMat(), kSown, FirstStage::AfterSoak);
    stages[0].delayMinutes = 2 * kDay;
    const auto tasks = aheadOf(stages, kSown);
    EXPECT_EQ(tasks[0].at.date, kSown.date + 5);
    EXPECT_EQ(tasks[2].at.date, kSown.date + 14);
}

TEST(TrayAhead, WhatIsLateIsDoneNowAndMovesTheRest)
{
    const auto stages = stagesFor(broccoli(), inertMat(), kSown, FirstStage::AfterSoak);
    const Moment now = kSown + 5 * kDay; // two days late
    EXPECT_THAT(aheadOf(stages, now),
                ElementsAre(TaskAhead{WeekTask::Uncover, morningOf(now.date)},
                            TaskAhead{WeekTask::Light, morningOf(now.date + 1)},
                            TaskAhead{WeekTask::Cut, morningOf(now.date + 9)}));
}

TEST(TrayAhead, SoakedSeedIsSownInTheRoundThatShowsIt)
{
    const Moment soaked{date(2026, 11, 28), 22 * 60};
    const auto stages = stagesFor(plumule::soaked(), inertMat(), soaked, FirstStage::Soak);
    const auto tasks = aheadOf(stages, soaked);
    ASSERT_EQ(tasks.size(), 4U);
    EXPECT_EQ(tasks[0], (TaskAhead{WeekTask::Sow, morningOf(soaked.date + 1)}));
}

TEST(TrayAhead, ATrayThatIsToBeginHasItsFirstStageAhead)
{
    auto stages = stagesFor(plumule::soaked(), inertMat(), kSown, FirstStage::Soak);
    const auto tasks = aheadOf(stages, kSown + -kDay);
    ASSERT_EQ(tasks.size(), 5U);
    EXPECT_EQ(tasks[0], (TaskAhead{WeekTask::Soak, morningOf(kSown.date)}));
    EXPECT_EQ(tasks[1].task, WeekTask::Sow);
    EXPECT_EQ(tasks[1].at, (RoundKey{kSown.date, Slot::Evening}));
}

TEST(TrayAhead, ACutMadeSinceTheHarvestFellDueIsNotAskedForAgain)
{
    auto stages = stagesFor(broccoli(), inertMat(), kSown, FirstStage::AfterSoak);
    for (TrayStage& stage : stages) {
        stage.startedOn = stage.plannedOn;
        stage.startedMinute = stage.plannedMinute;
    }
    const Moment harvest = kSown + 12 * kDay;
    EXPECT_THAT(aheadOf(stages, harvest),
                ElementsAre(TaskAhead{WeekTask::Cut, morningOf(harvest.date)}));
    EXPECT_THAT(aheadOf(stages, harvest, {harvest}), IsEmpty());
    EXPECT_EQ(aheadOf(stages, harvest, {harvest + -kDay}).size(), 1U) << "it was a trial cut";
    EXPECT_THAT(aheadOf({}, harvest), IsEmpty()) << "brought in without stages";
}

} // namespace
} // namespace plumule
