#include "ui/medium/paper_marker.h"

#include "ui/medium/marker.h"

#include <QPainter>

namespace plumule::ui {

void drawMarker(const PaperPen& pen, QPointF centre, int marker, double side, const QColor& ink)
{
    QPainter& painter = pen.painter();
    painter.save();
    painter.translate(centre * pen.scale());
    painter.fillPath(markerShape(marker, side * pen.scale()), ink);
    painter.restore();
}

} // namespace plumule::ui
