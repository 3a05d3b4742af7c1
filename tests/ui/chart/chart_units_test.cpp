#include "ui/chart/chart_units.h"

#include "ui/chart/chart_csv.h"
#include "ui/chart/chart_view.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

ChartSpec rowsOf(const std::string& key, const std::string& unit, double value)
{
    ChartSpec spec;
    spec.rows = {"Hemp mat"};
    spec.x.key = key;
    spec.x.unit = unit;
    spec.x.low = 0;
    ChartSeries dots;
    dots.points = {{0, value, "BR001", 7, false}};
    dots.intervals = {{0, value / 2, value, value * 2}};
    spec.series = {dots};
    spec.marks = {{"margin", "", value, true}, {"other", "", value, false}};
    return spec;
}

TEST(ChartUnits, LeaveAMetricChartAsItIs)
{
    for (const char* unit : {"g", "mm", "g/m²", "g/d", "g/g", "%", "min", ""}) {
        const ChartSpec spec = rowsOf("yield", unit, 283.49523125);
        EXPECT_EQ(shownIn(spec, UnitSystem::Metric), spec) << unit;
    }
}

// An ounce is 28.349523125 g, an inch 25.4 mm, a foot 304.8 mm by definition.
TEST(ChartUnits, TurnWeightsLengthsAndAreasWithAxisIntervalsAndMarks)
{
    const ChartSpec shown = shownIn(rowsOf("yield", "g", 283.49523125), UnitSystem::UsCustomary);
    EXPECT_EQ(shown.x.unit, "oz");
    EXPECT_NEAR(shown.series[0].points[0].y, 10, 1e-9);
    EXPECT_NEAR(shown.series[0].intervals[0].low, 5, 1e-9);
    EXPECT_NEAR(shown.series[0].intervals[0].high, 20, 1e-9);
    EXPECT_NEAR(shown.marks[0].at, 10, 1e-9);
    EXPECT_NEAR(shown.marks[1].at, 283.49523125, 1e-9) << "across the rows, not along them";
    const ChartSpec area = shownIn(rowsOf("yield_per_area", "g/m²", 1000), UnitSystem::UsCustomary);
    EXPECT_EQ(area.x.unit, "oz/ft²");
    EXPECT_NEAR(area.series[0].points[0].y, 1000 / 28.349523125 * 0.3048 * 0.3048, 1e-9);
    ChartSpec heights = rowsOf("height", "", 50.8);
    heights.form = ChartForm::Curves;
    heights.y.unit = "mm";
    heights.y.high = 127;
    const ChartSpec inches = shownIn(heights, UnitSystem::UsCustomary);
    EXPECT_EQ(inches.y.unit, "in");
    EXPECT_NEAR(*inches.y.high, 5, 1e-9);
    EXPECT_NEAR(inches.series[0].points[0].y, 2, 1e-9);
}

TEST(ChartUnits, TurnTemperaturesByTheirZeroToo)
{
    ChartSpec warmth = rowsOf("temperature", "", 20);
    warmth.form = ChartForm::Curves;
    warmth.y.unit = "°C";
    warmth.y.low = 0;
    warmth.series[0].intervals = {{1, -40, 0, 100}};
    const ChartSpec shown = shownIn(warmth, UnitSystem::UsCustomary);
    EXPECT_EQ(shown.y.unit, "°F");
    EXPECT_NEAR(*shown.y.low, 32, 1e-9);
    EXPECT_NEAR(shown.series[0].points[0].y, 68, 1e-9);
    EXPECT_NEAR(shown.series[0].intervals[0].low, -40, 1e-9);
    EXPECT_NEAR(shown.series[0].intervals[0].mid, 32, 1e-9);
    EXPECT_NEAR(shown.series[0].intervals[0].high, 212, 1e-9);
    EXPECT_EQ(shownIn(warmth, UnitSystem::Metric), warmth);
}

TEST(ChartUnits, ShowACostOfAGramInTwoToFourFigures)
{
    const ChartSpec spec = rowsOf("cost_per_gram", "EUR/g", 0.0234);
    const ChartSpec metric = shownIn(spec, UnitSystem::Metric);
    EXPECT_EQ(metric.x.unit, "EUR/kg");
    EXPECT_NEAR(metric.series[0].points[0].y, 23.4, 1e-9);
    EXPECT_EQ(shownIn(spec, UnitSystem::UsCustomary).x.unit, "EUR/lb");
}

TEST(ChartUnits, AreThoseOfTheRoomOnTheScreenAndSiInNumbers)
{
    ChartView::showUnits(UnitSystem::UsCustomary);
    ChartView view;
    view.draw(rowsOf("yield", "g", 283.49523125));
    EXPECT_EQ(view.drawn().x.unit, "oz");
    EXPECT_NE(chartCsv(view.spec()).find("283.495"), std::string::npos);
    ChartView::showUnits(UnitSystem::Metric);
    view.draw(view.spec());
    EXPECT_EQ(view.drawn(), view.spec());
}

} // namespace
} // namespace plumule::ui
