#pragma once

#include "core/chart/chart_spec.h"
#include "core/harvest/weighing.h"
#include "core/review/facts/season.h"
#include "core/review/season/payback.h"

namespace plumule {

// Mean heights by day of growth, in mm, a series a medium.
[[nodiscard]] ChartSpec heightChart(const SeasonReview& review);
// Cost per gram over the uses of one piece, a series a medium.
[[nodiscard]] ChartSpec costByUsesChart(const SeasonReview& review);
// The season's cost curves, those of `paybacks` as bands, and where they pay back. Key
// "cost_by_uses".
[[nodiscard]] ChartSpec paybackChart(const std::vector<Payback>& paybacks,
                                     const SeasonReview& review);
// The yields of a running trial at the scale: each tray a point, by medium.
[[nodiscard]] ChartSpec trialSoFarChart(const TrialSoFar& trial);

} // namespace plumule
