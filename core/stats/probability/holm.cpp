#include "core/stats/probability/holm.h"

#include <algorithm>

namespace plumule::stats {

std::vector<std::optional<double>> holmAdjusted(const std::vector<std::optional<double>>& p)
{
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < p.size(); ++i) {
        if (p[i]) {
            order.push_back(i);
        }
    }
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return *p[a] < *p[b]; });
    std::vector<std::optional<double>> adjusted(p.size());
    double largest = 0;
    for (std::size_t rank = 0; rank < order.size(); ++rank) {
        const auto tests = static_cast<double>(order.size() - rank);
        largest = std::max(largest, std::min(1.0, tests * *p[order[rank]]));
        adjusted[order[rank]] = largest;
    }
    return adjusted;
}

} // namespace plumule::stats
