#include "tests/core/review/comparison/comparison_samples.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

// A filling of the mix costs 1.10, a use of the mesh 18/60 and its washing.
class CostPerGramTest : public testing::Test
{
protected:
    CostPerGramTest() { season.priceAsInTheHandbook(0.375); }

    [[nodiscard]] SeasonComparison compare(std::optional<double> margin = std::nullopt)
    {
        return season.compare(Response::CostPerGram, margin);
    }

    void washAt(double cleaning)
    {
        season.facts.cost.prices.clear();
        season.priceAsInTheHandbook(cleaning);
    }

    ComparisonSamples season;
};

TEST_F(CostPerGramTest, IsTheRatioOfSumsWithABootstrapInterval)
{
    season.addTrays(kMix, {200, 250, 300, 260});
    season.addTrays(kMesh, {240, 250, 260, 255});
    const SeasonComparison answer = compare();
    EXPECT_TRUE(answer.model.isBootstrap);
    EXPECT_NEAR(*answer.means[0].mean, 4 * 1.10 / 1010, 1e-12);
    EXPECT_NEAR(*answer.means[1].mean, 4 * 0.675 / 1005, 1e-12);
    EXPECT_LT(*answer.means[0].lower, *answer.means[0].mean);
    EXPECT_GT(*answer.means[0].upper, *answer.means[0].mean);
    const MediaPair& pair = answer.pairs.at(0);
    EXPECT_EQ(pair.verdict, PairVerdict::Less);
    EXPECT_NEAR(*pair.difference, 4 * 0.675 / 1005 - 4 * 1.10 / 1010, 1e-12);
    EXPECT_FALSE(pair.p);
    EXPECT_EQ(answer.margin.from, MarginFrom::Default);
}

TEST_F(CostPerGramTest, IsTheSameEachTime)
{
    season.addTrays(kMix, {200, 250, 300, 260});
    season.addTrays(kMesh, {240, 250, 260, 255});
    EXPECT_EQ(compare().pairs.at(0).lower, compare().pairs.at(0).lower);
    EXPECT_EQ(compare().means.at(0).upper, compare().means.at(0).upper);
}

TEST_F(CostPerGramTest, IsTheSameWithinAWideMarginAndCantBeToldWithinANarrowOne)
{
    washAt(0.8);
    season.addTrays(kMix, {200, 250, 300, 260});
    season.addTrays(kMesh, {200, 255, 300, 250});
    EXPECT_EQ(compare(0.01).pairs.at(0).verdict, PairVerdict::SameWithinMargin);
    const MediaPair pair = compare(1e-5).pairs.at(0);
    EXPECT_EQ(pair.verdict, PairVerdict::CantTellYet);
    ASSERT_TRUE(pair.needed);
    EXPECT_GT(pair.needed->moreOfA, 0);
}

TEST_F(CostPerGramTest, IsComparedWithinVarietiesSoThatUnlikeSharesDoNotCount)
{
    // Mesh is the cheaper in both varieties, but grew mostly the light one.
    season.addTrays(kMix, {200, 210}, {1});
    season.addTrays(kMix, {500, 510, 490, 505, 495, 500}, {2});
    season.addTrays(kMesh, {200, 210, 205, 195, 190, 200}, {1});
    season.addTrays(kMesh, {500, 510}, {2});
    washAt(0.7);
    const SeasonComparison answer = compare();
    EXPECT_GT(*answer.means[1].mean, *answer.means[0].mean) << "raw";
    EXPECT_EQ(answer.pairs[0].verdict, PairVerdict::Less);
    EXPECT_EQ(answer.pairs[0].nA, 8);
}

TEST_F(CostPerGramTest, IsNotComparableWithoutAVarietyInCommon)
{
    season.addTrays(kMix, {200, 210, 220}, {1});
    season.addTrays(kMesh, {200, 210, 230}, {2});
    EXPECT_EQ(compare().pairs.at(0).verdict, PairVerdict::NotComparable);
}

TEST_F(CostPerGramTest, HasNoVerdictOnOneTrayEachOrOnePerVariety)
{
    season.addTrays(kMix, {200}, {1});
    season.addTrays(kMesh, {210}, {1});
    EXPECT_EQ(compare().pairs.at(0).why, WhyNoVerdict::OneTray);
    season.addTrays(kMix, {400}, {2});
    season.addTrays(kMesh, {410}, {2});
    const MediaPair pair = compare().pairs.at(0);
    EXPECT_EQ(pair.verdict, PairVerdict::NoVerdict);
    EXPECT_EQ(pair.why, WhyNoVerdict::TooFewTrays);
    ASSERT_TRUE(pair.needed);
    EXPECT_EQ(pair.needed->from, SpreadFrom::Default);
}

TEST_F(CostPerGramTest, LeavesOutTraysWithoutAPrice)
{
    season.facts.cost.prices.clear();
    season.addTrays(kMix, {200, 210});
    EXPECT_EQ(compare().n, 0);
    EXPECT_EQ(compare().withoutValue, 2);
}

} // namespace
} // namespace plumule
