#pragma once

#include "core/harvest/harvest.h"
#include "ui/text/text.h"

#include <vector>

namespace plumule::ui {

// "Expected 255–325 g, from 9 trays of this variety on this medium."
[[nodiscard]] QString expectedText(const ExpectedRange& range, const UnitText& units);

// What is odd about a weighing, and that Enter records it all the same.
[[nodiscard]] QString doubtsText(const std::vector<Doubt>& doubts, const ExpectedRange& range,
                                 const UnitText& units);

} // namespace plumule::ui
