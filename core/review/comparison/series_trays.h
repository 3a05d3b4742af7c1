#pragma once

#include "core/review/comparison/comparison.h"

namespace plumule {

// The trays of a question as the verdict sees them. Sowings are numbered as in `sowings`, media as
// in ComparedTrays.
struct SeriesTrays
{
    std::vector<Sowing> sowings;        // oldest first
    std::vector<stats::SownTray> trays; // failed ones too
    std::vector<ComparedValue> values;  // of trays with a value, in the order of `compared`
    std::vector<stats::SownAndDiscarded> discards;
};
[[nodiscard]] SeriesTrays seriesTrays(const SeasonFacts& facts, const SeasonFilter& filter,
                                      const ComparedTrays& compared, Response response);

[[nodiscard]] stats::CellScale scaleOf(Response response);

} // namespace plumule
