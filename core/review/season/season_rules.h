#pragma once

#include "core/base/result.h"
#include "core/review/facts/season.h"
#include "core/review/season/season.h"

#include <vector>

namespace plumule {

inline constexpr int kFewestPlannedTrials = 3;
inline constexpr int kMostPlannedTrials = 99;

// A season with the last day on which a sowing belongs to it; none while it runs.
struct SeasonSpanOfDays
{
    Season season;
    std::optional<Date> sownUntil;
    bool operator==(const SeasonSpanOfDays&) const = default;
};

// Oldest first. Where none is stored, one from the first sowing that gave a harvest on, named by
// its year; nothing where there is none of these either.
[[nodiscard]] std::vector<SeasonSpanOfDays> seasonsInOrder(std::vector<Season> stored,
                                                           std::optional<Date> firstSowing);

// With its name trimmed. `others` are the seasons besides it, `before` is it as it stood, if it
// did, `lastHarvestedSowing` the latest sowing that gave a harvest. Missing name; Duplicate name or
// first day; Invalid number of trials; Conflict where its first day, the number of its trials or
// its main metric is chosen or changed after what it decides on was harvested: an answer seen
// beforehand must not choose its own series.
[[nodiscard]] Result<Season> checkedSeason(Season season, const std::vector<Season>& others,
                                           const std::optional<Season>& before,
                                           std::optional<Date> lastHarvestedSowing);

// The trays of its sowings, harvested up to today.
[[nodiscard]] SeasonFilter filterOf(const SeasonSpanOfDays& span, Date today);

} // namespace plumule
