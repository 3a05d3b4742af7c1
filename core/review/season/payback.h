#pragma once

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/review/facts/season_facts.h"

namespace plumule {

// A point of a cost curve with its 95 % interval, in currency units a gram.
struct CostBand
{
    int uses = 1;
    double cost = 0;
    double low = 0;
    double high = 0;
    bool operator==(const CostBand&) const = default;
};

// When a piece of a reusable medium has paid for itself against a single-use medium, and how sure
// that is.
struct Payback
{
    Medium medium;
    std::optional<int> at;       // the use; none: never, as things stand
    std::optional<int> low;      // 95 % interval of that use; none: never
    std::optional<int> high;     // none: in more than 2.5 % of the resamples it never pays back
    double neverShare = 0;       // of the resamples in which it never does, 0 to 1
    std::vector<CostBand> curve; // from one use on, as long as the season's curves
    Medium against;              // the season's single-use medium with the lowest cost per gram
};

// Of each reusable medium whose piece and washing have a price, by medium id; empty where no
// single-use medium with a known price is among the trays. `review` is that of the same facts.
// Trays are drawn anew within their medium (percentile bootstrap, Efron and Tibshirani 1993, ch.
// 13: 2,000 resamples from the fixed seed kPaybackSeed); prices are taken as sure. Cancelled when
// stopped.
[[nodiscard]] Result<std::vector<Payback>>
paybackOf(const SeasonFacts& facts, const SeasonReview& review, const Progress& progress = {});

inline constexpr std::uint64_t kPaybackSeed = 20240501;

} // namespace plumule
