#include "core/journal/review/review_answers.h"

#include "core/journal/ledger/ledger.h"
#include "core/journal/review/season_entries.h"
#include "core/journal/trial/trial_reading.h"
#include "core/review/facts/review_reason.h"
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
            return fail(ErrorKind::Invalid, ReviewReason::SpanBackwards, toIso(filter.from),
                        toIso(filter.to));
        }
    }
    return {};
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
    for (const SeasonRecord& record : facts.trays) {
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

// Within an ask. A part that is damaged is an ask of its own, so that it takes no other with it.
Result<AnswerFacts> readFacts(Ledger& ledger, const SeasonQuestion& question,
                              const Progress& progress, std::optional<VarietyId> planned)
{
    auto season = SeasonRepository(ledger.database()).read(spanOver(filtersOf(question)), progress);
    if (!season) {
        return passOn(season);
    }
    AnswerFacts facts;
    facts.season = std::move(*season);
    facts.today = ledger.clock().today();
    if (question.parts.count(SeasonPart::Tastings) > 0) {
        facts.panels =
            ledger.ask([&](Database& database) { return panelsOf(database, question.filter); });
    }
    if (question.parts.count(SeasonPart::Protocols) > 0) {
        facts.protocols = ledger.ask([&](Database& database) {
            return protocolsOf(database, facts.season, question.filter, planned);
        });
    }
    return facts;
}

Result<SeasonAnswer> answerFrom(Ledger& ledger, const SeasonQuestion& question,
                                const Progress& progress,
                                std::optional<VarietyId> planned = std::nullopt)
{
    auto facts = readFacts(ledger, question, progress.part(0, kShareOfReading), planned);
    if (!facts) {
        return passOn(facts);
    }
    return answerOf(question, std::move(*facts), progress.part(kShareOfReading, 1));
}

// From its first sowing, planned or done.
SeasonFilter filterOfTrial(Database& database, TrialId trial, Date today)
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

// The sums are done within the ask too: what a damaged cell may bring about in them is told there.
Result<SeasonAnswer> ReviewAnswers::season(const SeasonQuestion& question, const Progress& progress)
{
    if (const Done checked = checkSpans(question); !checked) {
        return passOn(checked);
    }
    return m_ledger.ask([&](Database&) -> Result<SeasonAnswer> {
        return answerFrom(m_ledger, question, progress);
    });
}

Result<TrialAnswer> ReviewAnswers::trial(const TrialQuestion& question, const Progress& progress)
{
    const Date today = m_ledger.clock().today();
    return m_ledger.ask([&](Database& database) -> Result<TrialAnswer> {
        auto standing = progressOf(database, question.trial, today);
        if (!standing) {
            return passOn(standing);
        }
        TrialAnswer answer;
        answer.progress = std::move(*standing);
        answer.diary =
            m_ledger.ask([&](Database& again) { return diaryOf(again, answer.progress); });
        SeasonQuestion ofSeason;
        ofSeason.filter = filterOfTrial(database, question.trial, today);
        ofSeason.series.kind = SeriesKind::Trial;
        ofSeason.series.name = answer.progress.trial.code;
        ofSeason.asks = question.asks;
        ofSeason.parts = question.parts;
        const auto& draft = answer.progress.draft;
        auto season = answerFrom(m_ledger, ofSeason, progress,
                                 draft ? std::optional(draft->plan.variety) : std::nullopt);
        if (!season) {
            return passOn(season);
        }
        answer.season = std::move(*season);
        return answer;
    });
}

Result<CostsAnswer> ReviewAnswers::costs(const CostsQuestion& question, const Progress& progress)
{
    const SeasonFilter& filter = question.filter;
    if (filter.to < filter.from) {
        return fail(ErrorKind::Invalid, ReviewReason::SpanBackwards, toIso(filter.from),
                    toIso(filter.to));
    }
    return m_ledger.ask([&](Database& database) -> Result<CostsAnswer> {
        auto facts =
            SeasonRepository(database).read(spanOver({filter}), progress.part(0, kShareOfReading));
        if (!facts) {
            return passOn(facts);
        }
        return costsAnswerOf(question, std::move(*facts), m_ledger.clock().today(),
                             progress.part(kShareOfReading, 1));
    });
}

Result<PlanAnswer> ReviewAnswers::plan(const TrialDraft& draft)
{
    return m_ledger.ask([&](Database& database) {
        const Date today = m_ledger.clock().today();
        return planAnswerOf(draft,
                            SeasonRepository(database).readForPlan(draft.plan.variety, today));
    });
}

SeasonFilter ReviewAnswers::usualSeason()
{
    const Date today = m_ledger.clock().today();
    const auto declared = SeasonEntries(m_ledger).all().value_or(std::vector<SeasonSpanOfDays>());
    const auto present =
        std::find_if(declared.rbegin(), declared.rend(),
                     [&](const SeasonSpanOfDays& span) { return !(today < span.season.startsOn); });
    if (present != declared.rend()) {
        return plumule::filterOf(*present, today);
    }
    SeasonFilter filter;
    filter.from = today - 364;
    filter.to = today;
    return filter;
}

Series ReviewAnswers::seriesOf(const SeasonFilter& filter)
{
    const Date today = m_ledger.clock().today();
    SeasonFilter ofDays = filter;
    ofDays.varieties.clear();
    for (const SeasonSpanOfDays& span :
         SeasonEntries(m_ledger).all().value_or(std::vector<SeasonSpanOfDays>())) {
        if (plumule::filterOf(span, today) == ofDays) {
            return {SeriesKind::Season, span.season.name, span.season.plannedTrials,
                    span.season.mainMetric};
        }
    }
    Series byHand;
    byHand.kind = SeriesKind::ByHand;
    return byHand;
}

} // namespace plumule
