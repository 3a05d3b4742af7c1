#include "core/journal/week/week_forecast.h"

#include "core/forecast/forecast_repository.h"
#include "core/forecast/forecast_sums.h"
#include "core/forecast/forecast_total.h"

#include <memory>

namespace plumule {
namespace {

constexpr double kBelow = (1 - kForecastLevel) / 2; // as many below the interval as above it

// What all sums of one week rest on.
struct WeekPast
{
    ForecastFacts facts;
    ForecastReport report;
};

ExpectedGrams sumOf(const WeekPast& past, const std::vector<CutLot>& lots)
{
    std::vector<SumPart> parts;
    parts.reserve(lots.size());
    for (const CutLot& lot : lots) {
        parts.push_back(
            {yieldModel(past.facts, past.report, lot.variety, lot.medium), lot.trays, lot.sownOn});
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
            WeekPast read{ForecastRepository(database).read(now), {}};
            read.report = forecastReport(read.facts);
            *past = std::move(read);
        }
        return std::optional(sumOf(**past, lots));
    };
}

} // namespace plumule
