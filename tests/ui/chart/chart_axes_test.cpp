#include "ui/chart/chart_axes.h"

#include <QtCharts/QCategoryAxis>
#include <QtCharts/QChart>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

ChartSpec curveOf(const std::vector<ChartPoint>& points)
{
    ChartSpec spec;
    spec.form = ChartForm::Curves;
    ChartSeries series;
    series.form = SeriesForm::Line;
    series.points = points;
    spec.series = {series};
    return spec;
}

// What is looked at of an axis: where it begins and ends, its step and how many decimals it shows.
struct Scale
{
    double low = 0;
    double high = 0;
    double step = 0;
    QString format;
};

class ChartAxesTest : public testing::Test
{
protected:
    Scale scaleAt(const ChartSpec& spec, Qt::Orientation side)
    {
        QChart chart;
        auto* line = new QLineSeries;
        chart.addSeries(line);
        addCurveAxes(chart, spec);
        EXPECT_EQ(line->attachedAxes().size(), 2);
        const auto axes = chart.axes(side);
        EXPECT_EQ(axes.size(), 1);
        const auto* axis = qobject_cast<QValueAxis*>(axes.value(0));
        EXPECT_NE(axis, nullptr);
        return axis == nullptr
                   ? Scale()
                   : Scale{axis->min(), axis->max(), axis->tickInterval(), axis->labelFormat()};
    }
    Scale up(const ChartSpec& spec) { return scaleAt(spec, Qt::Vertical); }
    Scale across(const ChartSpec& spec) { return scaleAt(spec, Qt::Horizontal); }
};

// 203 to 297 with a twentieth on either side is 198.3 to 301.7: steps of 50 make about four.
TEST_F(ChartAxesTest, StepByOneTwoOrFiveAndEndOnAStep)
{
    const Scale scale = up(curveOf({{1, 203, "", {}, false}, {2, 297, "", {}, false}}));
    EXPECT_DOUBLE_EQ(scale.step, 50);
    EXPECT_DOUBLE_EQ(scale.low, 150);
    EXPECT_DOUBLE_EQ(scale.high, 350);
    EXPECT_EQ(scale.format, "%.0f");
}

TEST_F(ChartAxesTest, ShowAsManyDecimalsAsTheStepNeeds)
{
    const Scale tenths = up(curveOf({{1, 0.31, "", {}, false}, {2, 0.69, "", {}, false}}));
    EXPECT_DOUBLE_EQ(tenths.step, 0.2);
    EXPECT_EQ(tenths.format, "%.1f");
    const Scale small = up(curveOf({{1, 0.011, "", {}, false}, {2, 0.029, "", {}, false}}));
    EXPECT_DOUBLE_EQ(small.step, 0.005);
    EXPECT_EQ(small.format, "%.3f");
}

TEST_F(ChartAxesTest, KeepTheBoundsThatAreAskedFor)
{
    ChartSpec spec = curveOf({{1, 20, "", {}, false}, {2, 70, "", {}, false}});
    spec.y.low = 0;
    spec.y.high = 100;
    const Scale scale = up(spec);
    EXPECT_EQ(scale.low, 0);
    EXPECT_EQ(scale.high, 100);
    spec.y.high = -5; // below what it begins with
    EXPECT_LT(up(spec).low, up(spec).high);
}

TEST_F(ChartAxesTest, WholeNumbersStepByWholeOnesFromTheFirstToTheLast)
{
    ChartSpec spec = curveOf({{3, 1, "", {}, false}, {6, 2, "", {}, false}});
    spec.x.isWhole = true;
    const Scale scale = across(spec);
    EXPECT_EQ(scale.step, 1);
    EXPECT_EQ(scale.low, 3);
    EXPECT_EQ(scale.high, 6);
}

TEST_F(ChartAxesTest, OneValueOrNoneHasARangeAllTheSame)
{
    const Scale one = up(curveOf({{1, 250, "", {}, false}}));
    EXPECT_LT(one.low, 250);
    EXPECT_GT(one.high, 250);
    const Scale zero = up(curveOf({{1, 0, "", {}, false}}));
    EXPECT_LT(zero.low, zero.high);
    const Scale none = up(curveOf({}));
    EXPECT_LE(none.low, 0);
    EXPECT_GE(none.high, 1);
    EXPECT_GT(none.step, 0);
}

TEST_F(ChartAxesTest, HoldWholeIntervalsAndNotTheirMiddlesAlone)
{
    ChartSpec spec = curveOf({{1, 100, "", {}, false}});
    spec.series[0].intervals = {{4, 40, 100, 180}};
    EXPECT_LE(up(spec).low, 40);
    EXPECT_GE(up(spec).high, 180);
    EXPECT_GE(across(spec).high, 4);
}

TEST_F(ChartAxesTest, RowsAreNamedFromTheTop)
{
    ChartSpec spec;
    spec.rows = {"First", "Second", "Third"};
    ChartSeries dots;
    dots.points = {{0, 203, "", {}, false}, {2, 297, "", {}, false}};
    spec.series = {dots};
    QChart chart;
    auto* carrier = new QLineSeries;
    chart.addSeries(carrier);
    addRowAxes(chart, *carrier, spec);
    auto* rows = qobject_cast<QCategoryAxis*>(chart.axes(Qt::Vertical).value(0));
    ASSERT_NE(rows, nullptr);
    EXPECT_EQ(rows->categoriesLabels(), (QStringList{"Third", "Second", "First"}))
        << "from the bottom";
    EXPECT_EQ(rows->max(), 3);
    const auto* values = qobject_cast<QValueAxis*>(chart.axes(Qt::Horizontal).value(0));
    ASSERT_NE(values, nullptr);
    EXPECT_LE(values->min(), 203) << "values lie along the bottom";
    EXPECT_GE(values->max(), 297);
}

} // namespace
} // namespace plumule::ui
