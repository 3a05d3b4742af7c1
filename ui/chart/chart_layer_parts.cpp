// Part of ui/chart/chart_layer.h: bars of parts, row by row.
#include "ui/chart/chart_layer.h"

#include "core/cost/cost_parts.h"
#include "ui/chart/part_colours.h"
#include "ui/text/text.h"
#include "ui/widget/theme.h"

#include <QPainter>
#include <QtCharts/QChart>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr double kShareOfBar = 0.62; // of a row's height
constexpr int kHighestBar = 34;

// The widest text that says the part and fits: with its name for the first of a row, else its
// number.
QString wordsWithin(double width, const ChartSeries& bars, const ChartInterval& interval,
                    const QFontMetricsF& metrics)
{
    const QString number = numberText(interval.high - interval.low, 1);
    const QString named = nameOf(static_cast<CostPart>(bars.marker)) + QLatin1Char(' ') + number;
    const double room = width - 2 * scaled(6);
    if (interval.low <= 0 && metrics.horizontalAdvance(named) <= room) {
        return named;
    }
    return metrics.horizontalAdvance(number) <= room ? number : QString();
}

} // namespace

void ChartLayer::paintParts(QPainter& painter) const
{
    if (m_spec.rows.empty()) {
        return;
    }
    const double rowHeight = m_chart->plotArea().height() / double(m_spec.rows.size());
    const double height = std::min(rowHeight * kShareOfBar, double(scaled(kHighestBar)));
    painter.setFont(uiFont(0.88));
    const QFontMetricsF metrics(painter.font());
    for (const ChartSeries& series : m_spec.series) {
        for (const ChartInterval& interval : series.intervals) {
            const double row = double(m_spec.rows.size()) - interval.x - 0.5;
            const QPointF low = placeOf(interval.low, row);
            const QPointF high = placeOf(interval.high, row);
            QRectF bar(low.x(), low.y() - height / 2, high.x() - low.x(), height);
            if (series.form == SeriesForm::Strokes) {
                painter.setPen(QPen(palette().ink, scaled(2), Qt::SolidLine, Qt::FlatCap));
                painter.drawLine(bar.topLeft() - QPointF(0, scaled(3)),
                                 bar.bottomLeft() + QPointF(0, scaled(3)));
            } else if (series.form == SeriesForm::Parts) {
                bar.setRight(
                    std::max(bar.left() + 1, bar.right() - 1)); // the next one is told apart
                painter.fillRect(bar, partColour(series.marker));
                painter.setPen(inkOnPart(series.marker));
                painter.drawText(bar, Qt::AlignCenter,
                                 wordsWithin(bar.width(), series, interval, metrics));
            }
        }
    }
}

} // namespace plumule::ui
