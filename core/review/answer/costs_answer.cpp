#include "core/review/answer/costs_answer.h"

#include "core/base/work_reason.h"

#include <algorithm>

namespace plumule {
namespace {

Done goneOn(const Progress& progress, double fraction)
{
    if (progress.isStopped()) {
        return fail(ErrorKind::Cancelled, WorkReason::Stopped);
    }
    progress.report(fraction);
    return {};
}

std::vector<PriceHistory> historiesOf(const CostsAnswer& answer, const CostsQuestion& question,
                                      const SeasonFacts& facts)
{
    std::vector<MediumId> media;
    for (const MediumCosts& costs : answer.media) {
        media.push_back(costs.medium.id);
    }
    auto histories = priceHistories(facts.cost.prices, media);
    if (question.filter.varieties.size() == 1) {
        histories.push_back(seedPriceHistory(facts.cost.lots, question.filter.varieties.front()));
    }
    return histories;
}

void takeToday(CostsAnswer& answer, const CostsQuestion& question, const SeasonFacts& facts,
               const Progress& progress)
{
    answer.review = reviewOf(facts, question.filter);
    answer.media = mediumCosts(facts, question.filter, progress);
    for (const MediumCosts& costs : answer.media) {
        answer.harvested += costs.today.harvested;
        answer.failed += costs.today.failed;
    }
    answer.lacks = costLacks(facts, question.filter);
    answer.paybacks = paybackOf(facts, answer.review);
    answer.curveLacks = curveLacks(facts, answer.review);
    answer.seedPrice = seedPricePaid(facts, question.filter);
    answer.histories = historiesOf(answer, question, facts);
}

void takeWhatIf(CostsAnswer& answer, const CostsQuestion& question, const SeasonFacts& facts,
                const Progress& progress)
{
    for (const MediumCosts& would : mediumCosts(facts, question.filter, progress)) {
        const auto is =
            std::find_if(answer.media.begin(), answer.media.end(), [&](const MediumCosts& each) {
                return each.medium.id == would.medium.id;
            });
        if (is != answer.media.end()) {
            is->whatIf = would.today;
        }
    }
    answer.paybacksIf = paybackOf(facts, reviewOf(facts, question.filter));
}

} // namespace

Result<CostsAnswer> costsAnswerOf(const CostsQuestion& question, SeasonFacts facts, Date today,
                                  const Progress& progress)
{
    CostsAnswer answer;
    answer.units = facts.cost.layout.room.units;
    answer.madeOn = today;
    priceTrays(facts, progress);
    if (const Done on = goneOn(progress, 0.3); !on) {
        return passOn(on);
    }
    takeToday(answer, question, facts, progress);
    if (const Done on = goneOn(progress, 0.6); !on) {
        return passOn(on);
    }
    if (!question.whatIf.isEmpty()) {
        apply(question.whatIf, facts);
        priceTrays(facts, progress);
        takeWhatIf(answer, question, facts, progress);
    }
    if (const Done on = goneOn(progress, 1); !on) {
        return passOn(on);
    }
    return answer;
}

} // namespace plumule
