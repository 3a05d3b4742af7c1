#include "core/stats/probability/steady_draw.h"

namespace plumule::stats {

std::size_t SteadyDraw::below(std::size_t bound)
{
    const std::uint64_t most = std::mt19937_64::max();
    const std::uint64_t unfair = most - (most % bound + 1) % bound;
    std::uint64_t drawn = m_generator();
    while (drawn > unfair) {
        drawn = m_generator();
    }
    return static_cast<std::size_t>(drawn % bound);
}

} // namespace plumule::stats
