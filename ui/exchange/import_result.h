#pragma once

#include "core/exchange/tray_import.h"

class QCheckBox;
class QTableWidget;
class QWidget;

namespace plumule::ui {

// What an import would come to, in words.
[[nodiscard]] QWidget* importSummary(const ImportPreview& preview);
// The rows that look wrong, and the box that says they are right; null where there are none.
[[nodiscard]] QWidget* importDoubts(const ImportPreview& preview, QCheckBox*& areRight);
// The first rows as they will be read.
[[nodiscard]] QTableWidget* importRows(const ImportPreview& preview);
// What must be mended, each with its line.
[[nodiscard]] QTableWidget* importFaults(const ImportPreview& preview);

} // namespace plumule::ui
