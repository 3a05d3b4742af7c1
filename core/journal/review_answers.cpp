#include "core/journal/review_answers.h"

#include "core/journal/ledger.h"
#include "core/review/season_repository.h"

namespace plumule {

Result<SeasonReview> ReviewAnswers::season(const SeasonFilter& filter, const Progress& progress)
{
    if (filter.to < filter.from) {
        return fail(ErrorKind::Invalid, "season.span", toIso(filter.from) + " " + toIso(filter.to));
    }
    return m_ledger.ask([&](Database& database) -> Result<SeasonReview> {
        auto facts = SeasonRepository(database).read(filter, progress);
        if (!facts) {
            return tl::unexpected<Error>(facts.error());
        }
        return reviewOf(*facts, filter);
    });
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
