#include "core/journal/review_answers.h"

#include "core/journal/ledger.h"
#include "core/review/season_repository.h"

namespace plumule {

// Reads the season's facts and hands them to `work`.
template <class Answer, class Work>
Result<Answer> ReviewAnswers::answer(const SeasonFilter& filter, const SeasonNeeds& needs,
                                     const Progress& progress, Work work)
{
    if (filter.to < filter.from) {
        return fail(ErrorKind::Invalid, "season.span", toIso(filter.from) + " " + toIso(filter.to));
    }
    return m_ledger.ask([&](Database& database) -> Result<Answer> {
        auto facts = SeasonRepository(database).read(filter, progress, needs);
        if (!facts) {
            return tl::unexpected<Error>(facts.error());
        }
        return work(*facts);
    });
}

Result<SeasonReview> ReviewAnswers::season(const SeasonFilter& filter, const Progress& progress)
{
    return answer<SeasonReview>(filter, SeasonNeeds{}, progress,
                                [&](const SeasonFacts& facts) { return reviewOf(facts, filter); });
}

Result<SeasonComparison> ReviewAnswers::comparison(const SeasonFilter& filter, Response response,
                                                   std::optional<Mass> margin,
                                                   const Progress& progress)
{
    ComparisonAsk ask;
    ask.response = response;
    ask.marginPerTray = margin;
    return comparison(filter, ask, progress);
}

Result<SeasonComparison> ReviewAnswers::comparison(const SeasonFilter& filter,
                                                   const ComparisonAsk& ask,
                                                   const Progress& progress)
{
    const SeasonNeeds needs{ask.response == Response::CostPerGram,
                            ask.response == Response::HeightOnDay};
    return answer<SeasonComparison>(filter, needs, progress, [&](const SeasonFacts& facts) {
        return comparisonOf(facts, filter, ask);
    });
}

Result<std::vector<HeightFit>> ReviewAnswers::heightFits(const SeasonFilter& filter,
                                                         const Progress& progress)
{
    return answer<std::vector<HeightFit>>(
        filter, {false, true}, progress,
        [&](const SeasonFacts& facts) { return plumule::heightFits(facts, filter); });
}

SeasonFilter ReviewAnswers::usualSeason() const
{
    const Date today = m_ledger.clock().today();
    SeasonFilter filter;
    filter.from = today - 364;
    filter.to = today;
    return filter;
}

} // namespace plumule
