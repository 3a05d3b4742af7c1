#pragma once

#include "core/review/comparison/comparison.h"
#include "core/stats/verdict/advice.h"
#include "core/stats/verdict/group_contrast.h"

#include <map>
#include <set>

namespace plumule {

// What turns the engine's pairs into those that are shown.
struct PairContext
{
    stats::CellScale scale = stats::CellScale::Log;
    std::map<std::size_t, double> means; // by medium (or group), in the response's unit
    // Pairs whose feeding differs fully, and pairs that are not comparable and by what; a < b.
    std::set<std::pair<std::size_t, std::size_t>> fedUnalike;
    std::map<std::pair<std::size_t, std::size_t>, Aspect> mixedWith;
    std::set<std::pair<std::size_t, std::size_t>> reversed; // read as b over a, to be more not less
    std::optional<MoreTrials> more;                         // what is advised where more would help
};
[[nodiscard]] PairContext contextOf(const stats::MediaAnswer& answer, PairContext shared);

[[nodiscard]] MediaPair mediaPair(const stats::PairAnswer& pair, const PairContext& context);
[[nodiscard]] MediaPair mediaPair(const stats::GroupContrast& pair, const PairContext& context);

} // namespace plumule
