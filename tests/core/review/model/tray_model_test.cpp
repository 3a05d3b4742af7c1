#include "core/review/model/tray_model.h"

#include "tests/core/review/comparison/comparison_samples.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

// Two groups of three, each with a variance of 3: se = √(3 · 2/3), four degrees of freedom, where
// t(0.975) = 2.776445 (any table of t). Of two means Tukey's interval is that of t.
TEST(TrayModel, OfTwoMediaIsTheTTest)
{
    ComparisonSamples season;
    season.addTrays(kMix, {248, 251, 251});
    season.addTrays(kMesh, {258, 261, 261});
    const TrayModel answer = season.model();
    ASSERT_EQ(answer.pairs.size(), 1u);
    const ModelPair& pair = answer.pairs[0];
    EXPECT_EQ(pair.a, 1u) << "the later one first";
    EXPECT_EQ(pair.b, 0u);
    EXPECT_NEAR(*pair.difference, 10, 1e-9);
    EXPECT_NEAR(*pair.se, std::sqrt(2.0), 1e-9);
    EXPECT_EQ(pair.df, 4);
    EXPECT_NEAR(*pair.lower, 10 - 2.776445 * std::sqrt(2.0), 1e-4);
    EXPECT_NEAR(*pair.upper, 10 + 2.776445 * std::sqrt(2.0), 1e-4);
    // t² = 50 on four degrees of freedom, whose distribution has a closed form:
    // p = 1 − s (3 − s²) / 2 with s = √(50/54).
    const double s = std::sqrt(50.0 / 54);
    EXPECT_NEAR(*pair.p, 1 - s * (3 - s * s) / 2, 1e-6);
    const AdjustedMean& mesh = answer.means.at(1);
    EXPECT_EQ(mesh.medium.id, kMesh);
    EXPECT_NEAR(*mesh.se, 1, 1e-9) << "√(3/3)";
    EXPECT_NEAR(*mesh.lower, 260 - 2.776445, 1e-5);
    EXPECT_NEAR(*mesh.upper, 260 + 2.776445, 1e-5);
}

// 240 and 260: sd √200, t(0.975) on one degree of freedom 12.7062 (any table of t).
TEST(TrayModel, OfOneMediumIsItsPlainMean)
{
    ComparisonSamples season;
    season.addTrays(kMix, {240, 260});
    const TrayModel answer = season.model();
    EXPECT_TRUE(answer.model.terms.empty());
    EXPECT_TRUE(answer.pairs.empty());
    EXPECT_EQ(answer.sd, 0);
    ASSERT_EQ(answer.means.size(), 1u);
    EXPECT_TRUE(answer.means[0].isEstimable);
    EXPECT_EQ(answer.means[0].n, 2);
    EXPECT_NEAR(*answer.means[0].lower, 250 - 127.062, 1e-3);
    EXPECT_NEAR(*answer.means[0].upper, 250 + 127.062, 1e-3);
    EXPECT_FALSE(answer.means[0].se);
}

TEST(TrayModel, WithATrayEachHasMeansAndNoSpread)
{
    ComparisonSamples season;
    season.addTrays(kMix, {240});
    season.addTrays(kMesh, {260});
    const TrayModel answer = season.model();
    ASSERT_EQ(answer.means.size(), 2u);
    EXPECT_EQ(answer.means[0].mean, 240.0);
    EXPECT_EQ(answer.means[1].mean, 260.0);
    EXPECT_FALSE(answer.means[1].lower);
    EXPECT_TRUE(answer.pairs.empty());
    EXPECT_FALSE(answer.df);
}

TEST(TrayModel, WithoutSpreadHasDifferencesAndNoP)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 250, 250});
    season.addTrays(kMesh, {260, 260, 260});
    const ModelPair pair = season.model().pairs.at(0);
    EXPECT_NEAR(*pair.difference, 10, 1e-9);
    EXPECT_FALSE(pair.p || pair.lower || pair.upper || pair.se);
}

TEST(TrayModel, LeavesOutMediaOfWhichAllTraysFailed)
{
    ComparisonSamples season;
    season.addTrays(kMix, {240, 260});
    season.addTrays(kMesh, {250});
    season.discard(2);
    const TrayModel answer = season.model();
    ASSERT_EQ(answer.means.size(), 1u);
    EXPECT_EQ(answer.means[0].medium.id, kMix);
}

// Varieties that no medium shares: what is the medium's can't be told from what is theirs.
TEST(TrayModel, SaysWhichMeansCantBeTold)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 251, 252}, {1});
    season.addTrays(kMesh, {400, 401, 402}, {2});
    const TrayModel answer = season.model();
    ASSERT_EQ(answer.means.size(), 2u);
    EXPECT_FALSE(answer.means[0].isEstimable);
    EXPECT_FALSE(answer.means[0].mean);
    ASSERT_EQ(answer.pairs.size(), 1u);
    EXPECT_FALSE(answer.pairs[0].difference);
    EXPECT_FALSE(answer.pairs[0].p);
}

} // namespace
} // namespace plumule
