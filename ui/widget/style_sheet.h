#pragma once

#include <QString>

namespace plumule::ui {

struct Palette;

// The program's one style sheet, in the palette's colours. Roles are set as the property "role":
// primary, quiet, danger (buttons); title, subtitle, heading, muted, warning, code, big (labels);
// card, caution (frames).
[[nodiscard]] QString styleSheet(const Palette& colours);

} // namespace plumule::ui
