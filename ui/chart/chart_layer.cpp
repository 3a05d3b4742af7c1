#include "ui/chart/chart_layer.h"

#include "ui/chart/chart_text.h"
#include "ui/medium/marker.h"
#include "ui/widget/theme.h"

#include <QPainter>
#include <QtCharts/QChart>

#include <algorithm>
#include <numeric>

namespace plumule::ui {
namespace {

constexpr double kMeanSide = 14;
constexpr int kColumnGap = 14;

// Rows of equal height, the first at the top; row r is centred on rows − r − ½ of the value axis.
double rowValue(const ChartSpec& spec, double row)
{
    return static_cast<double>(spec.rows.size()) - row - 0.5;
}

// Where a named curve ends; none for what is no curve or has no name.
std::optional<QPointF> endOf(const ChartSeries& series)
{
    if (series.name.empty()) {
        return std::nullopt;
    }
    if (series.form == SeriesForm::Line && !series.points.empty()) {
        return QPointF(series.points.back().x, series.points.back().y);
    }
    if (series.form == SeriesForm::Band && !series.intervals.empty()) {
        return QPointF(series.intervals.back().x, series.intervals.back().mid);
    }
    return std::nullopt;
}

QColor seriesColour(const ChartSeries& series)
{
    return series.marker < 0 ? palette().accent : markerColour(series.marker);
}

double widthOf(const ChartColumn& column)
{
    const QFontMetricsF metrics(uiFont(0.88, QFont::DemiBold));
    double width = metrics.horizontalAdvance(QString::fromStdString(column.heading));
    for (const std::string& cell : column.cells) {
        width = std::max(width, metrics.horizontalAdvance(QString::fromStdString(cell)));
    }
    return width + scaled(kColumnGap);
}

std::vector<double> widthsOfColumns(const ChartSpec& spec)
{
    std::vector<double> widths;
    for (const ChartColumn& column : spec.columns) {
        widths.push_back(widthOf(column));
    }
    return widths;
}

int together(const std::vector<double>& widths)
{
    return int(std::ceil(std::accumulate(widths.begin(), widths.end(), 0.0)));
}

bool isPooledRow(const ChartSpec& spec, std::size_t row)
{
    return std::any_of(spec.series.begin(), spec.series.end(), [row](const ChartSeries& series) {
        return series.form == SeriesForm::Pooled && !series.intervals.empty() &&
               series.intervals.front().x == double(row);
    });
}

} // namespace

int heightOfHeadings(const ChartSpec& spec)
{
    const bool hasMargin = std::any_of(spec.marks.begin(), spec.marks.end(),
                                       [](const auto& mark) { return mark.key == "margin"; });
    return scaled(hasMargin || !spec.columns.empty() ? 20 : 4);
}

int widthOfColumns(const ChartSpec& spec)
{
    return together(widthsOfColumns(spec));
}

ChartLayer::ChartLayer(QChart* chart)
    : QGraphicsObject(chart)
    , m_chart(chart)
{
    setZValue(20);
    connect(chart, &QChart::plotAreaChanged, this, [this] { placeAll(); });
}

void ChartLayer::show(const ChartSpec& spec)
{
    m_spec = spec;
    m_columnWidths = widthsOfColumns(spec);
    m_besideWidth = together(m_columnWidths);
    placeAll();
}

QRectF ChartLayer::boundingRect() const
{
    return m_chart->plotArea().adjusted(-kMeanSide, -kMeanSide * 2 - heightOfHeadings(m_spec),
                                        kMeanSide + m_besideWidth, kMeanSide);
}

QPointF ChartLayer::placeOf(double x, double y) const
{
    return m_chart->mapToPosition(QPointF(x, y));
}

double ChartLayer::rowPlace(double row) const
{
    return placeOf(0, rowValue(m_spec, row)).y();
}

void ChartLayer::placeAll()
{
    prepareGeometryChange();
    m_dots.clear();
    if (m_chart->series().isEmpty()) {
        return;
    }
    for (const ChartSeries& series : m_spec.series) {
        if (m_spec.form == ChartForm::DotRows) {
            placeRowDots(series);
            continue;
        }
        for (const ChartPoint& point : series.points) {
            if (series.form == SeriesForm::Dots) {
                m_dots.push_back({&point, placeOf(point.x, point.y), series.marker, false});
            }
        }
    }
    update();
}

void ChartLayer::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*)
{
    painter->setRenderHint(QPainter::Antialiasing);
    paintMargin(*painter);
    paintBars(*painter);
    paintParts(*painter);
    paintMarks(*painter);
    paintDots(*painter);
    paintIntervals(*painter);
    paintNames(*painter);
    paintColumns(*painter);
}

void ChartLayer::paintBars(QPainter& painter) const
{
    for (const ChartSeries& series : m_spec.series) {
        if (series.form == SeriesForm::Bars) {
            QColor colour = seriesColour(series);
            colour.setAlphaF(0.35F);
            painter.setPen(QPen(colour, scaled(4), Qt::SolidLine, Qt::FlatCap));
            for (const ChartInterval& interval : series.intervals) {
                painter.drawLine(placeOf(interval.x, interval.low),
                                 placeOf(interval.x, interval.high));
            }
        }
    }
}

void ChartLayer::paintIntervals(QPainter& painter) const
{
    for (const ChartSeries& series : m_spec.series) {
        if (series.form == SeriesForm::Pooled) {
            paintPooled(painter, series);
        }
        if (series.form != SeriesForm::Intervals) {
            continue;
        }
        const QColor colour = seriesColour(series);
        for (const ChartInterval& interval : series.intervals) {
            const bool isRow = m_spec.form == ChartForm::DotRows;
            const double row = rowValue(m_spec, interval.x);
            const QPointF low =
                isRow ? placeOf(interval.low, row) : placeOf(interval.x, interval.low);
            const QPointF mid =
                isRow ? placeOf(interval.mid, row) : placeOf(interval.x, interval.mid);
            const QPointF high =
                isRow ? placeOf(interval.high, row) : placeOf(interval.x, interval.high);
            painter.setPen(QPen(colour, scaled(4), Qt::SolidLine, Qt::FlatCap));
            painter.drawLine(low, high);
            painter.save();
            painter.translate(mid);
            const QPainterPath shape = markerShape(series.marker, scaled(int(kMeanSide)));
            painter.strokePath(shape, QPen(palette().card, scaled(3)));
            painter.fillPath(shape, colour);
            painter.restore();
        }
    }
}

// A bar under a line: no medium's marker, and no sowing's.
void ChartLayer::paintPooled(QPainter& painter, const ChartSeries& series) const
{
    const QRectF plot = m_chart->plotArea();
    const double rowHeight = plot.height() / double(m_spec.rows.size());
    for (const ChartInterval& interval : series.intervals) {
        const double row = rowValue(m_spec, interval.x);
        const QPointF low = placeOf(interval.low, row);
        const QPointF high = placeOf(interval.high, row);
        const QPointF mid = placeOf(interval.mid, row);
        const double half = scaled(6);
        painter.setPen(QPen(palette().cardEdge, 1));
        const double line = low.y() - rowHeight / 2;
        painter.drawLine(QPointF(plot.left(), line), QPointF(plot.right() + m_besideWidth, line));
        painter.fillRect(QRectF(low - QPointF(0, half), high + QPointF(0, half)),
                         seriesColour(series));
        painter.setPen(QPen(palette().card, scaled(3), Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(mid - QPointF(0, half), mid + QPointF(0, half));
    }
}

// Differences that don't matter lie on a shade.
void ChartLayer::paintMargin(QPainter& painter) const
{
    std::vector<double> ends;
    QString text;
    for (const ChartMark& mark : m_spec.marks) {
        if (mark.key == "margin") {
            ends.push_back(placeOf(mark.at, mark.at).x());
            text += markText(mark);
        }
    }
    if (ends.size() == 2) {
        const QRectF plot = m_chart->plotArea();
        const double left = std::clamp(ends[0], plot.left(), plot.right());
        const double right = std::clamp(ends[1], plot.left(), plot.right());
        QColor shade = palette().mutedInk;
        shade.setAlphaF(0.12F);
        painter.fillRect(QRectF(QPointF(left, plot.top()), QPointF(right, plot.bottom())), shade);
        painter.setFont(uiFont(0.88));
        painter.setPen(palette().mutedInk);
        painter.drawText(QPointF(left, plot.top() - scaled(6)), text);
    }
}

void ChartLayer::paintColumns(QPainter& painter) const
{
    const QRectF plot = m_chart->plotArea();
    const double rowHeight = plot.height() / std::max(1.0, double(m_spec.rows.size()));
    double right = plot.right();
    for (std::size_t i = 0; i < m_spec.columns.size(); ++i) {
        const ChartColumn& column = m_spec.columns[i];
        const double width = m_columnWidths[i];
        const auto write = [&](double middle, const std::string& text) {
            const double height = scaled(20);
            painter.drawText(QRectF(right, middle - height / 2, width, height),
                             Qt::AlignRight | Qt::AlignVCenter, QString::fromStdString(text));
        };
        painter.setFont(uiFont(0.88));
        painter.setPen(palette().mutedInk);
        write(plot.top() - scaled(10), column.heading);
        for (std::size_t row = 0; row < column.cells.size(); ++row) {
            painter.setFont(
                uiFont(0.88, isPooledRow(m_spec, row) ? QFont::DemiBold : QFont::Normal));
            painter.setPen(palette().ink);
            write(plot.top() + rowHeight * (double(row) + 0.5), column.cells[row]);
        }
        right += width;
    }
}

void ChartLayer::paintMarks(QPainter& painter) const
{
    painter.setFont(uiFont(0.88));
    const QRectF plot = m_chart->plotArea();
    int line = 0;
    for (const ChartMark& mark : m_spec.marks) {
        // The margin has its shade.
        if (mark.key == "margin") {
            continue;
        }
        painter.setPen(QPen(palette().mutedInk, 1, Qt::DashLine));
        const QPointF place = placeOf(mark.at, mark.at);
        if (!mark.isVertical) {
            painter.drawLine(QPointF(plot.left(), place.y()), QPointF(plot.right(), place.y()));
            painter.setPen(palette().mutedInk);
            painter.drawText(QPointF(plot.left() + scaled(4), place.y() - scaled(4)),
                             markText(mark));
            continue;
        }
        painter.drawLine(QPointF(place.x(), plot.top()), QPointF(place.x(), plot.bottom()));
        const QString text = markText(mark);
        const QFontMetricsF metrics(painter.font());
        const double width = metrics.horizontalAdvance(text);
        const bool fitsRight = place.x() + scaled(6) + width < plot.right();
        const double x = fitsRight ? place.x() + scaled(6) : place.x() - scaled(6) - width;
        painter.setPen(palette().ink);
        painter.drawText(QPointF(x, plot.top() + metrics.height() * (1 + line++)), text);
    }
}

// A curve's name stands at its end, so that no legend has to be matched to it.
void ChartLayer::paintNames(QPainter& painter) const
{
    if (m_spec.form != ChartForm::Curves) {
        return;
    }
    painter.setFont(uiFont(0.88));
    const QFontMetricsF metrics(painter.font());
    std::vector<std::pair<QPointF, const ChartSeries*>> ends;
    for (const ChartSeries& series : m_spec.series) {
        if (const auto end = endOf(series)) {
            ends.emplace_back(placeOf(end->x(), end->y()), &series);
        }
    }
    // From the lowest up, so that names that make way for one another keep the curves' order.
    std::sort(ends.begin(), ends.end(),
              [](const auto& a, const auto& b) { return a.first.y() > b.first.y(); });
    double ceiling = m_chart->plotArea().bottom() + metrics.height();
    for (const auto& [end, series] : ends) {
        const QString name = QString::fromStdString(series->name);
        const double y =
            std::min(end.y() - metrics.height() * 0.4, ceiling - metrics.height() * 0.95);
        ceiling = y;
        const QPointF at(end.x() - metrics.horizontalAdvance(name) - scaled(4), y);
        QPainterPath outline;
        outline.addText(at, painter.font(), name);
        painter.strokePath(outline, QPen(palette().card, scaled(3)));
        painter.setPen(seriesColour(*series));
        painter.drawText(at, name);
    }
}

} // namespace plumule::ui

#include "moc_chart_layer.cpp"
