#pragma once

#include "core/exchange/tray_import.h"

#include <QString>

namespace plumule::ui {

// "Line 2, X001: 1.23 g, where the table's other trays make about 251 g likely."
[[nodiscard]] QString doubtText(const ImportDoubt& doubt);
// "Lines 4, 7: there already, and left out."
[[nodiscard]] QString heldText(const ImportPreview& preview);
// "Trays: 30 would come in."
[[nodiscard]] QString comingText(TableKind kind, std::int64_t rows);

// The names that choices have.
[[nodiscard]] QString choiceText(TableKind kind);
[[nodiscard]] QString choiceText(TextEncoding encoding);
[[nodiscard]] QString choiceText(DateOrder order);
[[nodiscard]] QString choiceText(DecimalMark mark);
// "fl oz" of the unit's key.
[[nodiscard]] QString unitName(std::string_view unit);

} // namespace plumule::ui
