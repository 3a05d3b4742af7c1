#pragma once

#include "core/week/week.h"

#include <QString>

class QPagedPaintDevice;

namespace plumule::ui {

// The fourteen days on paper, with boxes to tick: A4, or Letter where the room shows US customary
// units. Needs the interface font, but no window. As saveFile().
[[nodiscard]] Done writeWeekSheet(const Week& week, const RoomLayout& layout,
                                  const QString& pdfPath);

// Draws it on a printer that has been set up. False where it can't be begun.
[[nodiscard]] bool printWeekSheet(const Week& week, const RoomLayout& layout,
                                  QPagedPaintDevice& paper);

} // namespace plumule::ui
