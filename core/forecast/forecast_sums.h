#pragma once

#include "core/forecast/forecast_scores.h"

namespace plumule {

// Everything of one day: what grows, how earlier forecasts came out, and what follows from that.
struct ForecastReport
{
    std::vector<TrayForecast> growing;  // by harvest day, then code; trays cut once are left out
    std::vector<ScoredForecast> scored; // as latestForecasts()
    std::vector<VarietyScore> scores;   // by the varieties' names; of any that has one scored
    VarietyScore all;
    int unscored = 0; // of `scored`, yields that the library foretold

    // How many times as wide its intervals are drawn: by its own score, or with few harvests by
    // that of all.
    [[nodiscard]] double yieldWidened(VarietyId variety) const;
    [[nodiscard]] double dayWidened(VarietyId variety) const;
};

// Growing trays and scores of the facts, as of their moment.
[[nodiscard]] ForecastReport forecastReport(const ForecastFacts& facts);

// What trays of that variety on that medium give, as known at facts.now, widened as the variety's
// scores in the report ask for.
[[nodiscard]] YieldModel yieldModel(const ForecastFacts& facts, const ForecastReport& report,
                                    VarietyId variety, MediumId medium);
// Of one tray that is harvested.
[[nodiscard]] YieldForecast yieldOf(const YieldModel& model);

} // namespace plumule
