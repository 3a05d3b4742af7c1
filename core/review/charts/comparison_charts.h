#pragma once

#include "core/chart/chart_spec.h"
#include "core/review/comparison/comparison.h"
#include "core/review/season/height_fits.h"

#include <utility>
#include <vector>

namespace plumule {

// A row a medium: each tray a dot, hollow where its sowing does not count yet, and the adjusted
// mean marked. Key "<response>_adjusted".
[[nodiscard]] ChartSpec adjustedMeansChart(const SeasonComparison& comparison);

// A row a pair that has an interval: the difference in percent, and marks at 0 and the margin. Rows
// are named "a − b". Key "<response>_differences".
[[nodiscard]] ChartSpec differencesChart(const SeasonComparison& comparison);

// What the sowings say of a pair, oldest first. Where more than kMostSowings say something only so
// many are shown: the trials before the other sowings, of each the newest.
struct SowingPair
{
    const TrialPart* part = nullptr;
    const MediaPair* pair = nullptr;
};
struct ShownSowings
{
    std::vector<SowingPair> rows;
    std::size_t all = 0;
    std::pair<int, int> trays = {0, 0}; // of all, a's and b's
};
inline constexpr std::size_t kMostSowings = 40;
[[nodiscard]] ShownSowings shownSowings(const SeasonComparison& comparison, std::size_t pair);

// Do the trials agree on a pair? A row a shown sowing, and last, with an empty name, all of them
// together. In percent, with the same marks. Key "<response>_by_trial".
[[nodiscard]] ChartSpec trialsChart(const SeasonComparison& comparison, std::size_t pair);

// A row a variety, its media below one another: each tray a dot in percent of the mean of its
// sowing and variety, the medium's mean marked. Key "<response>_by_variety".
[[nodiscard]] ChartSpec varietiesChart(const SeasonComparison& comparison);

// One variety's fitted curves with their bands, and the readings; dots alone where no curve fits.
[[nodiscard]] ChartSpec heightFitChart(const std::vector<HeightFit>& fits, VarietyId variety);
// The variety with the most readings; none without any.
[[nodiscard]] std::optional<VarietyId> mostReadVariety(const std::vector<HeightFit>& fits);

} // namespace plumule
