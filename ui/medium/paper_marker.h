#pragma once

#include "ui/paper/paper.h"

namespace plumule::ui {

// A medium's marker in one ink: its shape tells the medium on paper too. `side` in points.
void drawMarker(const PaperPen& pen, QPointF centre, int marker, double side = 7,
                const QColor& ink = kPaperInk);

} // namespace plumule::ui
