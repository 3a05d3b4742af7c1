// Part of core/harvest/harvest.h: what a tray should weigh.
#include "core/harvest/harvest.h"

#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>

namespace plumule {

ExpectedRange expectedRange(const std::vector<Mass>& yields)
{
    ExpectedRange range;
    range.trays = static_cast<int>(yields.size());
    if (yields.size() < 3) {
        return range;
    }
    const double n = static_cast<double>(yields.size());
    double mean = 0;
    for (const Mass yield : yields) {
        mean += inGrams(yield) / n;
    }
    double squares = 0;
    for (const Mass yield : yields) {
        squares += (inGrams(yield) - mean) * (inGrams(yield) - mean);
    }
    const double half =
        stats::tQuantile(0.975, n - 1) * std::sqrt(squares / (n - 1)) * std::sqrt(1 + 1 / n);
    range.low = grams(std::max(0.0, mean - half));
    range.high = grams(mean + half);
    return range;
}

} // namespace plumule
