// Part of ui/chart/chart_layer.h: the dots, where they stand and how they are drawn.
#include "ui/chart/chart_layer.h"

#include "ui/medium/marker.h"
#include "ui/widget/theme.h"

#include <QPaintEngine>
#include <QPainter>
#include <QPixmap>
#include <QtCharts/QChart>

#include <algorithm>
#include <map>

namespace plumule::ui {
namespace {

constexpr double kDotSide = 9;
constexpr std::size_t kManyDots = 500;

// At the origin.
void paintDot(QPainter& painter, const ChartLayer::DotLook& look)
{
    const QColor colour = QColor::fromRgba(look.colour);
    const QPainterPath shape = markerShape(look.marker, scaled(int(kDotSide)));
    painter.setOpacity(look.isFaded ? 0.55 : 1.0);
    if (look.isHollow) {
        painter.setPen(QPen(colour, scaled(2)));
        painter.setBrush(palette().card);
        painter.drawPath(shape);
    } else {
        painter.fillPath(shape, colour);
    }
}

QPixmap stampOf(const ChartLayer::DotLook& look, double ratio)
{
    const int side = 2 * scaled(int(kDotSide)); // with room for a pen round it
    QPixmap stamp(QSize(side, side) * ratio);
    stamp.setDevicePixelRatio(ratio);
    stamp.fill(Qt::transparent);
    QPainter painter(&stamp);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(side / 2.0, side / 2.0);
    paintDot(painter, look);
    return stamp;
}

} // namespace

// Dots that would cover one another step aside, alternately below and above, within their row.
void ChartLayer::placeRowDots(const ChartSeries& series)
{
    if (m_spec.rows.empty()) {
        return;
    }
    const double side = scaled(int(kDotSide));
    const double rowHeight =
        m_chart->plotArea().height() / double(m_spec.rows.size()) / m_spec.seriesARow;
    const int lanes = std::max(1, int(rowHeight * 0.38 / (side * 0.62)));
    std::vector<const ChartPoint*> ordered;
    for (const ChartPoint& point : series.points) {
        ordered.push_back(&point);
    }
    std::stable_sort(ordered.begin(), ordered.end(),
                     [](const auto* a, const auto* b) { return a->y < b->y; });
    std::vector<double> lastInLane(2 * static_cast<std::size_t>(lanes) + 1, -1e9);
    const auto lastIn = [&](int lane) -> double& {
        const int number = lane + lanes;
        return lastInLane[static_cast<std::size_t>(number)];
    };
    for (const ChartPoint* point : ordered) {
        const double x = placeOf(point->y, 0).x();
        int chosen = 0;
        for (int step = 0; step <= 2 * lanes; ++step) {
            const int lane = step % 2 == 0 ? -step / 2 : (step + 1) / 2;
            if (x - lastIn(lane) >= side * 0.9) {
                chosen = lane;
                break;
            }
        }
        lastIn(chosen) = x;
        const double y = rowPlace(point->x) + chosen * side * 0.62;
        m_dots.push_back({point, QPointF(x, y), series.marker, true});
    }
}

const ChartPoint* ChartLayer::pointAt(const QPointF& scenePlace) const
{
    const QPointF here = mapFromScene(scenePlace);
    const ChartPoint* nearest = nullptr;
    double best = scaled(10);
    for (const Dot& dot : m_dots) {
        const double distance = QLineF(here, dot.place).length();
        if (distance < best) {
            best = distance;
            nearest = dot.point;
        }
    }
    return nearest;
}

ChartLayer::DotLook ChartLayer::lookOf(const Dot& dot) const
{
    const QColor colour = dot.point->isWarned ? palette().warning
                          : dot.marker < 0    ? palette().accent
                                              : markerColour(dot.marker);
    return {colour.rgba(), std::max(dot.marker, 0), dot.point->isHollow,
            dot.isFaded && m_spec.key != "trial_so_far"};
}

// Thousands of shapes would take a third of a second to fill: on a screen each look is drawn once.
void ChartLayer::paintDots(QPainter& painter) const
{
    const bool isByStamp =
        m_dots.size() > kManyDots && painter.paintEngine()->type() == QPaintEngine::Raster;
    std::map<DotLook, QPixmap> stamps;
    for (const Dot& dot : m_dots) {
        const DotLook look = lookOf(dot);
        if (!isByStamp) {
            painter.save();
            painter.translate(dot.place);
            paintDot(painter, look);
            painter.restore();
            continue;
        }
        QPixmap& stamp = stamps[look];
        if (stamp.isNull()) {
            stamp = stampOf(look, painter.device()->devicePixelRatioF());
        }
        const double half = stamp.deviceIndependentSize().width() / 2;
        painter.drawPixmap((dot.place - QPointF(half, half)).toPoint(), stamp);
    }
}

} // namespace plumule::ui
