#pragma once

#include "core/chart/chart_spec.h"
#include "core/review/facts/season.h"

namespace plumule {

enum class Split
{
    Quarters, // of the calendar, as the next two; the first and last are cut to the span
    HalfYears,
    Years,
    YearBefore // the same days a year earlier, then the span itself
};

// The parts of a span, oldest first, each with the filter's other choices. None where the span is
// upside down.
[[nodiscard]] std::vector<SeasonFilter> spansOf(const SeasonFilter& filter, Split split);

// One of several seasons shown together.
struct SeasonBeside
{
    SeasonFilter filter;
    SeasonReview review;
};

// A row a medium and season, seasons of one medium together: the mean yield with its interval, a
// dot where there is one tray only. Rows are named "Mesh · 2026-01-01–2026-03-31". Key
// "seasons_beside".
[[nodiscard]] ChartSpec seasonsChart(const std::vector<SeasonBeside>& seasons);

} // namespace plumule
