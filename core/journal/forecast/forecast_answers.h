#pragma once

#include "core/forecast/forecast_sums.h"

namespace plumule {

class Ledger;

// Facts of a moment, and what they come to.
struct ForecastAnswer
{
    ForecastFacts facts;
    ForecastReport report;
};

// Forecasts of the room, and how they scored.
class ForecastAnswers
{
public:
    explicit ForecastAnswers(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Of now; or as it was to be had at that moment, if it is past.
    [[nodiscard]] Result<ForecastAnswer> answer(std::optional<Moment> asOf = std::nullopt);

private:
    Ledger& m_ledger;
};

} // namespace plumule
