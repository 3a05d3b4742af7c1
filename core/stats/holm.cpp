#include "core/stats/holm.h"

#include <algorithm>
#include <numeric>

namespace plumule::stats {

std::vector<double> holmAdjusted(std::span<const double> p)
{
    std::vector<std::size_t> order(p.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(),
              [&p](std::size_t a, std::size_t b) { return p[a] < p[b]; });
    std::vector<double> adjusted(p.size());
    double highest = 0;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const auto left = static_cast<double>(p.size() - i);
        highest = std::max(highest, std::min(1.0, left * p[order[i]]));
        adjusted[order[i]] = highest;
    }
    return adjusted;
}

} // namespace plumule::stats
