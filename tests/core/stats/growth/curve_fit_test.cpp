#include "core/stats/growth/curve_fit.h"

#include "core/stats/probability/distributions.h"
#include "tests/core/stats/growth/other_curves.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

using namespace plumule;
using namespace plumule::stats;

namespace {

// NIST StRD Rat42 (Ratkowsky 1983, pp. 61 and 88), pasture regrowth.
const std::vector<double> kDays = {9, 14, 21, 28, 42, 57, 63, 70, 79};
const std::vector<double> kPasture = {8.93, 10.80, 18.59, 22.33, 39.35, 56.11, 61.73, 64.62, 67.08};

CurveFit pastureFit()
{
    const std::vector<std::vector<double>> starts = {{75, 36, 14}};
    return fitCurve(logisticCurve(), kDays, kPasture, starts).value();
}

std::vector<double> valuesOf(const CurveModelPtr& model, const std::vector<double>& p,
                             const std::vector<double>& x)
{
    std::vector<double> y;
    for (const double place : x) {
        y.push_back(model->value(place, p, {}));
    }
    return y;
}

} // namespace

TEST(CurveFit, ReachesElevenCertifiedDigits)
{
    const std::vector<std::vector<double>> starts = {{75, 2.5, 0.07}};
    const CurveFit fit =
        fitCurve(reference::logisticCurveByRate(), kDays, kPasture, starts).value();
    // NIST StRD, certified values of Rat42.
    EXPECT_NEAR(fit.estimates[0], 7.2462237576e1, 1e-9);
    EXPECT_NEAR(fit.estimates[1], 2.6180768402, 1e-10);
    EXPECT_NEAR(fit.estimates[2], 6.7359200066e-2, 1e-12);
    EXPECT_NEAR(fit.se(0), 1.7340283401, 1e-9);
    EXPECT_NEAR(fit.rss, 8.0565229338, 1e-9);
}

TEST(CurveFit, FindsBoxBodFromItsFarStart)
{
    // NIST StRD BoxBOD (Box, Hunter and Hunter 1978); start 1 is known to be hard.
    const std::vector<double> x = {1, 2, 3, 5, 7, 10};
    const std::vector<double> y = {109, 149, 149, 191, 213, 224};
    const std::vector<std::vector<double>> starts = {{1, 1}};
    const auto fit = fitCurve(reference::saturationCurve(), x, y, starts);
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->estimates[0], 2.1380940889e2, 1e-7);
    EXPECT_NEAR(fit->estimates[1], 5.4723748542e-1, 1e-10);
}

TEST(CurveFit, CountsTheVarianceInAkaikesCriterion)
{
    const CurveFit fit = pastureFit();
    const double n = 9;
    const double aic = n * std::log(2 * M_PI * fit.rss / n) + n + 2 * 4;
    EXPECT_NEAR(fit.aicc.value(), aic + 2.0 * 4 * 5 / (9 - 4 - 1), 1e-10);
}

TEST(CurveFit, HasNoCorrectedCriterionWhereItsDenominatorIsGone)
{
    const std::vector<double> x = {1, 3, 5, 7, 9};
    const std::vector<double> y = {2.1, 11, 31, 45, 49.5};
    const std::vector<std::vector<double>> starts = {{50, 4.5, 1.2}};
    const auto fit = fitCurve(logisticCurve(), x, y, starts);
    ASSERT_TRUE(fit);
    EXPECT_FALSE(fit->aicc);
}

TEST(CurveFit, WidensWithTheLevel)
{
    const CurveFit fit = pastureFit();
    const CurvePoint point = curveAt(fit, 50);
    const double t = tQuantile(0.975, 6);
    EXPECT_NEAR(point.upper - point.fit, t * point.se, 1e-10);
    EXPECT_LT(curveAt(fit, 50, 0.8).upper, point.upper);
}

TEST(CurveFit, TurnsAHeightBackIntoItsDay)
{
    const CurveFit fit = pastureFit();
    const auto day = xAtHeight(fit, 40);
    ASSERT_TRUE(day);
    EXPECT_NEAR(curveAt(fit, day->estimate).fit, 40, 1e-9);
    // Both ways of asking for 90 % agree in value; the height itself is uncertain in one only.
    const auto ripe = xAtFraction(fit, 0.9);
    const auto tall = xAtHeight(fit, 0.9 * fit.estimates[0]);
    EXPECT_NEAR(ripe->estimate, tall->estimate, 1e-9);
    EXPECT_NE(ripe->se, tall->se);
    // At a fixed height the day's error is the height's error over the slope there.
    const double slope = fit.model->slope(day->estimate, fit.estimates);
    EXPECT_NEAR(day->se, curveAt(fit, day->estimate).se / slope, 1e-9);
}

TEST(CurveFit, SaysWhatACurveDoesNotHave)
{
    const CurveFit fit = pastureFit();
    EXPECT_EQ(xAtHeight(fit, 200).error().kind, ErrorKind::NotEstimable);
    EXPECT_EQ(xAtHeight(fit, -1).error().kind, ErrorKind::NotEstimable);
    EXPECT_EQ(xAtFraction(fit, 1).error().kind, ErrorKind::Invalid);
}

TEST(CurveFit, FitsReadingsWithoutAnyError)
{
    const std::vector<double> x = {1, 2, 4, 6, 8, 10, 12};
    const std::vector<double> truth = {70, 6, 1.3};
    const auto y = valuesOf(logisticCurve(), truth, x);
    const std::vector<std::vector<double>> starts = {{60, 5, 2}};
    const auto fit = fitCurve(logisticCurve(), x, y, starts);
    ASSERT_TRUE(fit);
    for (std::size_t i = 0; i < truth.size(); ++i) {
        EXPECT_NEAR(fit->estimates[i], truth[i], 1e-8);
    }
    EXPECT_LT(fit->residualSd, 1e-8);
}

TEST(CurveFit, RefusesWhatCannotBeFitted)
{
    const std::vector<std::vector<double>> starts = {{70, 6, 1.3}};
    const auto kindOf = [&](std::vector<double> x, std::vector<double> y) {
        return fitCurve(logisticCurve(), x, y, starts).error().kind;
    };
    EXPECT_EQ(kindOf({1, 2, 3}, {1, 2, 3}), ErrorKind::TooFew);
    EXPECT_EQ(kindOf({1, 1, 2, 2, 2}, {1, 2, 3, 4, 5}), ErrorKind::TooFew);
    EXPECT_EQ(kindOf({1, 2, 3, 4, 5}, {1, 2, 3, 4}), ErrorKind::Invalid);
    EXPECT_EQ(kindOf({1, 2, 3, 4, 5}, {1, 2, std::nan(""), 4, 5}), ErrorKind::Invalid);
    EXPECT_EQ(kindOf({1, 2, 3, 4, std::numeric_limits<double>::infinity()}, {1, 2, 3, 4, 5}),
              ErrorKind::Invalid);
}

TEST(CurveFit, SaysThatGrowthWithoutAnEndHasNoFullHeight)
{
    std::vector<double> x;
    std::vector<double> y;
    for (int day = 1; day <= 10; ++day) {
        x.push_back(day);
        y.push_back(2 * std::exp(0.35 * day));
    }
    const std::vector<std::vector<double>> starts = {{100, 8, 2}};
    const auto fit = fitCurve(logisticCurve(), x, y, starts);
    ASSERT_FALSE(fit);
    EXPECT_EQ(fit.error().kind, ErrorKind::NoConvergence);
    EXPECT_EQ(fit.error().values, std::vector<std::string>{"logistic"});
}

TEST(CurveFit, TakesTheLeastOfAllStartsWhenAsked)
{
    // (p² − 1)² + 0.09·(p − 1)² has a false minimum near −1 and the true one at 1.
    CurveModel wells;
    wells.name = "wells";
    wells.parameterNames = {"p"};
    wells.value = [](double x, CurveModel::Parameters p, CurveModel::Gradient gradient) {
        if (!gradient.empty()) {
            gradient[0] = x < 2 ? 2 * p[0] : 0.3;
        }
        return x < 2 ? p[0] * p[0] - 1 : 0.3 * p[0];
    };
    const auto model = std::make_shared<const CurveModel>(wells);
    const std::vector<double> x = {1, 2};
    const std::vector<double> y = {0, 0.3};
    const std::vector<std::vector<double>> starts = {{-1.2}, {0.8}};
    const auto first = fitCurve(model, x, y, starts);
    const auto all = fitCurve(model, x, y, starts, StartsTried::All);
    ASSERT_TRUE(first && all);
    EXPECT_LT(first->estimates[0], -0.9);
    EXPECT_NEAR(all->estimates[0], 1, 1e-9);
}
