#pragma once

#include "core/stats/verdict/media_answer.h"

namespace plumule::stats {

// Two groups of media against each other, from an answer's pairs: difference and half-width are the
// means of those of the pairs across. No level is spent: Tukey's bound holds for contrasts.
struct GroupContrast
{
    std::size_t a = 0; // indices of groups
    std::size_t b = 0;
    std::optional<double> difference;
    std::optional<double> halfWidth;
    Verdict verdict = Verdict::NoVerdict;
    std::optional<NoVerdictReason> why; // of the first pair across that has no verdict

    [[nodiscard]] std::optional<Interval> interval() const;
};

struct GroupMean
{
    std::optional<double> onScale; // the mean of its members'
    std::optional<double> value;   // in the metric's unit
    // How unlike the members are: the widest difference between two of them, on the scale, and
    // whether any two are told apart. None with fewer than two comparable members.
    std::optional<double> widest;
    bool areToldApart = false;
};

struct GroupAnswer
{
    std::vector<GroupMean> groups;
    std::vector<GroupContrast> pairs; // (0,1), (0,2) … (1,2) …
};

// Groups hold media's numbers; a medium stands in one group at most. Members without trays count
// for nothing.
[[nodiscard]] GroupAnswer groupsOf(const MediaAnswer& answer,
                                   const std::vector<std::vector<std::size_t>>& groups,
                                   double margin);

} // namespace plumule::stats
