#include "core/stats/verdict/media_answer.h"

#include <cmath>

namespace plumule::stats {

std::optional<Interval> PairAnswer::interval() const
{
    return difference && halfWidth ? std::optional(Interval{*difference, *halfWidth})
                                   : std::nullopt;
}

PairAnswer reversed(PairAnswer pair)
{
    std::swap(pair.a, pair.b);
    if (pair.difference) {
        pair.difference = -*pair.difference;
    }
    if (pair.verdict == Verdict::More) {
        pair.verdict = Verdict::Less;
    } else if (pair.verdict == Verdict::Less) {
        pair.verdict = Verdict::More;
    }
    return pair;
}

} // namespace plumule::stats
