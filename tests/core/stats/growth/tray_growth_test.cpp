#include "core/stats/growth/tray_growth.h"

#include "core/stats/probability/distributions.h"

#include <cmath>
#include <gtest/gtest.h>

namespace plumule::stats {
namespace {

// Logistic curves of full height 80 and pace 1.4, read daily to the tenth of a millimetre.
void addTray(std::vector<TrayReading>& readings, double middle, std::size_t sowing = 0)
{
    const std::size_t tray = readings.empty() ? 0 : readings.back().tray + 1;
    for (int day = 3; day <= 13; ++day) {
        const double height = 80 / (1 + std::exp((middle - day) / 1.4));
        readings.push_back({static_cast<double>(day), std::round(10 * height) / 10, tray, sowing});
    }
}

TrayGrowth grown(const std::vector<TrayReading>& readings)
{
    return trayGrowth(readings, {GrowthCurve::Logistic, {6}, {40, 200}}).value();
}

// Curves that are the same but for their middle: the interval of the middle is that of a mean.
TEST(TrayGrowth, HasTheIntervalOfAMeanOverTrays)
{
    std::vector<TrayReading> readings;
    const std::vector<double> middles = {5.8, 6.0, 6.1, 6.4, 5.9};
    double mean = 0;
    for (const double middle : middles) {
        addTray(readings, middle);
        mean += middle / 5;
    }
    double squares = 0;
    for (const double middle : middles) {
        squares += std::pow(middle - mean, 2);
    }
    const TrayGrowth growth = grown(readings);
    ASSERT_TRUE(growth.hasIntervals);
    EXPECT_EQ(growth.trays, 5U);
    EXPECT_EQ(growth.replicate, GrowthReplicate::Tray);
    const CurveEstimate& middle = growth.report.parameters[1].value;
    EXPECT_NEAR(middle.estimate, mean, 0.01);
    const double se = std::sqrt(squares / 4 / 5);
    EXPECT_NEAR(middle.se, se, 0.03 * se);
    EXPECT_NEAR(middle.upper - middle.estimate, tQuantile(0.975, 4) * middle.se, 1e-9);
}

TEST(TrayGrowth, TakesSowingsForWhatRepeatsFromThreeOn)
{
    std::vector<TrayReading> readings;
    for (const double middle : {5.9, 6.0, 6.1}) {
        addTray(readings, middle, 0);
        addTray(readings, middle + 0.6, 1);
    }
    const TrayGrowth two = grown(readings);
    EXPECT_EQ(two.replicate, GrowthReplicate::Tray);
    EXPECT_EQ(two.sowings, 2U);
    for (const double middle : {5.9, 6.0, 6.1}) {
        addTray(readings, middle - 0.6, 2);
    }
    const TrayGrowth three = grown(readings);
    EXPECT_EQ(three.replicate, GrowthReplicate::Sowing);
    EXPECT_EQ(three.trays, 9U);
    // Sowings 0.6 days apart and a t of 2 df.
    const CurveEstimate& middle = three.report.parameters[1].value;
    EXPECT_NEAR(middle.upper - middle.estimate, tQuantile(0.975, 2) * 0.6 / std::sqrt(3.0), 0.1);
}

TEST(TrayGrowth, HasNoIntervalsUnderThreeTrays)
{
    std::vector<TrayReading> readings;
    addTray(readings, 5.9);
    addTray(readings, 6.1);
    const TrayGrowth growth = grown(readings);
    EXPECT_FALSE(growth.hasIntervals);
    EXPECT_NEAR(growth.report.xAt90pct.estimate, 6 + 1.4 * std::log(9), 0.05);
    EXPECT_TRUE(std::isnan(growth.report.xAt90pct.lower));
    EXPECT_TRUE(std::isnan(growth.report.at[0].upper));
    EXPECT_FALSE(growth.report.toHeight[1].x);
}

// Two days before full height the logistic and the Gompertz curve fit as well and differ in what
// they foretell.
TEST(TrayGrowth, HoldsTheCurveThatFitsAsWell)
{
    std::vector<TrayReading> readings;
    for (const double middle : {5.5, 6.0, 6.5}) {
        addTray(readings, middle);
    }
    std::erase_if(readings, [](const TrayReading& reading) {
        return std::fmod(reading.x, 2) == 0 || reading.x > 9;
    });
    const auto any = trayGrowth(readings, {{}, {}, {}});
    ASSERT_TRUE(any && any->hasIntervals);
    for (const GrowthCurve curve : {GrowthCurve::Logistic, GrowthCurve::Gompertz}) {
        const auto one = trayGrowth(readings, {curve, {}, {}});
        ASSERT_TRUE(one && one->hasIntervals);
        EXPECT_LE(any->report.xAt90pct.lower, one->report.xAt90pct.lower + 1e-9);
        EXPECT_GE(any->report.xAt90pct.upper, one->report.xAt90pct.upper - 1e-9);
    }
}

TEST(TrayGrowth, RefusesWhatTheCurveRefuses)
{
    EXPECT_EQ(trayGrowth({}, {}).error().kind, ErrorKind::TooFew);
}

} // namespace
} // namespace plumule::stats
