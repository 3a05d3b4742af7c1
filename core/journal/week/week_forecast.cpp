#include "core/journal/week/week_forecast.h"

#include "core/forecast/forecast_repository.h"
#include "core/forecast/forecast_sums.h"
#include "core/forecast/forecast_total.h"

#include <memory>

namespace plumule {
namespace {

constexpr double kBelow = (1 - kForecastLevel) / 2; // as many below the interval as above it

// What all sums of one week rest on; its parts point into each other.
struct WeekPast
{
    explicit WeekPast(ForecastFacts known)
        : facts(std::move(known))
        , report(forecastReport(facts))
        , models(facts, report)
    {}
    WeekPast(const WeekPast&) = delete;
    WeekPast& operator=(const WeekPast&) = delete;

    ForecastFacts facts;
    ForecastReport report;
    YieldModels models;
};

ExpectedGrams sumOf(WeekPast& past, const std::vector<CutLot>& lots)
{
    std::vector<SumPart> parts;
    parts.reserve(lots.size());
    for (const CutLot& lot : lots) {
        parts.push_back({past.models.of(lot.variety, lot.medium), lot.trays, lot.sownOn});
    }
    const ForecastTotal total(parts);
    return {total.quantile(kBelow), total.mean(), total.quantile(1 - kBelow)};
}

} // namespace

Forecaster forecasterOf(Database& database, Moment now)
{
    auto past = std::make_shared<std::optional<WeekPast>>();
    return [&database, now, past](const std::vector<CutLot>& lots) {
        if (!*past) {
            past->emplace(ForecastRepository(database).read(now));
        }
        return std::optional(sumOf(**past, lots));
    };
}

} // namespace plumule
