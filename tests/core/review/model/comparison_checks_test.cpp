#include "core/review/model/comparison_checks.h"

#include "tests/core/review/comparison/comparison_samples.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule {
namespace {

std::vector<double> aroundMean(double mean)
{
    return {mean - 2, mean + 1, mean + 1};
}

TEST(ComparisonChecks, PointAtAnOddTrayAndKeepIt)
{
    ComparisonSamples season;
    season.addTrays(kMix, {249, 250, 251, 250, 252, 248, 250});
    season.addTrays(kMesh, {259, 260, 261, 260, 262, 258, 180});
    const TrayModel answer = season.model();
    ASSERT_EQ(answer.checks.oddTrays.size(), 1u);
    const OddTray& odd = answer.checks.oddTrays[0];
    EXPECT_EQ(odd.code, season.facts.trays.back().tray.code);
    EXPECT_EQ(odd.tray, season.facts.trays.back().tray.id);
    EXPECT_DOUBLE_EQ(odd.value, 180);
    EXPECT_GT(odd.expected, 240);
    EXPECT_LT(odd.p, 0.001);
    EXPECT_FALSE(answer.checks.normality->isNormal);
}

TEST(ComparisonChecks, SayWhereSpreadsAreUnlike)
{
    ComparisonSamples season;
    season.addTrays(kMix, {249, 250, 251, 250, 252, 248, 251, 249});
    season.addTrays(kMesh, {200, 320, 240, 290, 310, 215, 225, 300});
    EXPECT_FALSE(season.model().checks.spread->isAlike);
    ComparisonSamples alike;
    alike.addTrays(kMix, {249, 250, 251, 250, 252, 248});
    alike.addTrays(kMesh, {259, 260, 261, 260, 262, 258});
    const TrayModel answer = alike.model();
    EXPECT_TRUE(answer.checks.spread->isAlike);
    EXPECT_TRUE(answer.checks.normality->isNormal);
    EXPECT_TRUE(answer.checks.oddTrays.empty());
}

TEST(ComparisonChecks, PointAtAnOddTrayAmongRandomTrials)
{
    ComparisonSamples season;
    season.nameTrials(5);
    for (int trial = 1; trial <= 5; ++trial) {
        season.addTrays(kMix, aroundMean(250 + 9 * (trial % 3)), {1}, TrialId{trial});
        season.addTrays(kMesh, aroundMean(255 + 9 * (trial % 3)), {1}, TrialId{trial});
    }
    EXPECT_TRUE(season.model().checks.oddTrays.empty());
    season.facts.trays[4].yield = grams(330);
    const TrayModel answer = season.model();
    ASSERT_EQ(answer.checks.oddTrays.size(), 1u);
    EXPECT_EQ(answer.checks.oddTrays[0].tray, season.facts.trays[4].tray.id);
}

// Two groups of three, ±1 and ±3 about their means: t' = 10 / √(1/3 + 9/3), of which the square is
// Welch's F of two groups.
TEST(ComparisonChecks, GiveWelchsTestOnlyWhereTheMediumStandsAlone)
{
    ComparisonSamples season;
    season.addTrays(kMix, {249, 250, 251});
    season.addTrays(kMesh, {257, 260, 263});
    const TrayModel alone = season.model();
    ASSERT_TRUE(alone.checks.pWelch);
    // t' = 5.4772 on 2.4390 degrees of freedom (by Welch and Satterthwaite: (1/3 + 3)² /
    // ((1/3)² / 2 + 3² / 2)); the two-sided p lies between those of 2 and 3 degrees, which have
    // closed forms.
    const double t = 10 / std::sqrt(1.0 / 3 + 3);
    const double pOf2 = 1 - t / std::sqrt(2 + t * t);
    const double x = std::atan(t / std::sqrt(3.0));
    const double pOf3 = 1 - 2 / std::acos(-1.0) * (x + std::sin(x) * std::cos(x));
    EXPECT_LT(*alone.checks.pWelch, pOf2);
    EXPECT_GT(*alone.checks.pWelch, pOf3);
    for (std::size_t i = 0; i < season.facts.trays.size(); ++i) {
        season.facts.trays[i].tray.variety = VarietyId{static_cast<int>(i % 2) + 1};
    }
    EXPECT_FALSE(season.model().checks.pWelch) << "varieties are in the model too";
}

TEST(ComparisonChecks, SayNothingWhereAllAreAlike)
{
    ComparisonSamples season;
    season.addTrays(kMix, {250, 250, 250});
    season.addTrays(kMesh, {260, 260, 260});
    const DataChecks checks = season.model().checks;
    EXPECT_FALSE(checks.spread);
    EXPECT_FALSE(checks.normality);
    EXPECT_FALSE(checks.pWelch);
    EXPECT_TRUE(checks.oddTrays.empty());
}

TEST(ComparisonChecks, PutTheOddestFirst)
{
    ComparisonSamples season;
    season.addTrays(kMix, {249, 250, 251, 250, 252, 248, 250, 251, 249, 250, 251, 300});
    season.addTrays(kMesh, {259, 260, 261, 260, 262, 258, 260, 261, 259, 260, 261, 200});
    const auto odd = season.model().checks.oddTrays;
    ASSERT_EQ(odd.size(), 2u);
    EXPECT_EQ(odd[0].value, 200);
    EXPECT_EQ(odd[0].medium, 1u);
    EXPECT_EQ(odd[1].value, 300);
    EXPECT_LT(odd[0].p, odd[1].p);
    // The mean of its medium's twelve trays, 3051 g together.
    EXPECT_NEAR(odd[1].expected, 3051 / 12.0, 1e-9);
}

} // namespace
} // namespace plumule
