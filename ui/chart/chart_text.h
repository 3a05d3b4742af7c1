#pragma once

#include "core/chart/chart_spec.h"

#include <QString>

namespace plumule::ui {

// The words for a spec's keys.
[[nodiscard]] QString chartTitle(const ChartSpec& spec);
[[nodiscard]] QString axisTitle(const ChartAxis& axis);
[[nodiscard]] QString markText(const ChartMark& mark);
// The whole chart as a sentence or two, for those who can't see it.
[[nodiscard]] QString chartDescription(const ChartSpec& spec);

} // namespace plumule::ui
