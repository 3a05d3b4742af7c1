#include "core/review/comparison/comparison.h"

#include "core/review/comparison/margin.h"
#include "core/review/comparison/pair_conversion.h"
#include "core/review/comparison/series_trays.h"
#include "core/review/facts/planning_spread.h"

#include <algorithm>
#include <cmath>

namespace plumule {
namespace {

constexpr int kFewestForNext = 3; // sowings, to say what to expect of the next
constexpr int kFewestAdvised = 2; // trays of each medium

SeasonFilter ofAllVarieties(SeasonFilter filter)
{
    filter.varieties.clear();
    return filter;
}

// Works an answer out from one gathering of the trays.
class Comparer
{
public:
    Comparer(const SeasonFacts& facts, const SeasonFilter& filter, const Series& series,
             const ComparisonAsk& ask)
        : m_facts(facts)
        , m_filter(filter)
        , m_compared(comparedTrays(facts, filter, ask))
        , m_gathered(seriesTrays(facts, filter, m_compared, ask.response))
    {
        m_result.ask = ask;
        m_result.series = series;
    }

    [[nodiscard]] SeasonComparison compare()
    {
        describe();
        chooseSowings();
        judgeFairness();
        countDiscards();
        ask();
        takeSpread();
        takePairs();
        takeTrials();
        takeVarieties();
        takeGroups();
        return std::move(m_result);
    }

private:
    void describe();
    void chooseSowings();
    void judgeFairness();
    void countDiscards();
    void ask();
    void takeSpread();
    void takePairs();
    void takeTrials();
    void takeVarieties();
    void takeGroups();

    [[nodiscard]] std::vector<stats::SownTray> traysOf(const std::set<std::size_t>& sowings) const;
    [[nodiscard]] std::set<std::size_t> sowingsOfTwoMedia() const;
    [[nodiscard]] stats::VerdictAsk verdictAsk(stats::Series series) const;
    [[nodiscard]] stats::AdviceGround adviceGround() const;
    [[nodiscard]] bool isPlanned() const { return m_result.series.plannedTrials.has_value(); }

    const SeasonFacts& m_facts;
    const SeasonFilter& m_filter;
    ComparedTrays m_compared;
    SeriesTrays m_gathered;
    std::set<std::size_t> m_chosen; // sowings that answer
    stats::Series m_state = stats::Series::Open;
    PairContext m_context;
    stats::MediaAnswer m_answer;
    SeasonComparison m_result;
};

void Comparer::describe()
{
    m_result.day = m_compared.day;
    m_result.currency = m_facts.cost.layout.room.currency;
    m_result.withoutValue = m_compared.withoutValue;
    m_result.scale = scaleOf(m_result.ask.response);
    m_result.isSideMetric =
        !isMainMetric(m_result.ask.response, m_result.series.mainMetric);
    m_result.sowings = m_gathered.sowings;
    m_result.trays = m_gathered.values;
    m_result.margin = marginFor(m_facts, m_compared, m_result.ask);
    for (const Medium* medium : m_compared.media) {
        m_result.means.push_back({*medium, 0, 0, std::nullopt});
    }
}

// A plan is answered by its first trials, once all of them are in; what is still growing answers
// nothing yet, but where there is nothing else its means are shown.
void Comparer::chooseSowings()
{
    const int planned = m_result.series.plannedTrials.value_or(0);
    std::set<std::size_t> all;
    for (std::size_t i = 0; i < m_gathered.sowings.size(); ++i) {
        all.insert(i);
        const Sowing& sowing = m_gathered.sowings[i];
        const bool isAsked = !isPlanned() || (sowing.trial && static_cast<int>(m_chosen.size()) <
                                                                  planned);
        if (isAsked && sowing.isAllIn()) {
            m_chosen.insert(i);
        }
    }
    const bool isWaiting = isPlanned() && static_cast<int>(m_chosen.size()) < planned;
    if (isPlanned()) {
        m_state = isWaiting ? stats::Series::PlanRunning : stats::Series::PlanDone;
    }
    if (m_chosen.empty()) {
        m_chosen = all;
        m_state = stats::Series::PlanRunning;
    }
    for (ComparedValue& value : m_result.trays) {
        value.isIn = m_chosen.count(value.sowing) > 0;
        m_result.n += value.isIn ? 1 : 0;
    }
}

void Comparer::judgeFairness()
{
    m_result.fairness = fairnessOf(m_facts, m_compared);
    m_result.suggestions = suggestionsFor(m_result.fairness);
    for (const Finding& finding : m_result.fairness) {
        for (const auto& [a, b] : finding.fully) {
            const std::pair key = std::minmax(a, b);
            if (finding.aspect == Aspect::Feeding) {
                const bool isAsRun = m_compared.media[a]->isAsRun && m_compared.media[b]->isAsRun;
                m_context.fedUnalike[key] = isAsRun ? ComparedAs::AsRun : ComparedAs::AsFed;
            } else if (finding.aspect == Aspect::Shelf || finding.aspect == Aspect::SeedLot) {
                m_context.mixedWith.emplace(key, finding.aspect);
            }
        }
    }
}

void Comparer::countDiscards()
{
    for (const stats::MediumDiscards& one : stats::discardsOf(m_gathered.discards)) {
        m_result.discards.push_back(
            {one.medium, one.sown, one.discarded, one.p, one.differs, one.isInOneSowing});
    }
}

std::vector<stats::SownTray> Comparer::traysOf(const std::set<std::size_t>& sowings) const
{
    std::vector<stats::SownTray> trays;
    for (const stats::SownTray& tray : m_gathered.trays) {
        if (sowings.count(tray.sowing) > 0) {
            trays.push_back(tray);
        }
    }
    return trays;
}

std::set<std::size_t> Comparer::sowingsOfTwoMedia() const
{
    std::map<std::size_t, std::set<std::size_t>> media;
    for (const stats::SownTray& tray : m_gathered.trays) {
        if (tray.value && m_chosen.count(tray.sowing) > 0) {
            media[tray.sowing].insert(tray.medium);
        }
    }
    std::set<std::size_t> sowings;
    for (const auto& [sowing, grown] : media) {
        if (grown.size() > 1) {
            sowings.insert(sowing);
        }
    }
    return sowings;
}

stats::VerdictAsk Comparer::verdictAsk(stats::Series series) const
{
    stats::VerdictAsk ask;
    ask.scale = m_result.scale;
    ask.margin = marginOnScale(m_result.margin, ask.scale, m_compared);
    ask.series = series;
    ask.sideMetrics = m_result.isSideMetric ? kSideMetrics : 0;
    ask.isFiltered = m_result.series.kind == SeriesKind::ByHand;
    for (const auto& [pair, aspect] : m_context.mixedWith) {
        ask.confounded.push_back(pair);
    }
    const bool countsFailed = ask.scale == stats::CellScale::LogOfRatio;
    for (const DiscardsOfMedium& one : m_result.discards) {
        if (one.differs && !countsFailed) {
            ask.survivors.push_back(one.medium);
        }
    }
    return ask;
}

void Comparer::ask()
{
    const stats::VerdictAsk asked = verdictAsk(m_state);
    m_answer = stats::answerOfSeries(traysOf(m_chosen), asked);
    const int sowings = m_answer.sowings;
    const bool isOfTrial = m_result.series.kind == SeriesKind::Trial;
    if (isOfTrial || (sowings > 0 && sowings < kFewestForNext)) {
        m_answer = stats::answerOfSowings(traysOf(sowings > 0 ? sowingsOfTwoMedia() : m_chosen),
                                          asked);
        m_answer.sowings = sowings;
    }
    m_result.scope = m_answer.scope;
    m_result.trials = m_answer.sowings;
    m_result.level = m_answer.level;
    m_result.unlike = m_answer.spread;
    for (const stats::MediumMean& mean : m_answer.means) {
        ComparedMedium& medium = m_result.means[mean.medium];
        medium.trays = mean.trays;
        medium.trials = mean.sowings;
        medium.mean = mean.value;
    }
}

// As a share of the mean, in percent.
std::optional<double> asPercent(std::optional<double> variance, stats::CellScale scale, double mean)
{
    if (!variance) {
        return std::nullopt;
    }
    if (stats::isLog(scale)) {
        return 100 * std::sqrt(std::expm1(*variance));
    }
    return mean > 0 ? std::optional(100 * std::sqrt(*variance) / mean) : std::nullopt;
}

void Comparer::takeSpread()
{
    const double mean = std::abs(m_compared.mean());
    m_result.spreadPercent = asPercent(m_answer.trayVariance, m_result.scale, mean);
    if (m_answer.scope == stats::AnswerScope::NextSowing) {
        m_result.trialSpreadPercent = asPercent(m_answer.trialVariance, m_result.scale, mean);
    }
}

stats::AdviceGround Comparer::adviceGround() const
{
    stats::AdviceGround ground;
    if (m_answer.scope == stats::AnswerScope::NextSowing && m_answer.variance) {
        ground.cellVariance = *m_answer.variance;
        ground.cellDf = m_answer.df;
    }
    const double mean = std::abs(m_compared.mean());
    const double share = spreadToPlanBy(m_facts, m_filter, m_result.ask).share;
    ground.trayVariance = m_answer.trayVariance.value_or(
        stats::isLog(m_result.scale) ? share * share : share * share * mean * mean);
    ground.harmonicTrays = std::max(1.0, m_answer.harmonicTrays);
    ground.traysEach = std::max<double>(kFewestAdvised, std::ceil(m_answer.harmonicTrays));
    ground.media = std::max<std::size_t>(2, m_answer.means.size());
    ground.sowings = m_answer.sowings;
    ground.margin = marginOnScale(m_result.margin, m_result.scale, m_compared);
    ground.sideMetrics = m_result.isSideMetric ? kSideMetrics : 0;
    return ground;
}

void Comparer::takePairs()
{
    if (m_result.margin.percent > 0 && m_compared.mean() != 0) {
        m_context.advice = adviceGround();
    }
    m_context = contextOf(m_answer, std::move(m_context));
    for (const stats::PairAnswer& pair : m_answer.pairs) {
        if (pair.difference.value_or(0) < 0) {
            m_context.reversed.emplace(pair.a, pair.b);
        }
    }
    for (std::size_t a = 0; a < m_result.means.size(); ++a) {
        for (std::size_t b = a + 1; b < m_result.means.size(); ++b) {
            const auto found =
                std::find_if(m_answer.pairs.begin(), m_answer.pairs.end(),
                             [&](const auto& pair) { return pair.a == a && pair.b == b; });
            stats::PairAnswer pair;
            if (found != m_answer.pairs.end()) {
                pair = *found;
            } else {
                pair.a = a;
                pair.b = b;
                pair.verdict = stats::Verdict::NotComparable;
                pair.why = stats::NoVerdictReason::NeverMet;
            }
            m_result.pairs.push_back(mediaPair(pair, m_context));
        }
    }
}

void Comparer::takeTrials()
{
    const stats::VerdictAsk asked = verdictAsk(stats::Series::PlanDone);
    for (const std::size_t sowing : sowingsOfTwoMedia()) {
        const stats::MediaAnswer answer = stats::answerOfSowings(traysOf({sowing}), asked);
        PairContext context = m_context;
        context.advice.reset();
        context = contextOf(answer, std::move(context));
        TrialPart part;
        part.sowing = sowing;
        part.trays.resize(m_result.means.size());
        for (const stats::MediumMean& mean : answer.means) {
            part.trays[mean.medium] = mean.trays;
        }
        for (const stats::PairAnswer& pair : answer.pairs) {
            part.pairs.push_back(mediaPair(pair, context));
        }
        m_result.byTrial.push_back(std::move(part));
    }
}

void Comparer::takeVarieties()
{
    m_result.gate = m_answer.gate;
    PairContext context = m_context;
    context.advice.reset();
    for (const stats::VarietyAnswer& answer : m_answer.byVariety) {
        VarietyPart part;
        part.id = VarietyId{static_cast<std::int64_t>(answer.variety)};
        const auto name = m_facts.varieties.find(part.id);
        part.variety = name == m_facts.varieties.end() ? std::string() : name->second;
        part.trials = answer.sowings;
        for (const stats::PairAnswer& pair : answer.pairs) {
            part.pairs.push_back(mediaPair(pair, context));
        }
        m_result.byVariety.push_back(std::move(part));
    }
}

void Comparer::takeGroups()
{
    m_result.groups = groupsAmong(m_compared.media, m_result.ask.groups);
    std::vector<std::vector<std::size_t>> members;
    for (const GroupOfMedia& group : m_result.groups) {
        members.push_back(group.members);
    }
    const stats::GroupAnswer answer = stats::groupsOf(
        m_answer, members, marginOnScale(m_result.margin, m_result.scale, m_compared));
    PairContext context;
    context.scale = m_result.scale;
    for (std::size_t i = 0; i < answer.groups.size(); ++i) {
        const stats::GroupMean& mean = answer.groups[i];
        m_result.groups[i].mean = mean.value;
        m_result.groups[i].areToldApart = mean.areToldApart;
        if (mean.widest && stats::isLog(m_result.scale)) {
            m_result.groups[i].widestPercent = stats::percentOfLog(*mean.widest);
        } else if (mean.widest && mean.value && *mean.value > 0) {
            m_result.groups[i].widestPercent = 100 * *mean.widest / *mean.value;
        }
        if (mean.value) {
            context.means[i] = *mean.value;
        }
    }
    for (const stats::GroupPair& pair : answer.pairs) {
        m_result.groupPairs.push_back(mediaPair(pair, context));
    }
}

} // namespace

bool isMainMetric(Response response, Response main)
{
    const auto isOfArea = [](Response one) {
        return one == Response::YieldPerArea ? Response::YieldPerTray : one;
    };
    return isOfArea(response) == isOfArea(main);
}

SeasonComparison comparisonOf(const SeasonFacts& facts, const SeasonFilter& filter,
                              const Series& series, const ComparisonAsk& ask)
{
    const bool isOfOneVariety =
        filter.varieties.size() == 1 && series.kind != SeriesKind::ByHand;
    if (isOfOneVariety) {
        return ofOneVariety(facts, filter, series, ask);
    }
    return Comparer(facts, filter, series, ask).compare();
}

} // namespace plumule
