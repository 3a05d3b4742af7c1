#include "core/stats/samples/regression.h"

#include "core/stats/probability/distributions.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule;
using namespace plumule::stats;

namespace {

const std::vector<double> kLineX = {1, 2, 3, 4, 5, 6, 7};
const std::vector<double> kLineY = {2.1, 3.9, 6.2, 7.8, 10.1, 12.2, 13.8};

} // namespace

TEST(FitLine, LeavesItsIntervalsAroundTheEstimates)
{
    const auto line = fitLine(kLineX, kLineY);
    ASSERT_TRUE(line);
    EXPECT_NEAR(line->slope, 55.6 / 28, 1e-12);
    EXPECT_EQ(line->df, 5);
    const double t = tQuantile(0.975, 5);
    EXPECT_NEAR(line->slopeUpper - line->slope, t * line->slopeSe, 1e-12);
    EXPECT_NEAR(line->intercept - line->interceptLower, t * line->interceptSe, 1e-12);
    EXPECT_NEAR(line->f, line->slopeT * line->slopeT, 1e-6 * line->f);
    EXPECT_LT(fitLine(kLineX, kLineY, 0.8)->slopeUpper, line->slopeUpper);
}

TEST(FitLine, IsNarrowestAtTheMeanAndWiderForAReading)
{
    const auto line = fitLine(kLineX, kLineY);
    ASSERT_TRUE(line);
    const LinePoint middle = lineAt(*line, 4);
    EXPECT_NEAR(middle.se, line->residualSd / std::sqrt(7.0), 1e-12);
    EXPECT_GT(lineAt(*line, 7).se, middle.se);
    EXPECT_GT(middle.readingUpper, middle.upper);
    // At x = 0 the line is its intercept.
    EXPECT_NEAR(lineAt(*line, 0).se, line->interceptSe, 1e-12);
}

TEST(FitLine, KeepsItsDigitsFarFromZero)
{
    std::vector<double> x;
    std::vector<double> y;
    for (int i = 0; i < 20; ++i) {
        x.push_back(1e9 + i);
        y.push_back(5e9 + 3.0 * i);
    }
    const auto line = fitLine(x, y);
    ASSERT_TRUE(line);
    EXPECT_NEAR(line->slope, 3, 1e-12);
    EXPECT_NEAR(line->rSquared, 1, 1e-15);
}

TEST(FitLine, RefusesPointsWithoutALine)
{
    const std::vector<double> same = {2, 2, 2};
    const std::vector<double> three = {1, 2, 3};
    const std::vector<double> two = {1, 2};
    const std::vector<double> gap = {1, std::nan(""), 3};
    EXPECT_EQ(fitLine(two, two).error().kind, ErrorKind::TooFew);
    EXPECT_EQ(fitLine(same, three).error().subject, "line.constant");
    EXPECT_EQ(fitLine(three, gap).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(fitLine(two, three).error().kind, ErrorKind::Invalid);
    EXPECT_EQ(fitLine(three, same)->rSquared, 0);
}

TEST(TheilSen, IsNotMovedByOneWildReading)
{
    auto y = kLineY;
    y[6] = 500;
    const auto robust = theilSen(kLineX, y);
    const auto line = fitLine(kLineX, y);
    ASSERT_TRUE(robust && line);
    EXPECT_NEAR(robust->slope, 2, 0.2);
    EXPECT_GT(line->slope, 20);
    EXPECT_EQ(robust->slopes, 21U);
    EXPECT_LE(robust->lower, robust->slope);
    EXPECT_GE(robust->upper, robust->slope);
}

TEST(TheilSen, PassesOverPairsAtOnePlace)
{
    const auto robust = theilSen(std::vector<double>{1, 1, 2, 3}, std::vector<double>{1, 2, 3, 5});
    ASSERT_TRUE(robust);
    EXPECT_EQ(robust->slopes, 5U);
    // Slopes 2, 2, 1, 1.5, 2.
    EXPECT_EQ(robust->slope, 2);
    // Residuals −1, 0, −1, −1.
    EXPECT_EQ(robust->intercept, -1);
}

TEST(TheilSen, SpansAllSlopesWhereThePointsAreFew)
{
    const auto robust = theilSen(std::vector<double>{1, 2, 3}, std::vector<double>{1, 2, 5});
    ASSERT_TRUE(robust);
    EXPECT_EQ(robust->lower, 1);
    EXPECT_EQ(robust->upper, 3);
    EXPECT_EQ(theilSen(std::vector<double>{2, 2}, std::vector<double>{1, 3}).error().kind,
              ErrorKind::Invalid);
}

TEST(Correlations, SeeARiseThatIsNotStraight)
{
    const std::vector<double> x = {1, 2, 3, 4, 5};
    const std::vector<double> y = {1, 4, 9, 16, 80};
    const auto together = correlations(x, y);
    ASSERT_TRUE(together);
    EXPECT_NEAR(together->spearman, 1, 1e-14);
    EXPECT_NEAR(together->kendallTauB, 1, 1e-14);
    EXPECT_LT(together->pearson, 0.9);
    // The test of r is the test of the slope.
    EXPECT_NEAR(together->pearsonP, fitLine(x, y)->slopeP, 1e-12);
}

TEST(Correlations, TakeTiesIntoAccount)
{
    const auto together =
        correlations(std::vector<double>{1, 1, 2, 3}, std::vector<double>{4, 3, 3, 1});
    ASSERT_TRUE(together);
    // 4 discordant pairs, 5 untied in x, 5 untied in y.
    EXPECT_NEAR(together->kendallTauB, -4.0 / 5, 1e-14);
}

TEST(Correlations, RefuseAConstant)
{
    const std::vector<double> same = {2, 2, 2};
    const std::vector<double> three = {1, 2, 3};
    EXPECT_EQ(correlations(same, three).error().subject, "correlation.constant");
    EXPECT_EQ(correlations(three, same).error().kind, ErrorKind::Invalid);
}
