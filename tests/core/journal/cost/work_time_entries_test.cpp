#include "core/cost/cost_reason.h"
#include "core/journal/cost/cost_entries.h"
#include "core/journal/cost/work_time_entries.h"
#include "tests/core/journal/journal_fixture.h"

namespace plumule {
namespace {

class WorkTimeEntriesTest : public JournalTest
{
protected:
    WorkTimeEntries& work() { return journal->workTimes(); }
    void pass(int minutes) { clock.set(clock.now() + minutes); }
    WorkTime timed(LabourKind task, int seconds, int times)
    {
        WorkTime stretch;
        stretch.task = task;
        stretch.on = clock.today();
        stretch.seconds = seconds;
        stretch.times = times;
        return work().save(stretch).value();
    }
};

TEST_F(WorkTimeEntriesTest, RunsOnWhileTheJournalIsClosed)
{
    ASSERT_FALSE(work().running().value());
    ASSERT_TRUE(work().begin(LabourKind::Watering));
    const auto path = journal->path();
    journal.reset();
    pass(12);
    journal = Journal::open(path, clock).value();
    const auto running = work().running().value();
    ASSERT_TRUE(running);
    EXPECT_EQ(running->task, LabourKind::Watering);
    EXPECT_EQ(secondsUntil(*running, workMomentOf(clock)), 12 * 60);
}

TEST_F(WorkTimeEntriesTest, RunsOneTimerAtATime)
{
    ASSERT_TRUE(work().begin(LabourKind::Sowing));
    const auto second = work().begin(LabourKind::Watering);
    ASSERT_FALSE(second);
    EXPECT_TRUE(second.error().is(CostReason::TimerRuns));
}

TEST_F(WorkTimeEntriesTest, AsksHowOftenWhereTheJournalDoesNotTell)
{
    EXPECT_TRUE(work().end().error().is(CostReason::NoTimerRuns));
    ASSERT_TRUE(work().begin(LabourKind::Watering));
    pass(6);
    EXPECT_TRUE(work().end().error().is(CostReason::WorkTimesMissing)) << "nothing was watered";
    auto running = work().running().value().value();
    running.seconds = 360;
    running.times = 24;
    ASSERT_TRUE(work().save(running));
    EXPECT_FALSE(work().running().value());
    const auto measured = work().measured().value();
    ASSERT_EQ(measured.size(), 1U);
    EXPECT_DOUBLE_EQ(*measured.front().mean(), 15);
}

TEST_F(WorkTimeEntriesTest, AsksOfATimerThatWasForgotten)
{
    ASSERT_TRUE(work().begin(LabourKind::Watering));
    pass(5 * 60);
    EXPECT_TRUE(work().end().error().is(CostReason::TimerForgotten));
    EXPECT_TRUE(work().running().value()) << "it is not thrown away unasked";
}

TEST_F(WorkTimeEntriesTest, NeverChangesTheStandingMinutes)
{
    const auto before = journal->costs().labour().value();
    timed(LabourKind::Watering, 300, 20);
    timed(LabourKind::Watering, 100, 20);
    EXPECT_EQ(journal->costs().labour().value(), before);
    EXPECT_EQ(work().measured().value(),
              (std::vector<MeasuredTask>{{LabourKind::Watering, 2, 400, 40}}));
}

TEST_F(WorkTimeEntriesTest, MeasuresAYear)
{
    timed(LabourKind::Sowing, 300, 2);
    clock.set(clock.now() + std::int64_t{365} * kMinutesPerDay);
    EXPECT_TRUE(work().measured().value().empty());
    EXPECT_EQ(work().latest(5).value().size(), 1U) << "it is kept";
}

TEST_F(WorkTimeEntriesTest, RefusesWhatCannotBe)
{
    WorkTime stretch;
    stretch.on = clock.today();
    stretch.seconds = 0;
    stretch.times = 3;
    EXPECT_TRUE(work().save(stretch).error().is(CostReason::WorkTimeWrong));
    stretch.seconds = 864'001;
    EXPECT_TRUE(work().save(stretch).error().is(CostReason::WorkTimeWrong));
    stretch.seconds = 60;
    stretch.times = 0;
    EXPECT_TRUE(work().save(stretch).error().is(CostReason::WorkTimesMissing));
    stretch.id = {99};
    stretch.times = 1;
    EXPECT_TRUE(work().save(stretch).error().is(CostReason::WorkUnknown));
    EXPECT_TRUE(work().remove({99}).error().is(CostReason::WorkUnknown));
}

TEST_F(WorkTimeEntriesTest, IsTakenBackAndDoneAgain)
{
    const WorkTime stretch = timed(LabourKind::Packing, 600, 4);
    ASSERT_TRUE(work().remove(stretch.id));
    EXPECT_TRUE(work().latest(5).value().empty());
    ASSERT_TRUE(journal->undo());
    EXPECT_EQ(work().latest(5).value(), std::vector<WorkTime>{stretch});
    ASSERT_TRUE(journal->undo());
    EXPECT_TRUE(work().latest(5).value().empty());
    ASSERT_TRUE(journal->redo());
    EXPECT_EQ(work().latest(5).value(), std::vector<WorkTime>{stretch});
}

} // namespace
} // namespace plumule
