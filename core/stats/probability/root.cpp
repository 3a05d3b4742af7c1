#include "core/stats/probability/root.h"

#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <cstdint>
#include <utility>

namespace plumule::stats {

namespace {

struct RisingPoint
{
    double x = 0;
    double value = 0;
};

// The values of the two differ in sign.
double rootBetween(const std::function<double(double)>& rising, RisingPoint low, RisingPoint high)
{
    if (low.x > high.x) {
        std::swap(low, high);
    }
    std::uintmax_t steps = 200;
    const auto bracket =
        boost::math::tools::toms748_solve(rising, low.x, high.x, low.value, high.value,
                                          boost::math::tools::eps_tolerance<double>(49), steps);
    return 0.5 * (bracket.first + bracket.second);
}

} // namespace

Result<double> risingRoot(const std::function<double(double)>& rising, double start,
                          double firstStep)
{
    RisingPoint here{start, rising(start)};
    double step = here.value < 0 ? firstStep : -firstStep;
    for (int tries = 0; tries < 200 && !std::isnan(here.value); ++tries, step *= 1.6) {
        if (here.value == 0) {
            return here.x;
        }
        const RisingPoint next{here.x + step, rising(here.x + step)};
        if (next.value != 0 && !std::isnan(next.value) && (next.value < 0) != (here.value < 0)) {
            return rootBetween(rising, here, next);
        }
        here = next;
    }
    return fail(ErrorKind::NoConvergence, ProbabilityReason::NoRoot);
}

} // namespace plumule::stats
