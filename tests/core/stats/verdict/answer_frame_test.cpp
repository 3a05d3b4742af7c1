#include "core/stats/verdict/answer_frame.h"

#include "core/stats/verdict/critical_value.h"
#include "tests/core/stats/verdict/sown_trays.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

using verdicts::sown;

PairAnswer met(int sowings = 3)
{
    PairAnswer pair;
    pair.a = 0;
    pair.b = 1;
    pair.sowingsShared = sowings;
    pair.difference = 0.2;
    return pair;
}

TEST(AnswerFrame, CountsTraysWithANumberAndNamesEveryPairOnce)
{
    const MediaAnswer answer = frameOf(sown({{{100, 0}, {90}, {80}}, {{70}, {}, {60}}}), {});
    EXPECT_EQ(answer.trays, 5) << "a log has no place for 0";
    ASSERT_EQ(answer.means.size(), 3U);
    EXPECT_EQ(answer.means[0].trays, 2);
    EXPECT_EQ(answer.means[0].sowings, 2);
    EXPECT_EQ(answer.means[1].sowings, 1);
    std::string pairs;
    for (const PairAnswer& pair : answer.pairs) {
        pairs += std::to_string(pair.a) + std::to_string(pair.b) + ' ';
    }
    EXPECT_EQ(pairs, "01 02 12 ");
    VerdictAsk linear;
    linear.scale = CellScale::Linear;
    EXPECT_EQ(frameOf(sown({{{100, 0}}}), linear).trays, 2);
    EXPECT_TRUE(frameOf({}, {}).pairs.empty());
}

TEST(AnswerFrame, SharesTheRiskAmongSideMetrics)
{
    VerdictAsk ask;
    EXPECT_EQ(sharedRisk(0.05, ask), 0.05);
    ask.sideMetrics = 9;
    EXPECT_DOUBLE_EQ(sharedRisk(0.045, ask), 0.005);
}

TEST(AnswerFrame, ReadsPairsOfTheAskEitherWayRound)
{
    VerdictAsk ask;
    ask.confounded = {{4, 2}};
    ask.survivors = {7};
    EXPECT_TRUE(isConfounded(ask, 2, 4));
    EXPECT_TRUE(isConfounded(ask, 4, 2));
    EXPECT_FALSE(isConfounded(ask, 2, 7));
    EXPECT_TRUE(isOfSurvivors(ask, 7, 1));
    EXPECT_TRUE(isOfSurvivors(ask, 1, 7));
    EXPECT_FALSE(isOfSurvivors(ask, 1, 2));
}

TEST(AnswerFrame, MeasuresNoSpreadAgainstTheMeanOnALinearScaleOnly)
{
    EXPECT_TRUE(hasNoSpread(0, CellScale::Log, 5));
    EXPECT_TRUE(hasNoSpread(0.9e-8, CellScale::Log, 1000));
    EXPECT_FALSE(hasNoSpread(1.1e-8, CellScale::Log, 1000));
    EXPECT_TRUE(hasNoSpread(0.009, CellScale::Linear, 1000));
    EXPECT_FALSE(hasNoSpread(0.011, CellScale::Linear, -1000));
}

TEST(AnswerFrame, MakesAnIntervalOfItsGround)
{
    PairAnswer pair = met();
    takeInterval(pair, {3, 6, 0.05, 0.09, 2.0 / 3});
    EXPECT_NEAR(*pair.se, std::sqrt(0.06), 1e-15);
    EXPECT_EQ(*pair.critical, criticalValue(3, 6, 0.05));
    EXPECT_NEAR(*pair.halfWidth, *pair.critical * *pair.se, 1e-15);
    const Interval interval = pair.interval().value();
    EXPECT_NEAR(interval.upper() - interval.lower(), 2 * *pair.halfWidth, 1e-15);
    judge(pair, 1e-9);
    EXPECT_FALSE(pair.why);
}

struct RefusedCase
{
    const char* what;
    void (*spoil)(PairAnswer& pair, MediaAnswer& answer, VerdictAsk& ask);
    Verdict verdict;
    NoVerdictReason why;
};

// From the one that says most to the one that says least: each stands before those below it.
const RefusedCase kRefusedCases[] = {
    {"nothing harvested", [](auto&, auto& answer, auto&) { answer.means[1].trays = 0; },
     Verdict::NoVerdict, NoVerdictReason::NothingHarvested},
    {"never met", [](auto& pair, auto&, auto&) { pair.sowingsShared = 0; }, Verdict::NotComparable,
     NoVerdictReason::NeverMet},
    {"confounded",
     [](auto&, auto&, auto& ask) {
         ask.confounded = {{1, 0}};
     },
     Verdict::NotComparable, NoVerdictReason::Confounded},
    {"plan running", [](auto&, auto&, auto& ask) { ask.series = Series::PlanRunning; },
     Verdict::NoVerdict, NoVerdictReason::PlanRunning},
    {"filtered", [](auto&, auto&, auto& ask) { ask.isFiltered = true; }, Verdict::NoVerdict,
     NoVerdictReason::Filtered},
    {"survivors", [](auto&, auto&, auto& ask) { ask.survivors = {0}; }, Verdict::NoVerdict,
     NoVerdictReason::SurvivorsOnly},
};

TEST(AnswerFrame, RefusesForTheReasonThatSaysMost)
{
    const auto trays = sown({{{100}, {90}}});
    PairAnswer sound = met();
    EXPECT_FALSE(refusedBeforehand(sound, frameOf(trays, {}), {}));
    EXPECT_FALSE(sound.why);
    for (std::size_t first = 0; first < std::size(kRefusedCases); ++first) {
        PairAnswer pair = met();
        MediaAnswer answer = frameOf(trays, {});
        VerdictAsk ask;
        for (std::size_t i = first; i < std::size(kRefusedCases); ++i) {
            kRefusedCases[i].spoil(pair, answer, ask);
        }
        EXPECT_TRUE(refusedBeforehand(pair, answer, ask)) << kRefusedCases[first].what;
        EXPECT_EQ(pair.verdict, kRefusedCases[first].verdict) << kRefusedCases[first].what;
        EXPECT_EQ(pair.why, kRefusedCases[first].why) << kRefusedCases[first].what;
    }
}

TEST(AnswerFrame, ShowsNoIntervalOfARunningPlan)
{
    PairAnswer pair = met();
    takeInterval(pair, {2, 6, 0.05, 0.09, 1});
    VerdictAsk ask;
    ask.series = Series::PlanRunning;
    ASSERT_TRUE(refusedBeforehand(pair, frameOf(sown({{{100}, {90}}}), {}), ask));
    EXPECT_FALSE(pair.interval());
    ask.series = Series::Open;
    ask.isFiltered = true;
    takeInterval(pair, {2, 6, 0.05, 0.09, 1});
    ASSERT_TRUE(refusedBeforehand(pair, frameOf(sown({{{100}, {90}}}), {}), ask));
    EXPECT_TRUE(pair.interval()) << "a filter keeps its interval";
}

TEST(ReversedPair, TurnsRoundTwiceToItself)
{
    PairAnswer pair = met();
    takeInterval(pair, {2, 6, 0.05, 0.0001, 1});
    judge(pair, 0.01);
    ASSERT_EQ(pair.verdict, Verdict::More);
    const PairAnswer turned = reversed(pair);
    EXPECT_EQ(turned.verdict, Verdict::Less);
    EXPECT_EQ(turned.difference, -0.2);
    EXPECT_EQ(turned.a, 1U);
    EXPECT_EQ(turned.b, 0U);
    EXPECT_EQ(reversed(turned), pair);
    pair.verdict = Verdict::CantTellYet;
    EXPECT_EQ(reversed(pair).verdict, Verdict::CantTellYet);
    pair.difference.reset();
    EXPECT_FALSE(reversed(pair).difference);
}

} // namespace
} // namespace plumule::stats
