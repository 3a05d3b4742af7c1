#pragma once

#include "core/watering/round.h"
#include "ui/text/text.h"

class QPagedPaintDevice;

namespace plumule::ui {

// The round on paper, with boxes to tick: A4, or Letter where the room shows US customary units.
// Needs the interface font, but no window. False where the file can't be written; a file that
// stands there already is then left as it is.
[[nodiscard]] Done writeRoundSheet(const Round& round, const RoomLayout& layout, UnitText units,
                                   const QString& pdfPath);

// Draws it on a printer that has been set up. False where it can't be begun.
[[nodiscard]] bool printRoundSheet(const Round& round, const RoomLayout& layout, UnitText units,
                                   QPagedPaintDevice& paper);

} // namespace plumule::ui
