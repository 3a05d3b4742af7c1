#include "core/stats/samples/triangle.h"

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <cassert>

namespace plumule::stats {

namespace {

constexpr double kThird = 1.0 / 3.0;
// A tail that is alpha but for rounding counts as alpha.
constexpr double kRounding = 1e-12;

} // namespace

double atLeastByChance(int n, int right, double chance)
{
    assert(n >= 1 && chance > 0 && chance < 1);
    if (right <= 0) {
        return 1;
    }
    if (right > n) {
        return 0;
    }
    const boost::math::binomial_distribution<double> guesses(n, chance);
    return boost::math::cdf(boost::math::complement(guesses, right - 1));
}

Result<ForcedChoice> triangleTest(int n, int right)
{
    if (n < 1) {
        return fail(ErrorKind::TooFew, GroupsReason::NoTasters);
    }
    if (right < 0 || right > n) {
        return fail(ErrorKind::Invalid, GroupsReason::RightAnswers, right, n);
    }
    const double share = static_cast<double>(right) / n;
    return ForcedChoice{n, right, std::min(1.0, atLeastByChance(n, right, kThird)),
                        std::max(0.0, (share - kThird) / (1 - kThird))};
}

std::optional<int> fewestRight(int n, double chance, double alpha)
{
    for (int right = 0; right <= n; ++right) {
        if (atLeastByChance(n, right, chance) <= alpha * (1 + kRounding)) {
            return right;
        }
    }
    return std::nullopt;
}

} // namespace plumule::stats
