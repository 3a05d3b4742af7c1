#pragma once

#include "core/forecast/forecast_scores.h"
#include "core/forecast/known_past.h"

#include <map>

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

// What trays of a variety on a medium give, as known at facts.now, widened as the variety's scores
// in the report ask for. The past is read once, and each model made once; facts and report must
// outlive it.
class YieldModels
{
public:
    YieldModels(const ForecastFacts& facts, const ForecastReport& report);

    [[nodiscard]] const YieldModel& of(VarietyId variety, MediumId medium);

private:
    [[nodiscard]] YieldModel made(const ForecastCell& cell) const;

    const ForecastReport& m_report;
    KnownPast m_past;
    std::map<ForecastCell, YieldModel> m_models;
};
// Of one tray that is harvested.
[[nodiscard]] YieldForecast yieldOf(const YieldModel& model);

} // namespace plumule
