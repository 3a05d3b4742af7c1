#pragma once

#include "core/chart/chart_spec.h"
#include "core/cost/cost.h"

namespace plumule {

struct PriceStep
{
    Date from;
    double perUnit = 0; // currency units a litre, piece, hour …; seed: a kilogram
    bool operator==(const PriceStep&) const = default;
};

// What one thing has cost: each step holds until the next.
struct PriceHistory
{
    std::optional<PriceItem> item; // none: seed of a variety, by its lots
    std::optional<MediumId> medium;
    std::optional<VarietyId> variety;
    std::vector<PriceStep> steps; // by day; of a day the last

    // None before the first.
    [[nodiscard]] std::optional<double> on(Date day) const;
    // That day's price over that of 365 days before, less 1; none where either is not known or 0.
    [[nodiscard]] std::optional<double> yearlyChange(Date day) const;
};

// Of every item but media, whether it has a price or not, then of these media, in their order.
[[nodiscard]] std::vector<PriceHistory> priceHistories(const std::vector<Price>& prices,
                                                       const std::vector<MediumId>& media);
// Lots with a day, a weight and a price.
[[nodiscard]] PriceHistory seedPriceHistory(const std::map<SeedLotId, SeedLot>& lots,
                                            VarietyId variety);

// A step line from `from` to `to`, days since 1970 along x; no series where no price holds by `to`.
[[nodiscard]] ChartSpec priceChart(const PriceHistory& history, Date from, Date to,
                                   const std::string& currency);

} // namespace plumule
