#include "core/review/comparison/series_choice.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

using stats::Series::Open;
using stats::Series::PlanDone;
using stats::Series::PlanRunning;

// Of a trial, or of trays sown by themselves; all in, or two short.
Sowing sowingOf(bool isTrial, bool isAllIn)
{
    Sowing sowing;
    if (isTrial) {
        sowing.trial = TrialId{1};
    }
    sowing.trays = 6;
    sowing.in = isAllIn ? 6 : 4;
    return sowing;
}
const Sowing kTrialIn = sowingOf(true, true);
const Sowing kTrialGrowing = sowingOf(true, false);
const Sowing kSownIn = sowingOf(false, true);
const Sowing kSownGrowing = sowingOf(false, false);

plumule::Series openSeries()
{
    return {};
}
plumule::Series planOf(int trials)
{
    plumule::Series series;
    series.plannedTrials = trials;
    return series;
}

TEST(SeriesChoice, AnOpenSeriesTakesEverySowingThatIsIn)
{
    const auto choice =
        chooseSowings(openSeries(), {kTrialIn, kSownGrowing, kSownIn, kTrialGrowing});
    EXPECT_EQ(choice.state, Open);
    EXPECT_EQ(choice.sowings, (std::set<std::size_t>{0, 2}));
}

TEST(SeriesChoice, ShowsMeansWithoutAnAnswerWhileNothingIsIn)
{
    const auto choice = chooseSowings(openSeries(), {kSownGrowing, kTrialGrowing});
    EXPECT_EQ(choice.state, PlanRunning);
    EXPECT_EQ(choice.sowings, (std::set<std::size_t>{0, 1}));
    EXPECT_TRUE(chooseSowings(openSeries(), {}).sowings.empty());
}

TEST(SeriesChoice, APlanWaitsForTheLastOfItsTrials)
{
    const auto running = chooseSowings(planOf(3), {kTrialIn, kTrialIn});
    EXPECT_EQ(running.state, PlanRunning);
    EXPECT_EQ(running.in, 2);
    const auto growing = chooseSowings(planOf(3), {kTrialIn, kTrialGrowing, kTrialIn});
    EXPECT_EQ(growing.state, PlanRunning);
    EXPECT_EQ(growing.sowings, (std::set<std::size_t>{0, 2}));
    const auto done = chooseSowings(planOf(3), {kTrialIn, kTrialIn, kTrialIn});
    EXPECT_EQ(done.state, PlanDone);
    EXPECT_EQ(done.in, 3);
}

// A plan that might take its pick of later trials would be looked at until it speaks.
TEST(SeriesChoice, APlanIsAnsweredByItsFirstTrials)
{
    const auto choice = chooseSowings(planOf(2), {kSownIn, kTrialIn, kTrialIn, kTrialIn, kSownIn});
    EXPECT_EQ(choice.state, PlanDone);
    EXPECT_EQ(choice.sowings, (std::set<std::size_t>{1, 2}))
        << "no later one, none without a trial";
    const auto waiting = chooseSowings(planOf(2), {kTrialIn, kTrialGrowing, kTrialIn});
    EXPECT_EQ(waiting.state, PlanRunning) << "a later trial takes no earlier one's place";
    EXPECT_EQ(waiting.sowings, std::set<std::size_t>{0});
}

TEST(SeriesChoice, APlanWithoutATrialYetShowsMeansAlone)
{
    const auto choice = chooseSowings(planOf(2), {kSownIn, kSownIn});
    EXPECT_EQ(choice.state, PlanRunning);
    EXPECT_EQ(choice.in, 0);
    EXPECT_EQ(choice.sowings.size(), 2U);
}

} // namespace
} // namespace plumule
