#include "core/stats/verdict/verdict.h"

#include <cmath>

namespace plumule::stats {

Verdict verdictOf(const Interval& interval, double margin)
{
    const bool isAbove = interval.lower() > 0;
    const bool isBelow = interval.upper() < 0;
    if (-margin < interval.lower() && interval.upper() < margin) {
        return isAbove || isBelow ? Verdict::RealButTooSmall : Verdict::SameWithinMargin;
    }
    if (isAbove) {
        return Verdict::More;
    }
    return isBelow ? Verdict::Less : Verdict::CantTellYet;
}

double logMargin(double percent)
{
    return std::log1p(percent / 100);
}

double percentOfLog(double x)
{
    return 100 * std::expm1(x);
}

} // namespace plumule::stats
