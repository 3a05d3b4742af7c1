#include "core/stats/growth/growth_fit.h"

#include "core/stats/probability/steady_draw.h"
#include "tests/support/told.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule;
using namespace plumule::stats;

namespace {

// Uniform over −1..1 from the steady draw, enough for the readings' scatter.
double scatter(SteadyDraw& draw)
{
    return static_cast<double>(draw.below(2'000'001)) / 1e6 - 1;
}

std::vector<double> days(int count)
{
    std::vector<double> x;
    for (int day = 1; day <= count; ++day) {
        x.push_back(day);
    }
    return x;
}

std::vector<double> grown(GrowthCurve curve, const std::vector<double>& p,
                          const std::vector<double>& x, double noise, SteadyDraw& draw)
{
    std::vector<double> y;
    for (const double day : x) {
        y.push_back(growthModel(curve)->value(day, p, {}) + noise * p[0] * scatter(draw));
    }
    return y;
}

} // namespace

TEST(GrowthFit, FindsItsOwnStartForEveryInventedTray)
{
    SteadyDraw draw(11);
    const auto x = days(12);
    for (int tray = 0; tray < 300; ++tray) {
        const std::vector<double> truth = {75 + 15 * scatter(draw), 6 + 3 * scatter(draw),
                                           1.4 + 0.7 * scatter(draw)};
        for (const GrowthCurve curve : {GrowthCurve::Logistic, GrowthCurve::Gompertz}) {
            const auto y = grown(curve, truth, x, 0.03, draw);
            const auto fit = fitGrowth(curve, x, y);
            ASSERT_TRUE(fit) << "tray " << tray << ": " << told(fit.error());
            EXPECT_NEAR(fit->estimates[1], truth[1], 8 * fit->se(1)) << "tray " << tray;
            // Nothing better is found from the truth itself.
            const std::vector<std::vector<double>> starts = {truth};
            const auto again = fitCurve(growthModel(curve), x, y, starts);
            if (again) {
                EXPECT_LE(fit->rss, again->rss * (1 + 1e-9)) << "tray " << tray;
            }
        }
    }
}

TEST(GrowthFit, FindsRichardsNoWorseThanTheLogisticWithinIt)
{
    SteadyDraw draw(12);
    const auto x = days(14);
    int found = 0;
    for (int tray = 0; tray < 50; ++tray) {
        const std::vector<double> truth = {80, 7 + scatter(draw), 1, 1.8 + scatter(draw)};
        const auto y = grown(GrowthCurve::Richards, truth, x, 0.01, draw);
        const auto logistic = fitGrowth(GrowthCurve::Logistic, x, y);
        const auto richards = fitGrowth(GrowthCurve::Richards, x, y);
        ASSERT_TRUE(logistic);
        if (!richards) {
            EXPECT_EQ(richards.error().kind, ErrorKind::NoConvergence);
            continue;
        }
        ++found;
        EXPECT_LE(richards->rss, logistic->rss * (1 + 1e-9));
    }
    EXPECT_GE(found, 45);
}

TEST(GrowthFit, DoesNotMindTheUnitsOfTimeAndHeight)
{
    SteadyDraw draw(13);
    const auto x = days(12);
    const auto y = grown(GrowthCurve::Logistic, {80, 6, 1.2}, x, 0.02, draw);
    std::vector<double> minutes;
    std::vector<double> metres;
    for (std::size_t i = 0; i < x.size(); ++i) {
        minutes.push_back(1440 * x[i] + 1e6);
        metres.push_back(y[i] / 1000);
    }
    const auto fit = fitGrowth(GrowthCurve::Logistic, x, y);
    const auto scaled = fitGrowth(GrowthCurve::Logistic, minutes, metres);
    ASSERT_TRUE(fit && scaled);
    EXPECT_NEAR(scaled->estimates[0], fit->estimates[0] / 1000, 1e-10);
    EXPECT_NEAR((scaled->estimates[1] - 1e6) / 1440, fit->estimates[1], 1e-7);
    EXPECT_NEAR(scaled->se(2) / 1440, fit->se(2), 1e-7);
}

TEST(GrowthFit, TakesSeveralReadingsADayAndDaysInAnyOrder)
{
    const std::vector<double> x = {9, 2, 2, 5, 5, 5, 9, 12, 12, 7};
    const std::vector<double> y = {70, 6, 7.5, 30, 27, 31, 67, 77, 80, 51};
    const auto fit = fitGrowth(GrowthCurve::Logistic, x, y);
    ASSERT_TRUE(fit);
    EXPECT_EQ(fit->df, 7);
    EXPECT_NEAR(fit->estimates[0], 80, 6);
}

TEST(GrowthFit, SaysWhyThereIsNoCurve)
{
    const auto errorOf = [](const std::vector<double>& x, const std::vector<double>& y) {
        const auto fit = fitGrowth(GrowthCurve::Logistic, x, y);
        return fit ? Error{ErrorKind::Cancelled} : fit.error();
    };
    EXPECT_EQ(errorOf({}, {}).kind, ErrorKind::TooFew);
    EXPECT_EQ(errorOf({1, 2, 3}, {5, 20, 40}),
              fail(ErrorKind::TooFew, CurveReason::TooFewReadings, 3, 4).value());
    EXPECT_EQ(errorOf({1, 1, 4, 4, 4}, {5, 6, 20, 21, 20}),
              fail(ErrorKind::TooFew, CurveReason::TooFewPlaces, 2, 3).value());
    EXPECT_EQ(errorOf({1, 2, 3, 4, 5}, {7, 7, 7, 7, 7}),
              fail(ErrorKind::Invalid, CurveReason::AllAlike).value());
    // A step from one day to the next has no steepness that could be told.
    EXPECT_EQ(errorOf({1, 2, 3, 4, 5, 6}, {0, 0, 0, 9, 9, 9}).kind, ErrorKind::NoConvergence);
}

TEST(GrowthFit, ChoosesTheCurveOfLeastAicc)
{
    SteadyDraw draw(14);
    const auto x = days(14);
    const auto readings = grown(GrowthCurve::Logistic, {80, 6, 1.2}, x, 0.01, draw);
    const auto logistic = fitBestGrowth(x, readings);
    const auto gompertz = fitBestGrowth(x, grown(GrowthCurve::Gompertz, {80, 5, 2}, x, 0.01, draw));
    ASSERT_TRUE(logistic && gompertz);
    EXPECT_EQ(logistic->curve, GrowthCurve::Logistic);
    EXPECT_EQ(gompertz->curve, GrowthCurve::Gompertz);
    for (const GrowthCurve curve :
         {GrowthCurve::Logistic, GrowthCurve::Gompertz, GrowthCurve::Richards}) {
        const auto rival = fitGrowth(curve, x, readings);
        if (rival) {
            EXPECT_GE(*rival->aicc, *logistic->fit.aicc);
        }
    }
}

TEST(GrowthFit, ChoosesByResidualsWhereAiccIsUnknown)
{
    const std::vector<double> x = {1, 4, 6, 8, 11};
    const std::vector<double> y = {1.3, 12.6, 41.1, 66.2, 79.0};
    const auto best = fitBestGrowth(x, y);
    ASSERT_TRUE(best);
    EXPECT_FALSE(best->fit.aicc);
    const auto logistic = fitGrowth(GrowthCurve::Logistic, x, y);
    const auto gompertz = fitGrowth(GrowthCurve::Gompertz, x, y);
    ASSERT_TRUE(logistic && gompertz);
    EXPECT_EQ(best->fit.rss, std::min(logistic->rss, gompertz->rss));
}

TEST(GrowthFit, TellsOfEveryCurveThatFailed)
{
    const std::vector<double> x = {1, 2, 3};
    const std::vector<double> y = {5, 20, 40};
    EXPECT_EQ(fitBestGrowth(x, y).error().kind, ErrorKind::TooFew);
}
