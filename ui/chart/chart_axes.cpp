#include "ui/chart/chart_axes.h"

#include "ui/chart/chart_text.h"
#include "ui/text/text.h"
#include "ui/widget/theme.h"

#include <QtCharts/QCategoryAxis>
#include <QtCharts/QChart>
#include <QtCharts/QValueAxis>

#include <algorithm>
#include <cmath>
#include <limits>

namespace plumule::ui {
namespace {

struct Span
{
    double low = std::numeric_limits<double>::max();
    double high = std::numeric_limits<double>::lowest();

    void take(double value)
    {
        low = std::min(low, value);
        high = std::max(high, value);
    }
    [[nodiscard]] bool isEmpty() const { return low > high; }
};

void dress(QAbstractAxis& axis, const QString& title)
{
    const Palette& colours = palette();
    axis.setLabelsFont(uiFont(0.88));
    axis.setLabelsColor(colours.mutedInk);
    axis.setTitleFont(uiFont(0.88));
    axis.setTitleBrush(colours.mutedInk);
    axis.setTitleText(title);
    axis.setGridLineColor(colours.cardEdge);
    axis.setLinePen(QPen(Qt::NoPen));
}

// The step of 1, 2 or 5 times a power of ten that gives about `ticks` intervals.
double niceStep(double span, int ticks)
{
    const double rough = span / ticks;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (rough <= factor * power) {
            return factor * power;
        }
    }
    return 10.0 * power;
}

QValueAxis* valueAxis(const ChartAxis& wanted, Span span, int ticks)
{
    auto* axis = new QValueAxis;
    dress(*axis, axisTitle(wanted));
    if (span.isEmpty()) {
        span = {0, 1};
    }
    const double pad = span.high > span.low ? (span.high - span.low) * 0.05
                                            : std::max(1e-6, std::abs(span.high) * 0.1);
    double low = wanted.low.value_or(span.low - (wanted.isWhole ? 0 : pad));
    double high = wanted.high.value_or(span.high + (wanted.isWhole ? 0 : pad));
    if (high <= low) {
        high = low + 1;
    }
    double step = niceStep(high - low, ticks);
    if (wanted.isWhole) {
        step = std::max(1.0, std::round(step));
    }
    if (!wanted.low) {
        low = std::floor(low / step + 1e-9) * step;
    }
    if (!wanted.high) {
        high = std::ceil(high / step - 1e-9) * step;
    }
    axis->setRange(low, high);
    axis->setTickType(QValueAxis::TicksDynamic);
    axis->setTickAnchor(wanted.isWhole && wanted.low ? 0 : low);
    axis->setTickInterval(step);
    const int decimals = std::max(0, int(std::ceil(-std::log10(step) - 1e-9)));
    axis->setLabelFormat(QStringLiteral("%.%1f").arg(decimals));
    return axis;
}

// Days since 1970 as the first of months, so many that their names have room.
QCategoryAxis* dateAxis(const ChartAxis& wanted, const Span& span)
{
    auto* axis = new QCategoryAxis;
    dress(*axis, QString());
    const double low = wanted.low.value_or(span.isEmpty() ? 0 : span.low);
    const double high = std::max(low + 1, wanted.high.value_or(span.isEmpty() ? 1 : span.high));
    axis->setRange(low, high);
    axis->setStartValue(low);
    axis->setLabelsPosition(QCategoryAxis::AxisLabelsPositionOnValue);
    const int months = static_cast<int>((high - low) / 30.4);
    const int step = std::max(1, (months + 5) / 6);
    const QDate first = toQDate(Date{static_cast<std::int32_t>(low)});
    for (QDate day(first.year(), first.month(), 1); fromQDate(day).days <= high;
         day = day.addMonths(step)) {
        if (fromQDate(day).days >= low) {
            axis->append(monthText(fromQDate(day)), fromQDate(day).days);
        }
    }
    return axis;
}

} // namespace

void addRowAxes(QChart& chart, QAbstractSeries& carrier, const ChartSpec& spec)
{
    Span span;
    for (const ChartSeries& series : spec.series) {
        for (const ChartPoint& point : series.points) {
            span.take(point.y);
        }
        for (const ChartInterval& interval : series.intervals) {
            span.take(interval.low);
            span.take(interval.high);
        }
    }
    auto* values = valueAxis(spec.x, span, 5);
    auto* rows = new QCategoryAxis;
    dress(*rows, QString());
    rows->setLabelsColor(palette().ink);
    rows->setGridLineVisible(false);
    const int count = static_cast<int>(spec.rows.size());
    rows->setRange(0, std::max(1, count));
    rows->setStartValue(0);
    rows->setLabelsPosition(QCategoryAxis::AxisLabelsPositionCenter);
    for (int i = 0; i < count; ++i) {
        rows->append(QString::fromStdString(spec.rows[static_cast<std::size_t>(count - 1 - i)]),
                     i + 1);
    }
    chart.addAxis(values, Qt::AlignBottom);
    chart.addAxis(rows, Qt::AlignLeft);
    carrier.attachAxis(values);
    carrier.attachAxis(rows);
}

void addCurveAxes(QChart& chart, const ChartSpec& spec)
{
    Span across;
    Span up;
    for (const ChartSeries& series : spec.series) {
        for (const ChartPoint& point : series.points) {
            across.take(point.x);
            up.take(point.y);
        }
        for (const ChartInterval& interval : series.intervals) {
            across.take(interval.x);
            up.take(interval.low);
            up.take(interval.high);
        }
    }
    QAbstractAxis* x = spec.x.key == "date" ? static_cast<QAbstractAxis*>(dateAxis(spec.x, across))
                                            : valueAxis(spec.x, across, 8);
    auto* y = valueAxis(spec.y, up, 4);
    x->setGridLineVisible(false);
    chart.addAxis(x, Qt::AlignBottom);
    chart.addAxis(y, Qt::AlignLeft);
    for (QAbstractSeries* series : chart.series()) {
        series->attachAxis(x);
        series->attachAxis(y);
    }
}

} // namespace plumule::ui
