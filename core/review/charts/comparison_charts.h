#pragma once

#include "core/chart/chart_spec.h"
#include "core/review/comparison/comparison.h"
#include "core/review/season/height_fits.h"

namespace plumule {

// A row a medium: each tray a dot, the adjusted mean with its interval. Key "<response>_adjusted".
[[nodiscard]] ChartSpec adjustedMeansChart(const SeasonComparison& comparison);

// A row a pair that has an interval: the difference with it, and marks at 0 and at ± the margin.
// Rows are named "a − b". Key "<response>_differences".
[[nodiscard]] ChartSpec differencesChart(const SeasonComparison& comparison);

// One variety's fitted curves with their bands, and the readings; dots alone where no curve fits.
[[nodiscard]] ChartSpec heightFitChart(const std::vector<HeightFit>& fits, VarietyId variety);
// The variety with the most readings; none without any.
[[nodiscard]] std::optional<VarietyId> mostReadVariety(const std::vector<HeightFit>& fits);

} // namespace plumule
