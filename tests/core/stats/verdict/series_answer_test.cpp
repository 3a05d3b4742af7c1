#include "core/stats/verdict/media_answer.h"
#include "core/stats/verdict/sown_trays.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

using verdicts::fourSowings;
using verdicts::sown;

PairAnswer pairOf(const MediaAnswer& answer, std::size_t a, std::size_t b)
{
    for (const PairAnswer& pair : answer.pairs) {
        if (pair.a == a && pair.b == b) {
            return pair;
        }
    }
    throw std::logic_error("no pair");
}

void expectAlike(const PairAnswer& one, const PairAnswer& other)
{
    EXPECT_NEAR(one.difference.value(), other.difference.value(), 1e-9);
    EXPECT_NEAR(one.halfWidth.value(), other.halfWidth.value(), 1e-9);
    EXPECT_NEAR(one.df.value(), other.df.value(), 1e-6);
    EXPECT_EQ(one.verdict, other.verdict);
    EXPECT_EQ(one.sowingsShared, other.sowingsShared);
}

std::vector<NoVerdictReason> reasonsOf(const MediaAnswer& answer)
{
    std::vector<NoVerdictReason> reasons;
    for (const PairAnswer& pair : answer.pairs) {
        reasons.push_back(pair.why.value());
    }
    return reasons;
}

TEST(SeriesAnswer, IsTheSameWhateverTheOrderOfTraysAndTrials)
{
    std::vector<SownTray> trays = fourSowings();
    const MediaAnswer before = answerOfSeries(trays, {});
    for (SownTray& tray : trays) {
        tray.sowing = 100 - 7 * tray.sowing;
        tray.block = 50 - *tray.block;
    }
    std::reverse(trays.begin(), trays.end());
    const MediaAnswer after = answerOfSeries(trays, {});
    ASSERT_EQ(before.pairs.size(), 3U);
    for (std::size_t i = 0; i < before.pairs.size(); ++i) {
        expectAlike(before.pairs[i], after.pairs[i]);
    }
}

TEST(SeriesAnswer, TurnsRoundWhenMediaDo)
{
    std::vector<SownTray> trays = fourSowings();
    const MediaAnswer before = answerOfSeries(trays, {});
    for (SownTray& tray : trays) {
        tray.medium = 2 - tray.medium;
    }
    const MediaAnswer after = answerOfSeries(trays, {});
    expectAlike(pairOf(before, 0, 1), reversed(pairOf(after, 1, 2)));
    expectAlike(pairOf(before, 0, 2), reversed(pairOf(after, 0, 2)));
    EXPECT_EQ(pairOf(before, 0, 2).verdict, Verdict::Less);
    EXPECT_EQ(pairOf(after, 0, 2).verdict, Verdict::More);
}

TEST(SeriesAnswer, OnLogsDoesNotHangOnTheUnit)
{
    std::vector<SownTray> trays = fourSowings();
    const MediaAnswer grams = answerOfSeries(trays, {});
    for (SownTray& tray : trays) {
        *tray.value /= 28.349523125;
    }
    const MediaAnswer ounces = answerOfSeries(trays, {});
    for (std::size_t i = 0; i < grams.pairs.size(); ++i) {
        expectAlike(grams.pairs[i], ounces.pairs[i]);
        EXPECT_NEAR(*grams.means[i].value, *ounces.means[i].value * 28.349523125, 1e-9);
    }
    EXPECT_NEAR(grams.variance.value(), ounces.variance.value(), 1e-12);
}

TEST(SeriesAnswer, OnALinearScaleScalesWithTheUnit)
{
    VerdictAsk ask;
    ask.scale = CellScale::Linear;
    ask.margin = 20;
    std::vector<SownTray> trays = fourSowings();
    const PairAnswer grams = pairOf(answerOfSeries(trays, ask), 0, 2);
    for (SownTray& tray : trays) {
        *tray.value *= 1000;
    }
    ask.margin *= 1000;
    const PairAnswer milligrams = pairOf(answerOfSeries(trays, ask), 0, 2);
    EXPECT_NEAR(*milligrams.difference, 1000 * *grams.difference, 1e-6);
    EXPECT_NEAR(*milligrams.halfWidth, 1000 * *grams.halfWidth, 1e-6);
    EXPECT_EQ(grams.verdict, milligrams.verdict);
}

TEST(SeriesAnswer, GivesAMediumsGeometricMean)
{
    const MediaAnswer answer = answerOfSeries(fourSowings(), {});
    EXPECT_NEAR(*answer.means[0].value,
                std::pow(140.0 * 129 * 246 * 270 * 352 * 340 * 195 * 207, 1.0 / 8), 1e-9);
    EXPECT_EQ(answer.means[0].trays, 8);
    EXPECT_EQ(answer.means[0].sowings, 4);
}

TEST(SeriesAnswer, SpendsLessOnEachLookAndAllAtOnceOnAPlan)
{
    VerdictAsk ask;
    EXPECT_DOUBLE_EQ(answerOfSeries(fourSowings(), ask).level.value(), 0.01);
    ask.sideMetrics = 4;
    EXPECT_DOUBLE_EQ(answerOfSeries(fourSowings(), ask).level.value(), 0.0025);
    ask.series = Series::PlanDone;
    EXPECT_DOUBLE_EQ(answerOfSeries(fourSowings(), ask).level.value(), 0.0125);
    ask.sideMetrics = 0;
    EXPECT_DOUBLE_EQ(answerOfSeries(fourSowings(), ask).level.value(), 0.05);
}

TEST(SeriesAnswer, WaitsForAPlanAndForBiddenWordsOfAFilter)
{
    VerdictAsk ask;
    ask.series = Series::PlanRunning;
    const MediaAnswer running = answerOfSeries(fourSowings(), ask);
    EXPECT_EQ(reasonsOf(running), std::vector(3, NoVerdictReason::PlanRunning));
    EXPECT_FALSE(running.pairs[0].interval().has_value());
    ask.series = Series::Open;
    ask.isFiltered = true;
    const MediaAnswer filtered = answerOfSeries(fourSowings(), ask);
    EXPECT_EQ(reasonsOf(filtered), std::vector(3, NoVerdictReason::Filtered));
    EXPECT_TRUE(filtered.pairs[0].interval().has_value());
}

TEST(SeriesAnswer, DoesNotCompareWhatTheCallerNames)
{
    VerdictAsk ask;
    ask.confounded = {{2, 0}};
    ask.survivors = {1};
    const MediaAnswer answer = answerOfSeries(fourSowings(), ask);
    EXPECT_EQ(pairOf(answer, 0, 2).verdict, Verdict::NotComparable);
    EXPECT_EQ(pairOf(answer, 0, 2).why, NoVerdictReason::Confounded);
    EXPECT_EQ(pairOf(answer, 0, 1).why, NoVerdictReason::SurvivorsOnly);
    EXPECT_EQ(pairOf(answer, 1, 2).why, NoVerdictReason::SurvivorsOnly);
}

TEST(SeriesAnswer, SaysNothingFromTwoTrials)
{
    std::vector<SownTray> trays = fourSowings();
    std::erase_if(trays, [](const SownTray& tray) { return tray.sowing > 1; });
    EXPECT_EQ(reasonsOf(answerOfSeries(trays, {})), std::vector(3, NoVerdictReason::FewSowings));
}

// Media 0 and 2 met twice only, though the others connect them in all four.
TEST(SeriesAnswer, CountsTheTrialsInWhichBothGrew)
{
    std::vector<SownTray> trays = fourSowings();
    std::erase_if(trays, [](const SownTray& tray) { return tray.medium == 2 && tray.sowing > 1; });
    const MediaAnswer answer = answerOfSeries(trays, {});
    EXPECT_EQ(pairOf(answer, 0, 2).why, NoVerdictReason::FewSowings);
    EXPECT_EQ(pairOf(answer, 0, 2).sowingsShared, 2);
    EXPECT_FALSE(pairOf(answer, 0, 1).why.has_value());
    std::erase_if(trays, [](const SownTray& tray) { return tray.medium == 0 && tray.sowing < 2; });
    const MediaAnswer apart = answerOfSeries(trays, {});
    EXPECT_EQ(pairOf(apart, 0, 2).verdict, Verdict::NotComparable);
    EXPECT_EQ(pairOf(apart, 0, 2).why, NoVerdictReason::NeverMet);
    EXPECT_TRUE(pairOf(apart, 0, 2).difference.has_value()); // by way of medium 1
}

TEST(SeriesAnswer, IsTheMeanOnlyForOneMedium)
{
    const MediaAnswer answer = answerOfSeries(sown({{{100, 100}}, {{400, 400}}}), {});
    EXPECT_TRUE(answer.pairs.empty());
    EXPECT_EQ(answer.sowings, 0);
    EXPECT_NEAR(*answer.means.at(0).value, 200, 1e-9);
}

TEST(SeriesAnswer, NeedsSpreadAndDegreesOfFreedom)
{
    const MediaAnswer alike =
        answerOfSeries(sown({{{100}, {110}}, {{200}, {220}}, {{300}, {330}}}), {});
    EXPECT_EQ(reasonsOf(alike), std::vector(1, NoVerdictReason::NoSpread));
    // Four media that met in pairs: three trials each would be needed, and ν is 0.
    const MediaAnswer chain = answerOfSeries(sown({{{100}, {113}}}), {});
    EXPECT_EQ(chain.df, 0);
    EXPECT_FALSE(chain.pairs[0].interval().has_value());
    EXPECT_EQ(reasonsOf(chain), std::vector(1, NoVerdictReason::FewSowings));
}

TEST(SeriesAnswer, NamesAMediumOfWhichNothingWasCut)
{
    std::vector<SownTray> trays = fourSowings();
    for (SownTray& tray : trays) {
        if (tray.medium == 1) {
            tray.value.reset();
        }
    }
    const MediaAnswer answer = answerOfSeries(trays, {});
    EXPECT_EQ(answer.empty.size(), 4U);
    EXPECT_EQ(pairOf(answer, 0, 1).why, NoVerdictReason::NothingHarvested);
    EXPECT_FALSE(answer.means[1].value.has_value());
    EXPECT_EQ(pairOf(answer, 0, 2).sowingsShared, 4);
}

TEST(SeriesAnswer, IsFineWithOneTrayACell)
{
    std::vector<SownTray> trays = fourSowings();
    std::erase_if(trays, [](const SownTray& tray) { return *tray.block > 0; });
    const MediaAnswer answer = answerOfSeries(trays, {});
    EXPECT_FALSE(pairOf(answer, 0, 2).why.has_value());
    EXPECT_FALSE(answer.trayVariance.has_value());
    EXPECT_FALSE(answer.trialVariance.has_value());
    EXPECT_FALSE(answer.spread.brownForsytheP.has_value());
    EXPECT_TRUE(answer.spread.largestToSmallest.has_value());
}

TEST(SeriesAnswer, TellsTrayAndTrialSpreadApart)
{
    const MediaAnswer answer = answerOfSeries(fourSowings(), {});
    ASSERT_TRUE(answer.trayVariance && answer.trialVariance);
    EXPECT_DOUBLE_EQ(answer.harmonicTrays, 2);
    EXPECT_NEAR(*answer.trialVariance, *answer.variance - *answer.trayVariance / 2, 1e-12);
}

} // namespace
} // namespace plumule::stats
