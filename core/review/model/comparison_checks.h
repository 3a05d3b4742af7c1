#pragma once

#include "core/review/model/comparison_fit.h"

namespace plumule {

// Looks at what the fit leaves over. Odd trays are those whose studentized residual is beyond
// chance among that many (Bonferroni, 0.05); with a random term, the one farthest off by Grubbs.
[[nodiscard]] DataChecks checksOf(const ComparisonFit& fit, const ComparedTrays& trays);

} // namespace plumule
