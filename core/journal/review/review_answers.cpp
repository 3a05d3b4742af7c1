#include "core/journal/review/review_answers.h"

#include "core/base/work_reason.h"
#include "core/journal/ledger/ledger.h"
#include "core/review/facts/review_reason.h"
#include "core/review/facts/season_repository.h"

#include <algorithm>

namespace plumule {
namespace {

// Of the whole work, where sums that take long follow.
constexpr double kShareOfReading = 0.5;

} // namespace

// Reads the season's facts and hands them to `work`.
template <class Answer, class Work>
Result<Answer> ReviewAnswers::answer(const SeasonFilter& filter, const SeasonNeeds& needs,
                                     const Progress& progress, Work work, const WhatIf& whatIf)
{
    if (filter.to < filter.from) {
        return fail(ErrorKind::Invalid, ReviewReason::SpanBackwards, toIso(filter.from),
                    toIso(filter.to));
    }
    return m_ledger.ask([&](Database& database) -> Result<Answer> {
        auto facts = SeasonRepository(database).read(filter, progress, needs);
        if (!facts) {
            return passOn(facts);
        }
        apply(whatIf, *facts);
        return work(*facts);
    });
}

Result<SeasonReview> ReviewAnswers::season(const SeasonFilter& filter, const Progress& progress)
{
    return season(filter, WhatIf{}, progress);
}

Result<SeasonReview> ReviewAnswers::season(const SeasonFilter& filter, const WhatIf& whatIf,
                                           const Progress& progress)
{
    return answer<SeasonReview>(
        filter, SeasonNeeds{}, progress,
        [&](const SeasonFacts& facts) { return reviewOf(facts, filter); }, whatIf);
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
    return comparison(filter, ask, WhatIf{}, progress);
}

Result<SeasonComparison> ReviewAnswers::comparison(const SeasonFilter& filter,
                                                   const ComparisonAsk& ask, const WhatIf& whatIf,
                                                   const Progress& progress)
{
    const bool isOfHeights =
        ask.response == Response::HeightOnDay || ask.response == Response::Evenness;
    const bool isLong = ask.response == Response::CostPerGram;
    return answer<SeasonComparison>(
        filter, {ask.response == Response::CostPerGram, isOfHeights},
        isLong ? progress.part(0, kShareOfReading) : progress,
        [&](const SeasonFacts& facts) -> Result<SeasonComparison> {
            SeasonComparison found =
                comparisonOf(facts, filter, ask, progress.part(kShareOfReading, 1));
            if (progress.isStopped()) {
                return fail(ErrorKind::Cancelled, WorkReason::Stopped);
            }
            return found;
        },
        whatIf);
}

Result<std::vector<HeightFit>> ReviewAnswers::heightFits(const SeasonFilter& filter,
                                                         const Progress& progress)
{
    return answer<std::vector<HeightFit>>(
        filter, {false, true}, progress,
        [&](const SeasonFacts& facts) { return plumule::heightFits(facts, filter); });
}

Result<std::vector<Payback>> ReviewAnswers::payback(const SeasonFilter& filter,
                                                    const WhatIf& whatIf, const Progress& progress)
{
    return answer<std::vector<Payback>>(
        filter, {true, false}, progress.part(0, kShareOfReading),
        [&](const SeasonFacts& facts) {
            return paybackOf(facts, filter, progress.part(kShareOfReading, 1));
        },
        whatIf);
}

Result<std::vector<PieceAgeing>> ReviewAnswers::pieceAgeing(const SeasonFilter& filter,
                                                            const Progress& progress)
{
    return answer<std::vector<PieceAgeing>>(
        filter, {false, false}, progress,
        [&](const SeasonFacts& facts) { return plumule::pieceAgeing(facts, filter); });
}

Result<PlanOutlook> ReviewAnswers::outlook(const TrialDraft& draft, const Progress& progress)
{
    return m_ledger.ask([&](Database& database) -> Result<PlanOutlook> {
        const SeasonFacts facts =
            SeasonRepository(database).readForPlan(draft.plan.variety, m_ledger.clock().today());
        if (progress.isStopped()) {
            return fail(ErrorKind::Cancelled, WorkReason::Stopped);
        }
        return outlookOf(draft, facts);
    });
}

Result<std::vector<Finding>> ReviewAnswers::fairnessOfPlan(const TrialDraft& draft)
{
    return m_ledger.ask([&](Database& database) -> Result<std::vector<Finding>> {
        const SeasonFacts facts =
            SeasonRepository(database).readForPlan(draft.plan.variety, m_ledger.clock().today());
        return plumule::fairnessOfPlan(draft, facts);
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

SeasonFilter ReviewAnswers::filterOf(TrialId trial)
{
    const auto sowings = m_ledger.ask([&](Database& database) -> Result<std::pair<Date, Date>> {
        return SeasonRepository(database).sowingsOf(trial).value_or(
            std::pair(m_ledger.clock().today(), m_ledger.clock().today()));
    });
    const Date today = m_ledger.clock().today();
    SeasonFilter filter;
    filter.from = sowings ? sowings->first : today;
    filter.to = std::max(sowings ? sowings->second : today, today) + kLongestGrowth;
    filter.trials = {trial};
    return filter;
}

} // namespace plumule
