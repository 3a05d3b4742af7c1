#include "ui/chart/step_line.h"

#include "ui/chart/chart_text.h"
#include "ui/widget/theme.h"

#include <QPainter>
#include <QPolygonF>

#include <algorithm>

namespace plumule::ui {

StepLine::StepLine(QWidget* parent)
    : QWidget(parent)
{
    setMinimumWidth(scaled(60));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize StepLine::sizeHint() const
{
    return {scaled(140), scaled(26)};
}

void StepLine::draw(const ChartSpec& spec)
{
    m_spec = spec;
    setAccessibleName(chartTitle(spec));
    update();
}

void StepLine::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF area = QRectF(rect()).adjusted(scaled(4), scaled(5), -scaled(4), -scaled(5));
    if (m_spec.series.empty()) {
        painter.setPen(QPen(ui::palette().warning, scaled(2), Qt::DotLine));
        painter.drawLine(QPointF(area.left(), area.center().y()),
                         QPointF(area.right(), area.center().y()));
        return;
    }
    const auto& points = m_spec.series.front().points;
    const auto ends = std::minmax_element(points.begin(), points.end(),
                                          [](const auto& a, const auto& b) { return a.y < b.y; });
    const double low = ends.first->y;
    const double up = ends.second->y - low;
    const double left = m_spec.x.low.value_or(points.front().x);
    const double across = std::max(1.0, m_spec.x.high.value_or(points.back().x) - left);
    const auto place = [&](const ChartPoint& point) {
        const double share = up > 0 ? (point.y - low) / up : 0.5;
        return QPointF(area.left() + (point.x - left) / across * area.width(),
                       area.bottom() - share * area.height());
    };
    QPolygonF line;
    for (const ChartPoint& point : points) {
        line << place(point);
    }
    painter.setPen(QPen(ui::palette().accent, scaled(2)));
    painter.drawPolyline(line);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ui::palette().accent);
    for (std::size_t i = 1; i < m_spec.series.size(); ++i) {
        for (const ChartPoint& change : m_spec.series[i].points) {
            painter.drawEllipse(place(change), scaled(3), scaled(3));
        }
    }
}

} // namespace plumule::ui

#include "moc_step_line.cpp"
