#pragma once

#include "core/review/facts/compared_trays.h"

class QComboBox;

namespace plumule::ui {

// The drop-down "each medium", "by form", … of the season and of a trial.
[[nodiscard]] QComboBox* groupingChoice();
[[nodiscard]] std::optional<Grouping> chosenGrouping(const QComboBox& box);

} // namespace plumule::ui
