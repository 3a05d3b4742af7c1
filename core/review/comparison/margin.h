#pragma once

#include "core/review/comparison/media_pair.h"
#include "core/stats/verdict/sown_tray.h"

namespace plumule {

// From the ask; else, of yields, the smallest margin of the trays' trials, as a share of the mean
// grams a tray; else 10 %.
[[nodiscard]] Margin marginFor(const SeasonFacts& facts, const ComparedTrays& trays,
                               const ComparisonAsk& ask);

// log(1 + m/100) on a log scale, else the share of the trays' mean.
[[nodiscard]] double marginOnScale(const Margin& margin, stats::CellScale scale,
                                   const ComparedTrays& trays);

} // namespace plumule
