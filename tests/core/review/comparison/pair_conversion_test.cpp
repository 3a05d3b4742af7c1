#include "core/review/comparison/pair_conversion.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

using stats::NoVerdictReason;
using stats::Verdict;

// 1.25 times as much, at least as much, at most 1.5625 times as much.
stats::PairAnswer aQuarterMore()
{
    stats::PairAnswer pair;
    pair.a = 0;
    pair.b = 1;
    pair.sowingsShared = 4;
    pair.difference = std::log(1.25);
    pair.halfWidth = std::log(1.25);
    pair.verdict = Verdict::More;
    return pair;
}

PairContext logsWithMeans(double first, double second)
{
    PairContext context;
    context.means = {{0, first}, {1, second}};
    return context;
}

TEST(PairConversion, OfLogsIsARatioAndGramsAtTheSecondMean)
{
    const MediaPair pair = mediaPair(aQuarterMore(), logsWithMeans(250, 200));
    EXPECT_EQ(pair.a, 0u);
    EXPECT_EQ(pair.b, 1u);
    EXPECT_EQ(pair.trialsShared, 4);
    EXPECT_NEAR(*pair.percent, 25, 1e-9);
    EXPECT_NEAR(*pair.lowerPercent, 0, 1e-9);
    EXPECT_NEAR(*pair.upperPercent, 56.25, 1e-9);
    EXPECT_NEAR(*pair.difference, 50, 1e-9);
    EXPECT_NEAR(*pair.lower, 0, 1e-9);
    EXPECT_NEAR(*pair.upper, 112.5, 1e-9);
    EXPECT_EQ(pair.verdict, Verdict::More);
    EXPECT_EQ(pair.as, ComparedAs::Media);
}

TEST(PairConversion, OfLogsWithoutAMeanIsARatioAlone)
{
    const MediaPair pair = mediaPair(aQuarterMore(), PairContext());
    EXPECT_NEAR(*pair.percent, 25, 1e-9);
    EXPECT_FALSE(pair.difference);
    EXPECT_FALSE(pair.upper);
    EXPECT_TRUE(pair.upperPercent);
}

// Days: two more than eight, give or take one.
TEST(PairConversion, OfALinearScaleIsADifferenceAndAShareOfTheSecondMean)
{
    stats::PairAnswer days;
    days.b = 1;
    days.difference = 2;
    days.halfWidth = 1;
    PairContext context = logsWithMeans(10, 8);
    context.scale = stats::CellScale::Linear;
    const MediaPair pair = mediaPair(days, context);
    EXPECT_EQ(pair.difference, 2);
    EXPECT_EQ(pair.lower, 1);
    EXPECT_EQ(pair.upper, 3);
    EXPECT_NEAR(*pair.percent, 25, 1e-12);
    EXPECT_NEAR(*pair.lowerPercent, 12.5, 1e-12);
    EXPECT_NEAR(*pair.upperPercent, 37.5, 1e-12);
    context.means[1] = 0; // a share of nothing
    EXPECT_EQ(mediaPair(days, context).difference, 2);
    EXPECT_FALSE(mediaPair(days, context).percent);
}

TEST(PairConversion, ReadsTheOneWithMoreFirst)
{
    stats::PairAnswer less = aQuarterMore();
    less.difference = -*less.difference;
    less.verdict = Verdict::Less;
    PairContext context = logsWithMeans(200, 250);
    context.reversed = {{0, 1}};
    const MediaPair pair = mediaPair(less, context);
    EXPECT_EQ(pair.a, 1u);
    EXPECT_EQ(pair.b, 0u);
    EXPECT_EQ(pair.verdict, Verdict::More);
    EXPECT_NEAR(*pair.percent, 25, 1e-9);
    EXPECT_NEAR(*pair.difference, 50, 1e-9) << "at the mean of medium 0";
    EXPECT_NEAR(*pair.lowerPercent, 0, 1e-9);
    EXPECT_NEAR(*pair.upperPercent, 56.25, 1e-9);
}

TEST(PairConversion, SaysAsFedWhicheverComesFirst)
{
    PairContext context = logsWithMeans(250, 200);
    context.fedUnalike = {{0, 1}};
    EXPECT_EQ(mediaPair(aQuarterMore(), context).as, ComparedAs::AsFed);
    context.reversed = {{0, 1}};
    EXPECT_EQ(mediaPair(aQuarterMore(), context).as, ComparedAs::AsFed);
    context.fedUnalike = {{0, 2}};
    EXPECT_EQ(mediaPair(aQuarterMore(), context).as, ComparedAs::Media);
}

TEST(PairConversion, NamesWhatIsMixedWithTheMediumOnlyWhereThatIsWhy)
{
    PairContext context = logsWithMeans(250, 200);
    context.mixedWith = {{{0, 1}, Aspect::Shelf}};
    stats::PairAnswer pair = aQuarterMore();
    pair.verdict = Verdict::NotComparable;
    pair.why = NoVerdictReason::Confounded;
    EXPECT_EQ(mediaPair(pair, context).mixedWith, Aspect::Shelf);
    pair.why = NoVerdictReason::NeverMet;
    EXPECT_FALSE(mediaPair(pair, context).mixedWith);
}

TEST(PairConversion, AdvisesMoreTrialsOnlyWhereMoreWouldHelp)
{
    PairContext context = logsWithMeans(250, 200);
    context.more = MoreTrials{3, 4};
    const auto isAdvised = [&](Verdict verdict, std::optional<NoVerdictReason> why) {
        stats::PairAnswer pair = aQuarterMore();
        pair.verdict = verdict;
        pair.why = why;
        return mediaPair(pair, context).more == context.more;
    };
    EXPECT_TRUE(isAdvised(Verdict::CantTellYet, std::nullopt));
    EXPECT_TRUE(isAdvised(Verdict::NoVerdict, NoVerdictReason::FewSowings));
    EXPECT_TRUE(isAdvised(Verdict::NoVerdict, NoVerdictReason::OneTrayEach));
    EXPECT_TRUE(isAdvised(Verdict::NoVerdict, NoVerdictReason::FewDegrees));
    for (const Verdict told :
         {Verdict::More, Verdict::Less, Verdict::SameWithinMargin, Verdict::RealButTooSmall}) {
        EXPECT_FALSE(isAdvised(told, std::nullopt)) << static_cast<int>(told);
    }
    for (const auto why : {NoVerdictReason::NothingHarvested, NoVerdictReason::NoSpread,
                           NoVerdictReason::SurvivorsOnly, NoVerdictReason::PlanRunning,
                           NoVerdictReason::Filtered, NoVerdictReason::VarietiesAlike}) {
        EXPECT_FALSE(isAdvised(Verdict::NoVerdict, why)) << static_cast<int>(why);
    }
    EXPECT_FALSE(isAdvised(Verdict::NotComparable, NoVerdictReason::Confounded));
}

TEST(PairConversion, OfAPairWithoutNumbersHasNone)
{
    stats::PairAnswer pair;
    pair.b = 1;
    pair.why = NoVerdictReason::NeverMet;
    pair.verdict = Verdict::NotComparable;
    const MediaPair shown = mediaPair(pair, logsWithMeans(250, 200));
    EXPECT_FALSE(shown.percent || shown.difference || shown.lower || shown.upperPercent);
    EXPECT_EQ(shown.why, NoVerdictReason::NeverMet);
}

TEST(PairConversion, OfGroupsIsTurnedSoThatMoreComesFirst)
{
    stats::GroupContrast groups;
    groups.a = 0;
    groups.b = 1;
    groups.difference = -std::log(1.5);
    groups.halfWidth = std::log(1.2);
    groups.verdict = Verdict::Less;
    const MediaPair pair = mediaPair(groups, logsWithMeans(200, 300));
    EXPECT_EQ(pair.a, 1u);
    EXPECT_EQ(pair.verdict, Verdict::More);
    EXPECT_NEAR(*pair.percent, 50, 1e-9);
    EXPECT_NEAR(*pair.difference, 100, 1e-9);
    EXPECT_NEAR(*pair.lowerPercent, 25, 1e-9);
    EXPECT_NEAR(*pair.upperPercent, 80, 1e-9);
}

TEST(PairConversion, TakesTheMeansOfItsOwnAnswer)
{
    stats::MediaAnswer answer;
    answer.scale = stats::CellScale::Linear;
    answer.means.resize(2);
    answer.means[0].medium = 0;
    answer.means[0].value = 9;
    answer.means[1].medium = 1;
    PairContext shared = logsWithMeans(250, 200);
    shared.fedUnalike = {{0, 1}};
    const PairContext context = contextOf(answer, shared);
    EXPECT_EQ(context.scale, stats::CellScale::Linear);
    EXPECT_EQ(context.means, (std::map<std::size_t, double>{{0, 9}}))
        << "not those of another answer";
    EXPECT_EQ(context.fedUnalike, shared.fedUnalike);
}

} // namespace
} // namespace plumule
