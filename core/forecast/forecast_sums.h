#pragma once

#include "core/forecast/forecast_facts.h"

namespace plumule {

// Everything of one day: what grows, how earlier forecasts came out, and what follows from that.
struct ForecastReport
{
    std::vector<TrayForecast> growing;  // by harvest day, then code; trays cut once are left out
    std::vector<ScoredForecast> scored; // kScoredOfEach latest harvests of each variety, by cut
    std::vector<VarietyScore> scores;   // by the varieties' names
    VarietyScore all;
    int unscored = 0; // harvests among the latest that the library foretold
};

inline constexpr std::size_t kScoredOfEach = 20;

// Growing trays and scores of the facts, as of their moment.
[[nodiscard]] ForecastReport forecastReport(const ForecastFacts& facts);

// What trays of that variety on that medium give, as known at facts.now, widened as the variety's
// scores in the report ask for.
[[nodiscard]] YieldModel yieldModel(const ForecastFacts& facts, const ForecastReport& report,
                                    VarietyId variety, MediumId medium);
// Of one tray that is harvested.
[[nodiscard]] YieldForecast yieldOf(const YieldModel& model);

// The first cut of a tray that begins its first stage at that moment, of stages that long; the
// moment may be to come.
[[nodiscard]] DayForecast dayForecast(const ForecastFacts& facts, const ForecastReport& report,
                                      VarietyId variety, MediumId medium, Moment sownAt,
                                      const std::vector<StageFact>& stages);

} // namespace plumule
