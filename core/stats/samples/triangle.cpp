#include "core/stats/samples/triangle.h"

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <cassert>

namespace plumule::stats {

namespace {

constexpr double kThird = 1.0 / 3.0;
// A tail that is alpha but for rounding counts as alpha.
constexpr double kRounding = 1e-12;

Result<ForcedChoice> forcedChoice(int n, int right, double chance, int sides)
{
    if (n < 1)
        return fail(ErrorKind::TooFew, "choice.tasters", std::to_string(n));
    if (right < 0 || right > n)
        return fail(ErrorKind::Invalid, "choice.right", std::to_string(right));
    const int counted = sides == 2 ? std::max(right, n - right) : right;
    const double share = static_cast<double>(counted) / n;
    return ForcedChoice{n, right, std::min(1.0, sides * atLeastByChance(n, counted, chance)),
                        std::max(0.0, (share - chance) / (1 - chance))};
}

} // namespace

double atLeastByChance(int n, int right, double chance)
{
    assert(n >= 1 && chance > 0 && chance < 1);
    if (right <= 0)
        return 1;
    if (right > n)
        return 0;
    const boost::math::binomial_distribution<double> guesses(n, chance);
    return boost::math::cdf(boost::math::complement(guesses, right - 1));
}

Result<ForcedChoice> triangleTest(int n, int right)
{
    return forcedChoice(n, right, kThird, 1);
}

Result<ForcedChoice> pairedPreference(int n, int forA)
{
    return forcedChoice(n, forA, 0.5, 2);
}

Result<ForcedChoice> pairedDifference(int n, int right)
{
    return forcedChoice(n, right, 0.5, 1);
}

std::optional<int> fewestRight(int n, double chance, double alpha)
{
    for (int right = 0; right <= n; ++right)
        if (atLeastByChance(n, right, chance) <= alpha * (1 + kRounding))
            return right;
    return std::nullopt;
}

std::optional<int> fewestForPreference(int n, double alpha)
{
    return fewestRight(n, 0.5, alpha / 2);
}

} // namespace plumule::stats
