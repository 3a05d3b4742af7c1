#pragma once

#include "core/tray/damaged_trays.h"

#include <QString>

class QLabel;

namespace plumule::ui {

// Which trays a page does without, and what to do; empty for none.
[[nodiscard]] QString damagedWords(const std::vector<DamagedTray>& trays);

// The line that says so, hidden until there is something to say.
[[nodiscard]] QLabel* damagedLine();

} // namespace plumule::ui
