#include "core/stats/verdict/advice.h"
#include "core/stats/verdict/sown_trays.h"

#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

AdviceGround ground()
{
    AdviceGround result;
    result.cellVariance = 0.0021;
    result.cellDf = 2;
    result.trayVariance = 0.0049;
    result.harmonicTrays = 4;
    result.traysEach = 4;
    result.media = 2;
    result.sowings = 3;
    result.margin = logMargin(10);
    return result;
}

TEST(Advice, AsksForFewerTrialsTheWiderTheMargin)
{
    AdviceGround wide = ground();
    wide.margin = logMargin(20);
    EXPECT_LT(sowingsNeeded(wide).moreSowings.value(), sowingsNeeded(ground()).moreSowings.value());
}

TEST(Advice, AsksForMoreOfASideMetric)
{
    AdviceGround side = ground();
    side.sideMetrics = 4;
    EXPECT_GT(sowingsNeeded(side).sowings.value(), sowingsNeeded(ground()).sowings.value());
}

TEST(Advice, StopsAtAYearOfTrials)
{
    AdviceGround fine = ground();
    fine.margin = logMargin(2);
    EXPECT_FALSE(sowingsNeeded(fine).moreSowings.has_value());
}

TEST(Advice, ComesToThreeTrialsAtLeast)
{
    AdviceGround first = ground();
    first.sowings = 1;
    first.cellDf = 0;
    first.margin = logMargin(100);
    const Advice advice = sowingsNeeded(first);
    EXPECT_EQ(advice.sowings, 3);
    EXPECT_EQ(advice.moreSowings, 2);
    EXPECT_TRUE(advice.isAtLeast);
}

TEST(Advice, TakesItsGroundFromAnAnswer)
{
    const MediaAnswer answer = answerOfSeries(verdicts::fourSowings(), {});
    const auto advice = adviceFor(answer, {}, 3);
    AdviceGround same;
    same.cellVariance = *answer.variance;
    same.cellDf = answer.df;
    same.trayVariance = *answer.trayVariance;
    same.harmonicTrays = 2;
    same.traysEach = 3;
    same.media = 3;
    same.sowings = 4;
    same.margin = logMargin(10);
    ASSERT_TRUE(advice.has_value());
    EXPECT_EQ(advice->moreSowings, sowingsNeeded(same).moreSowings);
    EXPECT_FALSE(advice->isAtLeast);
}

TEST(Advice, OfOneTrialTakesMediaToDoAlike)
{
    const MediaAnswer answer =
        answerOfSowings(verdicts::sown({{{100, 104, 99}, {110, 115, 108}}}), {});
    const auto advice = adviceFor(answer, {}, 3);
    ASSERT_TRUE(advice.has_value());
    EXPECT_TRUE(advice->isAtLeast);
    EXPECT_EQ(advice->trialVariance, 0);
    EXPECT_FALSE(adviceFor(answerOfSowings(verdicts::sown({{{100}, {110}}}), {}), {}, 3));
}

} // namespace
} // namespace plumule::stats
