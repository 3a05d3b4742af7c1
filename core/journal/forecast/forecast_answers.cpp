#include "core/journal/forecast/forecast_answers.h"

#include "core/forecast/forecast_repository.h"
#include "core/journal/ledger/ledger.h"

namespace plumule {

Result<ForecastAnswer> ForecastAnswers::answer(std::optional<Moment> asOf)
{
    const Moment moment = m_ledger.clock().now();
    auto facts =
        m_ledger.ask([&](Database& database) { return ForecastRepository(database).read(moment); });
    if (!facts) {
        return passOn(facts);
    }
    ForecastAnswer answer{asOf ? knownAt(*facts, *asOf) : std::move(*facts), {}};
    answer.report = forecastReport(answer.facts);
    return answer;
}

} // namespace plumule
