#pragma once

#include "core/review/comparison/comparison.h"

namespace plumule {

// Media put together, in the order of their first members; numbers are those of `media`. Of the
// grower's own groups only media that have one. No group where nothing was asked for.
[[nodiscard]] std::vector<GroupOfMedia> groupsAmong(const SeasonFacts& facts,
                                                    const std::vector<const Medium*>& media,
                                                    std::optional<Grouping> by);

// Means of the comparison's groups, how unlike their members are, and what their pairs answer.
void answerForGroups(SeasonComparison& comparison, const stats::MediaAnswer& answer, double margin);

} // namespace plumule
