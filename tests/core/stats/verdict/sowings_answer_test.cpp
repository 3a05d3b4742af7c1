#include "core/stats/verdict/media_answer.h"
#include "core/stats/verdict/sown_trays.h"

#include "core/stats/probability/distributions.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

using verdicts::sown;
using verdicts::withoutBlocks;

TEST(SowingsAnswer, OfTwoMediaInBlocksIsThePairedT)
{
    const MediaAnswer answer = answerOfSowings(sown({{{210, 198, 205}, {181, 176, 170}}}), {});
    const double d[] = {std::log(210.0 / 181), std::log(198.0 / 176), std::log(205.0 / 170)};
    const double mean = (d[0] + d[1] + d[2]) / 3;
    double ss = 0;
    for (const double one : d) {
        ss += (one - mean) * (one - mean);
    }
    const PairAnswer& pair = answer.pairs.at(0);
    EXPECT_NEAR(*pair.difference, mean, 1e-12);
    EXPECT_NEAR(*pair.halfWidth, tQuantile(0.975, 2) * std::sqrt(ss / 2 / 3), 1e-12);
    EXPECT_EQ(pair.verdict, Verdict::More);
    EXPECT_EQ(answer.scope, AnswerScope::TheseSowings);
}

TEST(SowingsAnswer, OfTwoTrialsIsTheMeanOfTheirDifferences)
{
    const auto one = sown({{{210, 198, 205}, {181, 176, 170}}});
    const auto both =
        sown({{{210, 198, 205}, {181, 176, 170}}, {{120, 131, 125}, {122, 117, 126}}});
    std::vector<SownTray> other = both;
    std::erase_if(other, [](const SownTray& tray) { return tray.sowing == 0; });
    const PairAnswer first = answerOfSowings(one, {}).pairs.at(0);
    const PairAnswer second = answerOfSowings(other, {}).pairs.at(0);
    const PairAnswer together = answerOfSowings(both, {}).pairs.at(0);
    EXPECT_NEAR(*together.difference, (*first.difference + *second.difference) / 2, 1e-12);
    EXPECT_DOUBLE_EQ(*together.df, 4);
    EXPECT_EQ(together.sowingsShared, 2);
    // Each has variance se², pooled over equal degrees of freedom; their mean half of the mean.
    const double pooled = (*first.se * *first.se + *second.se * *second.se) / 2;
    EXPECT_NEAR(*together.se, std::sqrt(pooled / 2), 1e-12);
}

// Rocket propellants in a Latin square of five (Montgomery, Design and Analysis of Experiments;
// from memory): error 128 with 12 df, means A 28.6, B 20.2, C 22.4, D 29.8, E 26.0.
std::vector<SownTray> propellants()
{
    const std::vector<std::vector<std::pair<char, double>>> batches = {
        {{'A', 24}, {'B', 20}, {'C', 19}, {'D', 24}, {'E', 24}},
        {{'B', 17}, {'C', 24}, {'D', 30}, {'E', 27}, {'A', 36}},
        {{'C', 18}, {'D', 38}, {'E', 26}, {'A', 27}, {'B', 21}},
        {{'D', 26}, {'E', 31}, {'A', 26}, {'B', 23}, {'C', 22}},
        {{'E', 22}, {'A', 30}, {'B', 20}, {'C', 29}, {'D', 31}}};
    std::vector<SownTray> trays;
    for (std::size_t row = 0; row < batches.size(); ++row) {
        for (std::size_t column = 0; column < batches.size(); ++column) {
            const auto& [medium, rate] = batches[row][column];
            trays.push_back({0, std::size_t(medium - 'A'), 0, row, column, rate, 1});
        }
    }
    return trays;
}

TEST(SowingsAnswer, TakesThePlacesOfALatinSquareOff)
{
    VerdictAsk ask;
    ask.scale = CellScale::Linear;
    std::vector<SownTray> trays = propellants();
    const MediaAnswer answer = answerOfSowings(trays, ask);
    EXPECT_NEAR(*answer.variance, 128.0 / 12, 1e-9);
    EXPECT_DOUBLE_EQ(answer.df, 12);
    const std::vector<double> means = {28.6, 20.2, 22.4, 29.8, 26.0};
    // Tukey's 4.51 of five means and 12 df (as printed in tables); a pair's own spread may add.
    const double tukey = 4.51 * std::sqrt(128.0 / 12 / 5);
    double narrowest = 1e9;
    for (const PairAnswer& pair : answer.pairs) {
        EXPECT_NEAR(*pair.difference, means[pair.a] - means[pair.b], 1e-9);
        EXPECT_GT(*pair.halfWidth, tukey - 0.01);
        narrowest = std::min(narrowest, *pair.halfWidth);
    }
    EXPECT_NEAR(narrowest, tukey, 0.01);

    // However unlike the places are, the answer is the same.
    for (SownTray& tray : trays) {
        *tray.value += 50 * static_cast<double>(*tray.column * *tray.column);
    }
    const MediaAnswer moved = answerOfSowings(trays, ask);
    for (std::size_t i = 0; i < answer.pairs.size(); ++i) {
        EXPECT_NEAR(*moved.pairs[i].difference, *answer.pairs[i].difference, 1e-9);
        EXPECT_NEAR(*moved.pairs[i].halfWidth, *answer.pairs[i].halfWidth, 1e-9);
    }
}

TEST(SowingsAnswer, SaysNothingFromOneTrayEach)
{
    const MediaAnswer answer = answerOfSowings(sown({{{306.1}, {315.3}, {276.1}}}), {});
    for (const PairAnswer& pair : answer.pairs) {
        EXPECT_EQ(pair.verdict, Verdict::NoVerdict);
        EXPECT_EQ(pair.why, NoVerdictReason::OneTrayEach);
        EXPECT_FALSE(pair.interval().has_value());
        EXPECT_TRUE(pair.difference.has_value());
    }
    const MediaAnswer two = answerOfSowings(sown({{{306, 290}, {315}, {276, 281}}}), {});
    EXPECT_EQ(two.pairs[0].why, NoVerdictReason::OneTrayEach);
    EXPECT_EQ(two.pairs[1].why, NoVerdictReason::FewDegrees);
}

TEST(SowingsAnswer, TakesBlocksOff)
{
    // Shelves of 100 and 200 g; the media differ by a tenth on both, to a gram.
    const auto trays = sown({{{100, 200, 151}, {111, 219, 166}}});
    const PairAnswer blocked = answerOfSowings(trays, {}).pairs.at(0);
    const PairAnswer plain = answerOfSowings(withoutBlocks(trays), {}).pairs.at(0);
    EXPECT_NEAR(*blocked.difference, *plain.difference, 1e-12);
    EXPECT_LT(*blocked.halfWidth, *plain.halfWidth / 20);
    EXPECT_EQ(blocked.verdict, Verdict::Less);
    EXPECT_EQ(plain.verdict, Verdict::CantTellYet);
}

TEST(SowingsAnswer, AdjustsForABlockWithoutATray)
{
    // The first medium has no tray on the rich shelf.
    const MediaAnswer answer = answerOfSowings(sown({{{100, 104}, {110, 115, 230}}}), {});
    EXPECT_NEAR(*answer.pairs[0].difference, (std::log(100.0 / 110) + std::log(104.0 / 115)) / 2,
                1e-12);
}

// Three media, the third far less steady: its pairs take their own variance, by Welch.
TEST(SowingsAnswer, OfThreeMediaTakesAPairsOwnVarianceWhereLarger)
{
    const auto trays =
        withoutBlocks(sown({{{100, 101, 102, 99}, {110, 111, 109, 112}, {90, 150, 120, 60}}}));
    const MediaAnswer answer = answerOfSowings(trays, {});
    const PairAnswer& steady = answer.pairs[0];
    const PairAnswer& unsteady = answer.pairs[1];
    EXPECT_DOUBLE_EQ(*steady.df, 9);
    EXPECT_NEAR(*steady.se, std::sqrt(*answer.variance / 2), 1e-12);
    EXPECT_GT(*unsteady.se, *steady.se);
    EXPECT_LT(*unsteady.df, 9);
    EXPECT_GE(*unsteady.df, 3);
    EXPECT_EQ(steady.verdict, Verdict::CantTellYet);
}

TEST(SowingsAnswer, PooledOverVarietiesOfOneTrial)
{
    std::vector<SownTray> trays = sown({{{100, 200}, {112, 219}}});
    trays[1].variety = trays[3].variety = 1; // what were blocks are varieties
    const PairAnswer blocks = answerOfSowings(sown({{{100, 200}, {112, 219}}}), {}).pairs.at(0);
    const PairAnswer varieties = answerOfSowings(withoutBlocks(trays), {}).pairs.at(0);
    EXPECT_NEAR(*blocks.difference, *varieties.difference, 1e-12);
    EXPECT_NEAR(*blocks.halfWidth, *varieties.halfWidth, 1e-9);
}

TEST(SowingsAnswer, OfYieldPerTraySownCountsFailures)
{
    VerdictAsk ask;
    ask.scale = CellScale::LogOfRatio;
    const MediaAnswer answer =
        answerOfSowings(sown({{{200, 0, 190, 210}, {200, 195, 190, 210}}}), ask);
    EXPECT_NEAR(*answer.means[0].value, 150, 1e-9);
    EXPECT_NEAR(*answer.pairs[0].difference, std::log(600.0 / 795), 1e-12);
    EXPECT_DOUBLE_EQ(answer.df, 6);
}

TEST(SowingsAnswer, IsNotComparableAcrossTrials)
{
    std::vector<SownTray> trays = sown({{{100, 104}, {}}, {{}, {110, 115}}});
    const PairAnswer pair = answerOfSowings(trays, {}).pairs.at(0);
    EXPECT_EQ(pair.verdict, Verdict::NotComparable);
    EXPECT_EQ(pair.why, NoVerdictReason::NeverMet);
}

// A trial whose trays were all thrown away has no numbers; it must not take the other one's away.
TEST(SowingsAnswer, OfATrialWithoutANumberSaysNothing)
{
    auto none = sown({{{1, 1}, {1, 1}}});
    for (SownTray& tray : none) {
        tray.value.reset();
    }
    for (const CellScale scale : {CellScale::Log, CellScale::LogOfRatio, CellScale::Linear}) {
        VerdictAsk ask;
        ask.scale = scale;
        const MediaAnswer alone = answerOfSowings(none, ask);
        EXPECT_EQ(alone.trays, 0);
        EXPECT_EQ(alone.pairs.at(0).why, NoVerdictReason::NothingHarvested);
        EXPECT_FALSE(alone.means.at(0).value);

        auto both = sown({{{210, 198, 205}, {181, 176, 170}}});
        const PairAnswer before = answerOfSowings(both, ask).pairs.at(0);
        for (SownTray tray : none) {
            tray.sowing = 1;
            both.push_back(tray);
        }
        EXPECT_EQ(answerOfSowings(both, ask).pairs.at(0), before);
    }
}

} // namespace
} // namespace plumule::stats
