#pragma once

#include "core/journal/journal.h"
#include "ui/text/text.h"

namespace plumule::ui {

// A column that a grower fills himself, in his words: "net", "set aside"; empty for any other.
[[nodiscard]] QString columnName(const std::string& column);
// What stands in a cell of it: "259.5 g", "12 Mar 2026"; long texts are cut off at `longest`
// letters, where it is not 0.
[[nodiscard]] QString cellText(const std::string& column, const Cell& cell, const UnitText& units,
                               int longest = 40);

} // namespace plumule::ui
