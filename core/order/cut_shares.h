#pragma once

#include "core/order/order.h"

#include <map>

namespace plumule {

// Cut on that many days before the promised one it still counts for it; kept cold meanwhile (common
// practice, no source).
inline constexpr int kDaysKept = 2;
// By hand a cut may go to a promise that is further off than the rule looks.
inline constexpr int kDaysForHand = 7;

// A cut with what is needed to put it to a promise.
struct WeighedCut
{
    HarvestId id;
    std::string code; // of its tray
    VarietyId variety;
    Date on;
    int minute = 0;
    Mass net;
    std::optional<OrderCut> byHand;
    bool operator==(const WeighedCut&) const = default;
};

// What of a cut went to a promise.
struct CutShare
{
    HarvestId cut;
    std::string code;
    Date on;
    Mass part;
    bool isByHand = false;
    bool operator==(const CutShare&) const = default;
};

using SharesByPromise = std::map<PromiseKey, std::vector<CutShare>>;

[[nodiscard]] Mass sumOf(const std::vector<CutShare>& shares);

// Puts cuts to promises. One that the grower put to a promise goes there whole. Any other, oldest
// first, fills promises of its variety for its own day and the kDaysKept after it, the oldest
// promise first; what is over goes to the one that it reached last, or with nothing left to fill to
// the first of them. A cut without a promise in these days goes to none.
[[nodiscard]] SharesByPromise shareCuts(const std::vector<Promise>& promises,
                                        const std::vector<WeighedCut>& cuts);

} // namespace plumule
