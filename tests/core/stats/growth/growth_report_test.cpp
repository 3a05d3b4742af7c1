#include "core/stats/growth/growth_report.h"

#include <cmath>
#include <gtest/gtest.h>

using namespace plumule;
using namespace plumule::stats;

namespace {

// Heights of an invented tray, mm by day.
const std::vector<double> kDay = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11};
const std::vector<double> kHeight = {4, 8, 15, 26, 41, 55, 66, 73, 77, 79};

} // namespace

TEST(GrowthReport, SaysAllThatTheCommandPrints)
{
    const auto report = growthReport(kDay, kHeight, {GrowthCurve::Logistic, {4.5, 12}, {}});
    ASSERT_TRUE(report);
    EXPECT_EQ(report->curveName, "logistic");
    EXPECT_EQ(report->n, 10U);
    EXPECT_EQ(report->df, 7);
    ASSERT_EQ(report->parameters.size(), 3U);
    EXPECT_EQ(report->parameters[0].name, "A");
    EXPECT_EQ(report->parameters[1].name, "tm");
    EXPECT_EQ(report->parameters[2].name, "s");
    const double full = report->parameters[0].value.estimate;
    const double middle = report->parameters[1].value.estimate;
    const double scale = report->parameters[2].value.estimate;
    EXPECT_NEAR(report->topRate.estimate, full / (4 * scale), 1e-12 * full);
    EXPECT_NEAR(report->xAt90pct.estimate, middle + scale * std::log(9.0), 1e-12 * middle);
    ASSERT_EQ(report->at.size(), 2U);
    EXPECT_NEAR(report->at[0].fit, full / (1 + std::exp((middle - 4.5) / scale)), 1e-10);
    EXPECT_NEAR(report->residualSd, std::sqrt(report->rss / 7), 1e-12);
    EXPECT_TRUE(report->aicc);
    EXPECT_TRUE(report->fullHeightSeen);
}

TEST(GrowthReport, NamesTheParametersOfEachCurve)
{
    const auto gompertz = growthReport(kDay, kHeight, {GrowthCurve::Gompertz, {}, {}});
    const auto richards = growthReport(kDay, kHeight, {GrowthCurve::Richards, {}, {}});
    ASSERT_TRUE(gompertz && richards);
    EXPECT_EQ(gompertz->curveName, "gompertz");
    const double rate = gompertz->parameters[0].value.estimate /
                        gompertz->parameters[2].value.estimate / std::exp(1.0);
    EXPECT_NEAR(gompertz->topRate.estimate, rate, 1e-12 * rate);
    ASSERT_EQ(richards->parameters.size(), 4U);
    EXPECT_EQ(richards->parameters[3].name, "d");
    EXPECT_EQ(richards->df, 6);
}

TEST(GrowthReport, TakesTheBestOfTheThreeWhereNoneIsNamed)
{
    const auto best = growthReport(kDay, kHeight, {});
    ASSERT_TRUE(best);
    for (const GrowthCurve curve :
         {GrowthCurve::Logistic, GrowthCurve::Gompertz, GrowthCurve::Richards}) {
        const auto rival = growthReport(kDay, kHeight, {curve, {}, {}});
        ASSERT_TRUE(rival);
        EXPECT_LE(*best->aicc, *rival->aicc);
    }
}

TEST(GrowthReport, TellsWhenAHeightIsReachedAndThatAnotherNeverIs)
{
    const auto report = growthReport(kDay, kHeight, {GrowthCurve::Logistic, {}, {40, 500, -3}});
    ASSERT_TRUE(report);
    ASSERT_EQ(report->toHeight.size(), 3U);
    const double full = report->parameters[0].value.estimate;
    const double middle = report->parameters[1].value.estimate;
    const double scale = report->parameters[2].value.estimate;
    const CurveEstimate& day = report->toHeight[0].x.value();
    EXPECT_EQ(report->toHeight[0].height, 40);
    // The logistic curve turned round.
    EXPECT_NEAR(day.estimate, middle + scale * std::log(40 / (full - 40)), 1e-10);
    EXPECT_LT(day.lower, day.estimate);
    EXPECT_GT(day.upper, day.estimate);
    EXPECT_FALSE(report->toHeight[1].x);
    EXPECT_FALSE(report->toHeight[2].x);
}

TEST(GrowthReport, SaysWhenTheFullHeightIsOnlyForetold)
{
    const std::vector<double> day(kDay.begin(), kDay.begin() + 6);
    const std::vector<double> height(kHeight.begin(), kHeight.begin() + 6);
    const auto report = growthReport(day, height, {GrowthCurve::Logistic, {}, {}});
    ASSERT_TRUE(report);
    EXPECT_FALSE(report->fullHeightSeen);
    EXPECT_GT(report->xAt90pct.estimate, 7);
}

TEST(GrowthReport, NarrowsWithALowerLevel)
{
    const auto wide = growthReport(kDay, kHeight, {GrowthCurve::Logistic, {}, {}});
    const auto narrow = growthReport(kDay, kHeight, {GrowthCurve::Logistic, {}, {}, 0.8});
    ASSERT_TRUE(wide && narrow);
    EXPECT_EQ(wide->topRate.estimate, narrow->topRate.estimate);
    EXPECT_GT(wide->topRate.upper, narrow->topRate.upper);
}

TEST(GrowthReport, RefusesALevelOrAPlaceOutOfRange)
{
    const double nowhere = std::nan("");
    EXPECT_TRUE(growthReport(kDay, kHeight, {{}, {}, {}, 1}).error().is(CurveReason::Level));
    for (const GrowthAsk& ask : {GrowthAsk{{}, {nowhere}, {}}, GrowthAsk{{}, {}, {nowhere}}}) {
        EXPECT_TRUE(growthReport(kDay, kHeight, ask).error().is(CurveReason::AskedNotFinite));
    }
    const std::vector<double> two = {1, 2};
    EXPECT_EQ(growthReport(two, two, {}).error().kind, ErrorKind::TooFew);
}
