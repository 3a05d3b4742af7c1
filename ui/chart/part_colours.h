#pragma once

#include <QColor>
#include <QIcon>

namespace plumule::ui {

// The shades of a bar's parts, by a part's number: the same in the chart and in the table beside
// it.
[[nodiscard]] QColor partColour(int part);
// A word on that shade.
[[nodiscard]] QColor inkOnPart(int part);
// A square of the shade; an outline for a part that is left out.
[[nodiscard]] QIcon partIcon(int part);
[[nodiscard]] QIcon leftOutIcon();

} // namespace plumule::ui
