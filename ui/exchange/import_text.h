#pragma once

#include "core/exchange/tray_import.h"

#include <QString>

namespace plumule::ui {

// "Line 2, X001: 1.23 g, where the table's other trays make about 251 g likely."
[[nodiscard]] QString doubtText(const ImportDoubt& doubt);

} // namespace plumule::ui
