#include "core/stats/probability/root.h"

#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <cstdint>
#include <utility>

namespace plumule::stats {

Result<double> risingRoot(const std::function<double(double)>& rising, double start,
                          double firstStep)
{
    double here = start;
    double value = rising(here);
    if (std::isnan(value)) {
        return fail(ErrorKind::NoConvergence, ProbabilityReason::NoRoot);
    }
    if (value == 0) {
        return here;
    }
    double step = value < 0 ? firstStep : -firstStep;
    for (int tries = 0; tries < 200; ++tries, step *= 1.6) {
        const double next = here + step;
        const double nextValue = rising(next);
        if (std::isnan(nextValue)) {
            return fail(ErrorKind::NoConvergence, ProbabilityReason::NoRoot);
        }
        if (nextValue == 0) {
            return next;
        }
        if ((nextValue < 0) == (value < 0)) {
            here = next;
            value = nextValue;
            continue;
        }
        double low = here;
        double high = next;
        double atLow = value;
        double atHigh = nextValue;
        if (low > high) {
            std::swap(low, high);
            std::swap(atLow, atHigh);
        }
        std::uintmax_t steps = 200;
        const auto bracket = boost::math::tools::toms748_solve(
            rising, low, high, atLow, atHigh, boost::math::tools::eps_tolerance<double>(49), steps);
        return 0.5 * (bracket.first + bracket.second);
    }
    return fail(ErrorKind::NoConvergence, ProbabilityReason::NoRoot);
}

} // namespace plumule::stats
