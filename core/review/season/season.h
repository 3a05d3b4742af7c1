#pragma once

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/review/facts/response.h"

#include <optional>
#include <string>

namespace plumule {

struct SeasonTag;
using SeasonId = Id<SeasonTag>;

// A declared series: the sowings from its first day on until the next season begins, judged as one.
struct Season
{
    SeasonId id; // not stored: the season that a journal is in before any was declared
    std::string name;
    Date startsOn;
    // Trials named before the first of them; the answer comes with the last. None: looked at after
    // every sowing.
    std::optional<int> plannedTrials;
    Response mainMetric = Response::YieldPerTray; // the others are side results
    bool operator==(const Season&) const = default;
};

} // namespace plumule
