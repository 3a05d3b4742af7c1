#include "core/stats/samples/ranks.h"

#include "tests/core/stats/reference/reference_cases.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule;
using namespace plumule::stats;

using RankedGroups = std::vector<std::vector<double>>;

TEST(Ranks, ShareTheMeanAmongEqualValues)
{
    EXPECT_EQ(midranks(std::vector<double>{3, 1, 3, 2}), (std::vector<double>{3.5, 1, 3.5, 2}));
    EXPECT_EQ(tieSum(std::vector<double>{3, 1, 3, 2}), 6);
    EXPECT_EQ(tieSum(std::vector<double>{5, 5, 5, 1}), 24);
    EXPECT_TRUE(midranks({}).empty());
}

TEST(KruskalWallis, AgreesWithConoversCorn)
{
    // Conover 1999, corn yields under four methods: H 25.629, rank sums 196.5, 153, 207, 38.5.
    const reference::Table table("handbook/stat_data/conover_corn_kruskal.csv");
    const auto corn = reference::grouped(table, "observation", "method");
    const auto result = kruskalWallis(corn.values);
    ASSERT_TRUE(result);
    EXPECT_NEAR(result->h, 25.629, 0.0005);
    EXPECT_EQ(result->df, 3);
    EXPECT_NEAR(result->p, 1.141e-05, 1e-7);
    const std::vector<double> sums = {196.5, 153, 207, 38.5};
    for (std::size_t g = 0; g < sums.size(); ++g)
        EXPECT_NEAR(result->meanRanks[g] * static_cast<double>(corn.values[g].size()), sums[g],
                    1e-9);
}

TEST(KruskalWallis, IsTheSquaredNormalOfTheRankSumForTwoGroups)
{
    const RankedGroups groups = {{1.2, 3.4, 3.4, 5.1}, {2.2, 6.1, 7.3, 7.3, 8}};
    const auto h = kruskalWallis(groups);
    const auto w = rankSum(groups[1], groups[0]);
    ASSERT_TRUE(h && w);
    EXPECT_NEAR(h->p, w->pNormal, 1e-12);
}

TEST(KruskalWallis, RefusesGroupsThatSayNothing)
{
    const auto kindOf = [](const RankedGroups& groups) {
        const auto result = kruskalWallis(groups);
        return result ? ErrorKind::Cancelled : result.error().kind;
    };
    EXPECT_EQ(kindOf({{1, 2, 3}}), ErrorKind::TooFew);
    EXPECT_EQ(kindOf({{1, 2, 3}, {}}), ErrorKind::TooFew);
    EXPECT_EQ(kindOf({{4, 4}, {4, 4, 4}}), ErrorKind::Invalid);
    EXPECT_EQ(kindOf({{4, std::nan("")}, {4, 4, 4}}), ErrorKind::Invalid);
}

TEST(Dunn, ComparesEveryPairOnceAndMirrorsWithTheOrder)
{
    const RankedGroups groups = {{1, 2, 2}, {3, 5, 6, 6}, {9, 9, 11}};
    const auto pairs = dunn(groups);
    const auto mirrored = dunn(RankedGroups{groups[1], groups[0], groups[2]});
    ASSERT_TRUE(pairs && mirrored);
    ASSERT_EQ(pairs->size(), 3U);
    EXPECT_NEAR((*pairs)[0].z, -(*mirrored)[0].z, 1e-12);
    EXPECT_NEAR((*pairs)[0].p, (*mirrored)[0].p, 1e-12);
    for (const DunnPair& pair : *pairs) {
        EXPECT_GE(pair.pHolm, pair.p);
        EXPECT_LE(pair.pHolm, pair.pBonferroni);
    }
}

TEST(RankSum, CountsAllSplitsOfASmallTrial)
{
    // 3 against 3 without overlap: 2 of the 20 splits are as far out.
    const auto apart = rankSum(std::vector<double>{7, 8, 9}, std::vector<double>{1, 2, 3});
    ASSERT_TRUE(apart);
    EXPECT_EQ(apart->u, 9);
    EXPECT_NEAR(apart->pExact.value(), 0.1, 1e-14);
    const auto other = rankSum(std::vector<double>{1, 2, 3}, std::vector<double>{7, 8, 9});
    EXPECT_EQ(other->u, 0);
    EXPECT_NEAR(other->pExact.value(), 0.1, 1e-14);
}

TEST(RankSum, IsCertainOfNothingInTheMiddle)
{
    const auto middle = rankSum(std::vector<double>{1, 4}, std::vector<double>{2, 3});
    ASSERT_TRUE(middle);
    EXPECT_EQ(middle->u, 2);
    EXPECT_EQ(middle->pExact.value(), 1);
    EXPECT_EQ(middle->pNormal, 1);
    EXPECT_EQ(middle->pNormalCorrected, 1);
}

TEST(RankSum, LeavesTheExactAnswerOutForLargeSamples)
{
    std::vector<double> y;
    std::vector<double> x;
    for (int i = 0; i < 50; ++i) {
        y.push_back(i);
        x.push_back(i + 0.5);
    }
    const auto within = rankSum(y, x);
    ASSERT_TRUE(within && within->pExact);
    EXPECT_NEAR(*within->pExact, within->pNormalCorrected, 0.002);
    x.push_back(60);
    EXPECT_FALSE(rankSum(y, x)->pExact);
}

TEST(RankSum, RefusesEmptyAndConstantSamples)
{
    const std::vector<double> none;
    const std::vector<double> same = {2, 2};
    EXPECT_EQ(rankSum(none, same).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(rankSum(same, same).error().kind, ErrorKind::Invalid);
}

TEST(SignedRank, CountsAllSigns)
{
    const auto result = signedRank(std::vector<double>{1, 2, 3, 0, 4, 5});
    ASSERT_TRUE(result);
    EXPECT_EQ(result->v, 15);
    EXPECT_EQ(result->zeroDifferences, 1U);
    EXPECT_NEAR(result->pExact.value(), 2.0 / 32, 1e-14);
    const auto mixed = signedRank(std::vector<double>{1, -2, 3, -4});
    EXPECT_EQ(mixed->v, 4);
    // Sums 0 to 4 and 6 to 10 lie as far out: 14 of the 16 signs (5 comes up twice).
    EXPECT_NEAR(mixed->pExact.value(), 14.0 / 16, 1e-14);
}

TEST(SignedRank, RefusesDifferencesThatAreAllZero)
{
    EXPECT_EQ(signedRank(std::vector<double>{0, 0}).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(signedRank(std::vector<double>{0, std::nan("")}).error().kind, ErrorKind::Invalid);
}
