// Part of core/review/facts/season.h: a mean and its interval.
#include "core/review/facts/season.h"

#include "core/stats/probability/distributions.h"

#include <cmath>
#include <numeric>

namespace plumule {

MeanInterval meanInterval(const std::vector<double>& values, double level)
{
    MeanInterval result;
    result.n = static_cast<int>(values.size());
    if (values.empty()) {
        return result;
    }
    const double n = static_cast<double>(values.size());
    result.mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
    if (values.size() < 2) {
        return result;
    }
    double squares = 0;
    for (const double value : values) {
        squares += (value - result.mean) * (value - result.mean);
    }
    const double sd = std::sqrt(squares / (n - 1));
    const double reach = stats::tQuantile((1 + level) / 2, n - 1) * sd / std::sqrt(n);
    result.sd = sd;
    result.lower = result.mean - reach;
    result.upper = result.mean + reach;
    return result;
}

} // namespace plumule
