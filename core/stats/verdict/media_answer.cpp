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

std::optional<UnitInterval> inUnit(const PairAnswer& pair, CellScale scale,
                                   std::optional<double> meanOfB)
{
    const std::optional<Interval> interval = pair.interval();
    if (!interval) {
        return std::nullopt;
    }
    if (!isLog(scale)) {
        return UnitInterval{interval->difference, interval->lower(), interval->upper()};
    }
    if (!meanOfB) {
        return std::nullopt;
    }
    return UnitInterval{*meanOfB * std::expm1(interval->difference),
                        *meanOfB * std::expm1(interval->lower()),
                        *meanOfB * std::expm1(interval->upper())};
}

} // namespace plumule::stats
