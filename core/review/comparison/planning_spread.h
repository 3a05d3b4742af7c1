#pragma once

#include "core/review/facts/compared_trays.h"

namespace plumule {

// A coefficient of variation between like trays to plan by where the trays themselves give none:
// pooled over the room's trays of one medium, variety and trial (outside trials, month of sowing),
// else kDefaultSpread.
[[nodiscard]] double spreadToPlanBy(const SeasonFacts& facts, SeasonFilter filter,
                                    const ComparisonAsk& ask);

} // namespace plumule
