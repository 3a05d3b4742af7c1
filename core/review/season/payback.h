#pragma once

#include "core/cost/missing_price.h"
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
    bool hasBand = false;        // from three trays of each on
    std::optional<int> low;      // 95 % interval of that use; none: never
    std::optional<int> high;     // none: never
    std::vector<CostBand> curve; // from one use on, as long as the season's; bands of no width
                                 // without one
    Medium against;              // the season's single-use medium with the lowest cost per gram
};

// Of each reusable medium whose piece and washing have a price, by medium id; empty where no
// single-use medium with a known price is among the trays. `review` is that of the same facts. By
// the grams of all trays sown (stats::paybackIntervalOf), a use costing its washing and all else
// that a tray does; prices are taken as sure.
[[nodiscard]] std::vector<Payback> paybackOf(const SeasonFacts& facts, const SeasonReview& review);

// Why a medium has no curve: its own price is lacking (a piece's on the span's last day), or what
// washing its pieces costs.
struct CurveLack
{
    Medium medium;
    std::vector<MissingPrice> prices;
    bool operator==(const CurveLack&) const = default;
};

// Of every medium with weighed trays but without a curve for want of a price, by medium id; empty
// where no reusable medium is among them, since nothing then pays back.
[[nodiscard]] std::vector<CurveLack> curveLacks(const SeasonFacts& facts,
                                                const SeasonReview& review);

} // namespace plumule
