#pragma once

#include "core/review/comparison/comparison.h"

namespace plumule {

// One variety's part of the series' answer `whole`: its verdicts, over what `alone`, the comparison
// of its trays by hand, shows of them.
[[nodiscard]] SeasonComparison ofOneVariety(const SeasonComparison& whole, SeasonComparison alone,
                                            VarietyId variety, const std::string& name);

} // namespace plumule
