#include "core/journal/review/review_answers.h"

#include "core/base/work_reason.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/trial/trial_reading.h"
#include "core/review/facts/season_repository.h"
#include "core/tasting/tasting_repository.h"
#include "core/variety/variety_repository.h"

#include <algorithm>

namespace plumule {
namespace {

// Of the whole work; the sums follow.
constexpr double kShareOfReading = 0.5;

std::vector<SeasonFilter> filtersOf(const SeasonQuestion& question)
{
    std::vector<SeasonFilter> filters{question.filter};
    filters.insert(filters.end(), question.beside.begin(), question.beside.end());
    return filters;
}

Done checkSpans(const SeasonQuestion& question)
{
    for (const SeasonFilter& filter : filtersOf(question)) {
        if (filter.to < filter.from) {
            return fail(ErrorKind::Invalid, "season.span",
                        toIso(filter.from) + " " + toIso(filter.to));
        }
    }
    return {};
}

// A part of the facts that may be damaged without taking the others with it.
template <class Read>
auto readPart(Read read) -> Result<std::invoke_result_t<Read>>
{
    try {
        return read();
    } catch (const StorageFailure& failure) {
        return tl::unexpected<Error>(failure.error());
    }
}

std::vector<PanelRecord> panelsOf(Database& database, const SeasonFilter& filter)
{
    TastingRepository tastings(database);
    std::vector<PanelRecord> records;
    for (const Panel& panel : tastings.panels(std::nullopt)) {
        if (isOfSpan(panel, filter)) {
            records.push_back(panel.isOpen() ? PanelRecord{panel, {}, {}, {}, {}, {}}
                                             : tastings.record(panel));
        }
    }
    return records;
}

// Of the varieties that were grown; where none was, of `planned`.
std::vector<Protocol> protocolsOf(Database& database, const SeasonFacts& facts,
                                  const SeasonFilter& filter, std::optional<VarietyId> planned)
{
    std::set<VarietyId> grown;
    for (const SeasonRecord& record : facts.cut) {
        if (isCounted(record, filter)) {
            grown.insert(record.tray.variety);
        }
    }
    if (grown.empty() && planned) {
        grown.insert(*planned);
    }
    std::vector<Protocol> protocols;
    for (const VarietyId variety : grown) {
        if (auto protocol = VarietyRepository(database).protocol(variety)) {
            protocols.push_back(std::move(*protocol));
        }
    }
    return protocols;
}

Result<AnswerFacts> readFacts(Database& database, const SeasonQuestion& question, Date today,
                              const Progress& progress,
                              std::optional<VarietyId> planned = std::nullopt)
{
    auto season = SeasonRepository(database).read(spanOver(filtersOf(question)), progress);
    if (!season) {
        return tl::unexpected<Error>(season.error());
    }
    AnswerFacts facts;
    facts.season = std::move(*season);
    facts.today = today;
    if (question.parts.count(SeasonPart::Tastings) > 0) {
        facts.panels = readPart([&] { return panelsOf(database, question.filter); });
    }
    if (question.parts.count(SeasonPart::Protocols) > 0) {
        facts.protocols =
            readPart([&] { return protocolsOf(database, facts.season, question.filter, planned); });
    }
    return facts;
}

// From its first sowing, planned or done.
SeasonFilter filterOf(Database& database, TrialId trial, Date today)
{
    const auto sowings =
        SeasonRepository(database).sowingsOf(trial).value_or(std::pair(today, today));
    SeasonFilter filter;
    filter.from = sowings.first;
    filter.to = std::max(sowings.second, today) + kLongestGrowth;
    filter.trials = {trial};
    return filter;
}

} // namespace

Result<SeasonAnswer> ReviewAnswers::season(const SeasonQuestion& question, const Progress& progress)
{
    if (const Done checked = checkSpans(question); !checked) {
        return tl::unexpected<Error>(checked.error());
    }
    auto facts = m_ledger.ask([&](Database& database) {
        return readFacts(database, question, m_ledger.clock().today(),
                         progress.part(0, kShareOfReading));
    });
    if (!facts) {
        return tl::unexpected<Error>(facts.error());
    }
    return answerOf(question, std::move(*facts), progress.part(kShareOfReading, 1));
}

Result<TrialAnswer> ReviewAnswers::trial(const TrialQuestion& question, const Progress& progress)
{
    const Date today = m_ledger.clock().today();
    TrialAnswer answer;
    SeasonQuestion ofSeason{{}, question.asks, question.parts, {}, {}};
    auto facts = m_ledger.ask([&](Database& database) -> Result<AnswerFacts> {
        auto standing = progressOf(database, question.trial, today);
        if (!standing) {
            return tl::unexpected<Error>(standing.error());
        }
        answer.progress = std::move(*standing);
        answer.diary = readPart([&] { return diaryOf(database, answer.progress); });
        ofSeason.filter = filterOf(database, question.trial, today);
        const auto& draft = answer.progress.draft;
        return readFacts(database, ofSeason, today, progress.part(0, kShareOfReading),
                         draft ? std::optional(draft->plan.variety) : std::nullopt);
    });
    if (!facts) {
        return tl::unexpected<Error>(facts.error());
    }
    auto season = answerOf(ofSeason, std::move(*facts), progress.part(kShareOfReading, 1));
    if (!season) {
        return tl::unexpected<Error>(season.error());
    }
    answer.season = std::move(*season);
    return answer;
}

Result<PlanAnswer> ReviewAnswers::plan(const TrialDraft& draft)
{
    const auto facts = m_ledger.ask([&](Database& database) {
        return SeasonRepository(database).readForPlan(draft.plan.variety, m_ledger.clock().today());
    });
    if (!facts) {
        return tl::unexpected<Error>(facts.error());
    }
    return planAnswerOf(draft, *facts);
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
