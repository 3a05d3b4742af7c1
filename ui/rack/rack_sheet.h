#pragma once

#include "core/rack/rack.h"
#include "core/room/room.h"

class QPagedPaintDevice;
class QString;

namespace plumule::ui {

// What stands where on paper, a shelf a row, with the evenings on which places come free: A4, or
// Letter where the room shows US customary units. As the sheet of a round.
[[nodiscard]] Done writeRackSheet(const RoomRacks& racks, const Room& room, const QString& pdfPath);
[[nodiscard]] bool printRackSheet(const RoomRacks& racks, const Room& room,
                                  QPagedPaintDevice& paper);

} // namespace plumule::ui
