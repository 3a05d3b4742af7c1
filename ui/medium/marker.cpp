#include "ui/medium/marker.h"

#include "ui/widget/theme.h"

#include <QPainter>

#include <array>
#include <cmath>
#include <numbers>

namespace plumule::ui {
namespace {

QPainterPath polygonPath(int corners, double radius, double turn)
{
    QPolygonF polygon;
    for (int i = 0; i < corners; ++i) {
        const double angle = turn + 2.0 * std::numbers::pi * i / corners;
        polygon << QPointF(radius * std::cos(angle), radius * std::sin(angle));
    }
    QPainterPath path;
    path.addPolygon(polygon);
    path.closeSubpath();
    return path;
}

QPainterPath crossPath(double half)
{
    const double arm = half * 0.42;
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    path.addRect(QRectF(-half, -arm, 2 * half, 2 * arm));
    path.addRect(QRectF(-arm, -half, 2 * arm, 2 * half));
    return path.simplified();
}

constexpr int kOutlines = 8;

int bounded(int marker)
{
    return ((marker % kMarkers) + kMarkers) % kMarkers;
}

QPainterPath outline(int number, double half)
{
    constexpr double kUp = -std::numbers::pi / 2.0;
    QPainterPath path;
    switch (number) {
    case 0:
        path.addEllipse(QPointF(0, 0), half, half);
        return path;
    case 1:
        path.addRect(QRectF(-half * 0.9, -half * 0.9, half * 1.8, half * 1.8));
        return path;
    case 2:
        return polygonPath(3, half * 1.15, kUp).translated(0, half * 0.2);
    case 3:
        return polygonPath(4, half * 1.15, kUp);
    case 4:
        return polygonPath(3, half * 1.15, -kUp).translated(0, -half * 0.2);
    case 5:
        return polygonPath(5, half * 1.05, kUp);
    case 6:
        return crossPath(half);
    default:
        return polygonPath(6, half * 1.05, 0);
    }
}

} // namespace

QColor markerColour(int marker)
{
    return markerColourOn(palette().ground, marker);
}

QColor markerColourOn(Ground ground, int marker)
{
    static const std::array<const char*, kMarkerColours> onLight = {
        "#0072b2", "#d55e00", "#009e73", "#cc79a7", "#b8860b", "#3f9bd1", "#6a51a3", "#5c6762"};
    static const std::array<const char*, kMarkerColours> onDark = {
        "#4aa8e0", "#ff8a3d", "#2fc79b", "#e59cc4", "#e6b94a", "#7cc6ee", "#a893e0", "#a9b6af"};
    // The same outline comes again in another colour.
    const int number = bounded(marker);
    const auto index =
        static_cast<std::size_t>((number + 3 * (number / kOutlines)) % kMarkerColours);
    return QColor(ground == Ground::Dark ? onDark[index] : onLight[index]);
}

QPainterPath markerShape(int marker, double side)
{
    const double half = side / 2.0;
    const int number = bounded(marker);
    const QPainterPath whole = outline(number % kOutlines, half);
    QPainterPath cut;
    switch (number / kOutlines) {
    case 0:
        return whole;
    case 1:
        cut.addEllipse(QPointF(0, 0), half * 0.38, half * 0.38);
        break;
    default:
        cut.addRect(QRectF(-half * 1.3, -half * 0.16, half * 2.6, half * 0.32));
        break;
    }
    return whole.subtracted(cut);
}

QIcon markerIcon(int marker)
{
    QIcon icon;
    for (const int side : {16, 32, 48}) {
        QPixmap pixmap(side, side);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.translate(side / 2.0, side / 2.0);
        painter.fillPath(markerShape(marker, side * 0.7), markerColour(marker));
        icon.addPixmap(pixmap);
    }
    return icon;
}

MarkerDot::MarkerDot(int marker, QWidget* parent)
    : QWidget(parent)
    , m_marker(marker)
{
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void MarkerDot::setMarker(int marker)
{
    m_marker = marker;
    update();
}

QSize MarkerDot::sizeHint() const
{
    return {scaled(16), scaled(16)};
}

void MarkerDot::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(width() / 2.0, height() / 2.0);
    painter.fillPath(markerShape(m_marker, scaled(11)), markerColour(m_marker));
}

} // namespace plumule::ui

#include "moc_marker.cpp"
