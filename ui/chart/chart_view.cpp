#include "ui/chart/chart_view.h"

#include "ui/chart/chart_axes.h"
#include "ui/chart/chart_layer.h"
#include "ui/chart/chart_text.h"
#include "ui/chart/chart_units.h"
#include "ui/medium/marker.h"
#include "ui/text/text.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/saved_file.h"
#include "ui/widget/theme.h"

#include <QBuffer>
#include <QFileInfo>
#include <QGraphicsLayout>
#include <QMouseEvent>
#include <QPdfWriter>
#include <QRegularExpression>
#include <QSvgGenerator>
#include <QToolTip>
#include <QtCharts/QAreaSeries>
#include <QtCharts/QLineSeries>

namespace plumule::ui {
namespace {

constexpr int kScreenDpi = 96;

UnitSystem& shownUnits()
{
    static UnitSystem units = UnitSystem::Metric;
    return units;
}

QColor colourOf(const ChartSeries& series)
{
    return series.marker < 0 ? palette().accent : markerColour(series.marker);
}

QLineSeries* lineThrough(const QList<QPointF>& points, const QPen& pen)
{
    auto* line = new QLineSeries;
    line->setPen(pen);
    line->replace(points);
    return line;
}

QList<QPointF> edge(const ChartSeries& series, double ChartInterval::*which)
{
    QList<QPointF> points;
    for (const ChartInterval& interval : series.intervals) {
        points << QPointF(interval.x, interval.*which);
    }
    return points;
}

// With its title and description, for who can't see it. The generator would write them unescaped: a
// medium named by a tag would be one wherever the drawing stands.
QString titled(QString svg, const ChartSpec& spec)
{
    const qsizetype start = svg.indexOf(QStringLiteral("<svg"));
    const qsizetype end = start < 0 ? -1 : svg.indexOf('>', start);
    if (end < 0) {
        return svg;
    }
    const QString head = QStringLiteral("\n<title>%1</title>\n<desc>%2</desc>");
    return svg.insert(end + 1, head.arg(chartTitle(spec).toHtmlEscaped(),
                                        chartDescription(spec).toHtmlEscaped()));
}

} // namespace

ChartView::ChartView(QWidget* parent)
    : QChartView(parent)
{
    setRenderHint(QPainter::Antialiasing);
    setFrameShape(QFrame::NoFrame);
    setMouseTracking(true);
    chart()->legend()->hide();
    chart()->setBackgroundRoundness(0);
    if (chart()->layout() != nullptr) {
        chart()->layout()->setContentsMargins(0, 0, 0, 0);
    }
    m_layer = new ChartLayer(chart());
}

ChartView::~ChartView() = default;

QSize ChartView::sizeHint() const
{
    return {scaled(420), scaled(250)};
}

void ChartView::showUnits(UnitSystem units)
{
    shownUnits() = units;
}

void ChartView::draw(const ChartSpec& spec)
{
    m_spec = spec;
    redraw();
}

void ChartView::redraw()
{
    m_drawn = shownIn(m_spec, shownUnits());
    chart()->removeAllSeries();
    for (QAbstractAxis* axis : chart()->axes()) {
        chart()->removeAxis(axis);
        delete axis;
    }
    chart()->setMargins(QMargins(0, heightOfHeadings(m_drawn), widthOfColumns(m_drawn), 0));
    const Palette& colours = ui::palette();
    chart()->setBackgroundBrush(colours.card);
    setBackgroundBrush(colours.card);
    if (m_drawn.form == ChartForm::DotRows) {
        drawRows();
    } else {
        drawCurves();
    }
    m_layer->show(m_drawn);
    setAccessibleName(chartTitle(m_drawn));
    setAccessibleDescription(chartDescription(m_drawn));
}

void ChartView::drawRows()
{
    // The layer needs one series to know the axes by; it shows nothing itself.
    auto* carrier = lineThrough({}, QPen(Qt::NoPen));
    chart()->addSeries(carrier);
    addRowAxes(*chart(), *carrier, m_drawn);
}

void ChartView::drawCurves()
{
    auto* carrier = lineThrough({}, QPen(Qt::NoPen));
    chart()->addSeries(carrier);
    for (const ChartSeries& series : m_drawn.series) {
        QPen pen(colourOf(series), scaled(2));
        pen.setStyle(series.isDashed ? Qt::DashLine : Qt::SolidLine);
        if (series.form == SeriesForm::Line) {
            QList<QPointF> points;
            for (const ChartPoint& point : series.points) {
                points << QPointF(point.x, point.y);
            }
            chart()->addSeries(lineThrough(points, pen));
        } else if (series.form == SeriesForm::Band) {
            auto* area = new QAreaSeries(lineThrough(edge(series, &ChartInterval::high), pen),
                                         lineThrough(edge(series, &ChartInterval::low), pen));
            area->upperSeries()->setParent(area);
            area->lowerSeries()->setParent(area);
            QColor fill = colourOf(series);
            fill.setAlphaF(0.16F);
            area->setBrush(fill);
            area->setPen(Qt::NoPen);
            chart()->addSeries(area);
            chart()->addSeries(lineThrough(edge(series, &ChartInterval::mid), pen));
        }
    }
    addCurveAxes(*chart(), m_drawn);
}

void ChartView::changeEvent(QEvent* event)
{
    QChartView::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && m_layer != nullptr) {
        redraw();
    }
}

void ChartView::mouseMoveEvent(QMouseEvent* event)
{
    QChartView::mouseMoveEvent(event);
    const ChartPoint* point = m_layer->pointAt(mapToScene(event->pos()));
    setCursor(point != nullptr && point->target ? Qt::PointingHandCursor : Qt::ArrowCursor);
    if (point == nullptr) {
        QToolTip::hideText();
        return;
    }
    const ChartAxis& axis = m_drawn.form == ChartForm::DotRows ? m_drawn.x : m_drawn.y;
    QToolTip::showText(event->globalPosition().toPoint(),
                       plainHint(QStringLiteral("%1  %2 %3")
                                     .arg(QString::fromStdString(point->note),
                                          numberText(point->y, std::abs(point->y) < 1 ? 4 : 1),
                                          QString::fromStdString(axis.unit))),
                       this);
}

void ChartView::mouseReleaseEvent(QMouseEvent* event)
{
    QChartView::mouseReleaseEvent(event);
    const ChartPoint* point = m_layer->pointAt(mapToScene(event->pos()));
    if (point != nullptr && point->target) {
        Q_EMIT pointChosen(*point->target);
    }
}

void ChartView::paintAll(QPainter& painter, const QRectF& target)
{
    painter.setRenderHint(QPainter::Antialiasing);
    scene()->render(&painter, target, chart()->geometry());
}

// The chart follows its view only by events, which a view that was never shown has not had.
void ChartView::layOutAt(QSize size)
{
    chart()->resize(size);
    chart()->layout()->activate();
}

void ChartView::paintForPaper(QPaintDevice& device, QSize size)
{
    const QSizeF before = chart()->size();
    {
        const PaperLook look;
        redraw();
        layOutAt(size);
        QPainter painter(&device);
        painter.setFont(uiFont());
        paintAll(painter, QRectF(QPointF(), QSizeF(size)));
    }
    redraw();
    layOutAt(before.toSize());
}

QByteArray ChartView::toSvg(QSize size)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator svg;
    svg.setOutputDevice(&buffer);
    svg.setResolution(kScreenDpi);
    svg.setSize(size);
    svg.setViewBox(QRect(QPoint(), size));
    paintForPaper(svg, size);
    // The generator leaves an empty group behind for every change of its pen.
    QString text = QString::fromUtf8(buffer.data());
    static const QRegularExpression kEmptyGroup(QStringLiteral("<g [^>]*>\\s*</g>\\s*"));
    return titled(text.remove(kEmptyGroup), m_drawn).toUtf8();
}

QPicture ChartView::toPicture(QSize size)
{
    QPicture picture;
    paintForPaper(picture, size);
    picture.setBoundingRect(QRect(QPoint(), size));
    return picture;
}

Done ChartView::saveTo(const QString& path)
{
    if (!isVisible() && !testAttribute(Qt::WA_Resized)) {
        resize(sizeHint().expandedTo(QSize(640, 360)));
    }
    layOutAt(size());
    const QSizeF area = chart()->geometry().size();
    const QString ending = QFileInfo(path).suffix().toLower();
    return saveFile(path, [&](QIODevice& file) {
        if (ending == QLatin1String("svg")) {
            return writeSvg(file, area);
        }
        return ending == QLatin1String("pdf") ? writePdf(file, area)
                                              : writeImage(file, area, ending);
    });
}

bool ChartView::writeSvg(QIODevice& file, QSizeF area)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator svg;
    svg.setOutputDevice(&buffer);
    svg.setSize(area.toSize());
    svg.setViewBox(QRectF(QPointF(), area));
    QPainter painter;
    if (!painter.begin(&svg)) {
        return false;
    }
    paintAll(painter, QRectF(QPointF(), area));
    if (!painter.end()) {
        return false;
    }
    const QByteArray text = titled(QString::fromUtf8(buffer.data()), m_drawn).toUtf8();
    return file.write(text) == text.size();
}

bool ChartView::writePdf(QIODevice& file, QSizeF area)
{
    QPdfWriter pdf(&file);
    pdf.setTitle(chartTitle(m_drawn));
    pdf.setPageSize(QPageSize(area * 0.75, QPageSize::Point));
    pdf.setPageMargins(QMarginsF());
    QPainter painter;
    if (!painter.begin(&pdf)) {
        return false;
    }
    paintAll(painter, QRectF(0, 0, pdf.width(), pdf.height()));
    return painter.end();
}

bool ChartView::writeImage(QIODevice& file, QSizeF area, const QString& format)
{
    QImage image((area * 3).toSize(), QImage::Format_ARGB32);
    image.fill(ui::palette().card);
    QPainter painter(&image);
    paintAll(painter, QRectF(QPointF(), area * 3));
    painter.end();
    return image.save(&file, format.toLatin1().constData());
}

} // namespace plumule::ui

#include "moc_chart_view.cpp"
