#include "core/stats/prediction/counts.h"

#include <boost/math/special_functions/beta.hpp>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

namespace plumule::stats {
namespace {

double logBeta(double a, double b)
{
    return boost::math::lgamma(a) + boost::math::lgamma(b) - boost::math::lgamma(a + b);
}

} // namespace

std::vector<double> chancesOfCounts(int trials, const UncertainChance& chance)
{
    std::vector<double> chances;
    const double n = trials;
    for (int count = 0; count <= trials; ++count) {
        const double k = count;
        const double ways = -std::log1p(n) - logBeta(n - k + 1, k + 1);
        chances.push_back(std::exp(ways + logBeta(k + chance.alpha(), n - k + chance.beta()) -
                                   logBeta(chance.alpha(), chance.beta())));
    }
    return chances;
}

double binomialAtMost(double successes, double trials, double chance)
{
    if (successes >= trials) {
        return 1;
    }
    return boost::math::ibetac(successes + 1, trials - successes, chance);
}

} // namespace plumule::stats
