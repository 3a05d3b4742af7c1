#pragma once

#include "core/forecast/forecast_sums.h"

namespace plumule {

class Ledger;

// Facts and what they come to, of now.
struct ForecastNow
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

    [[nodiscard]] Result<ForecastNow> now();

private:
    Ledger& m_ledger;
};

} // namespace plumule
