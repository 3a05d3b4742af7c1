#include "core/review/comparison/comparison.h"

#include "core/review/comparison/margin.h"
#include "core/review/comparison/media_groups.h"
#include "core/review/comparison/pair_conversion.h"
#include "core/review/comparison/planning_spread.h"
#include "core/review/comparison/series_choice.h"
#include "core/review/comparison/series_trays.h"
#include "core/review/comparison/variety_comparison.h"
#include "core/stats/verdict/advice.h"

#include <algorithm>
#include <cmath>

namespace plumule {
namespace {

constexpr int kFewestForNext = 3; // sowings, to say what to expect of the next
constexpr int kFewestAdvised = 2; // trays of each medium

// Works an answer out from one gathering of the trays.
class Comparer
{
public:
    Comparer(const SeasonFacts& facts, const SeasonFilter& filter, const Series& series,
             const ComparisonAsk& ask, const Progress& progress)
        : m_facts(facts)
        , m_filter(filter)
        , m_progress(progress)
        , m_compared(comparedTrays(facts, filter, ask))
        , m_gathered(seriesTrays(facts, filter, m_compared, ask.response))
        , m_choice(chooseSowings(series, m_gathered.sowings))
    {
        m_result.ask = ask;
        m_result.series = series;
    }

    [[nodiscard]] SeasonComparison compare()
    {
        using Step = void (Comparer::*)();
        for (const Step step :
             {&Comparer::describe, &Comparer::judgeFairness, &Comparer::countDiscards,
              &Comparer::ask, &Comparer::takeSpread, &Comparer::takePairs, &Comparer::takeTrials,
              &Comparer::takeVarieties, &Comparer::takeGroups}) {
            if (m_progress.isStopped()) {
                break;
            }
            (this->*step)();
        }
        return std::move(m_result);
    }

private:
    void describe();
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
    [[nodiscard]] std::optional<MoreTrials> advised(int sowingsShared) const;
    [[nodiscard]] double marginOnItsScale() const;

    const SeasonFacts& m_facts;
    const SeasonFilter& m_filter;
    const Progress& m_progress;
    ComparedTrays m_compared;
    SeriesTrays m_gathered;
    SeriesChoice m_choice;
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
    m_result.isSideMetric = !isMainMetric(m_result.ask.response, m_result.series.mainMetric);
    m_result.sowings = m_gathered.sowings;
    m_result.trays = m_gathered.values;
    m_result.margin = marginFor(m_facts, m_compared, m_result.ask);
    m_result.grandMean = m_compared.mean();
    m_result.model = trayModelOf(m_facts, m_compared);
    m_result.isWaiting = m_choice.state == stats::Series::PlanRunning;
    m_result.trialsIn = m_choice.in;
    for (ComparedValue& value : m_result.trays) {
        value.isIn = m_choice.sowings.count(value.sowing) > 0;
        m_result.n += value.isIn ? 1 : 0;
        if (const auto name = m_facts.varieties.find(value.variety);
            name != m_facts.varieties.end()) {
            m_result.varieties.insert(*name);
        }
    }
    for (const Medium* medium : m_compared.media) {
        m_result.means.push_back({*medium, 0, 0, std::nullopt});
    }
}

void Comparer::judgeFairness()
{
    m_result.fairness = fairnessOf(m_facts, m_compared, aspectsComparedWithin());
    if (m_result.ask.response == Response::DaysToHarvest) {
        std::erase_if(m_result.fairness,
                      [](const Finding& finding) { return finding.aspect == Aspect::DaysGrown; });
    }
    for (const Finding& finding : m_result.fairness) {
        for (const auto& [a, b] : finding.fully) {
            const std::pair key(a, b);
            if (finding.aspect == Aspect::Feeding) {
                // What is always run so is compared as one with its feeding.
                if (!m_compared.media[a]->isAsRun || !m_compared.media[b]->isAsRun) {
                    m_context.fedUnalike.insert(key);
                }
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
        if (tray.value && m_choice.sowings.count(tray.sowing) > 0) {
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
    ask.margin = marginOnItsScale();
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
    const stats::VerdictAsk asked = verdictAsk(m_choice.state);
    m_answer = stats::answerOfSeries(traysOf(m_choice.sowings), asked);
    const int sowings = m_answer.sowings;
    const bool isOfTrial = m_result.series.kind == SeriesKind::Trial;
    if (isOfTrial || (sowings > 0 && sowings < kFewestForNext)) {
        m_answer = stats::answerOfSowings(
            traysOf(sowings > 0 ? sowingsOfTwoMedia() : m_choice.sowings), asked);
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

double Comparer::marginOnItsScale() const
{
    return marginOnScale(m_result.margin, m_result.scale, m_compared);
}

// By the trays' own spread, else the room's. A pair is told apart by the sowings in which both
// grow.
std::optional<MoreTrials> Comparer::advised(int sowingsShared) const
{
    const double margin = marginOnItsScale();
    if (margin <= 0 || m_compared.mediaWithValues() < 2) {
        return std::nullopt;
    }
    const double each = std::max<double>(kFewestAdvised, std::ceil(m_answer.harmonicTrays));
    stats::MediaAnswer ofPair = m_answer;
    ofPair.sowings = sowingsShared;
    auto found = stats::adviceFor(ofPair, verdictAsk(m_choice.state), each);
    if (!found) {
        const double mean = std::abs(m_compared.mean());
        const double sd = spreadToPlanBy(m_facts, m_filter, m_result.ask) *
                          (stats::isLog(m_result.scale) ? 1 : mean);
        stats::AdviceGround ground;
        ground.trayVariance = sd * sd;
        ground.traysEach = each;
        ground.media = m_compared.mediaWithValues();
        ground.sowings = sowingsShared;
        ground.margin = margin;
        ground.sideMetrics = m_result.isSideMetric ? kSideMetrics : 0;
        found = stats::sowingsNeeded(ground);
    }
    return MoreTrials{found->moreSowings, static_cast<int>(each)};
}

void Comparer::takePairs()
{
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
                pair.why = stats::NoVerdictReason::NothingHarvested; // in a sowing that counts
            }
            m_context.more = advised(pair.sowingsShared);
            m_result.pairs.push_back(mediaPair(pair, m_context));
        }
    }
}

void Comparer::takeTrials()
{
    // Told apart once: to look all trays through for each sowing grows with the square of them.
    std::map<std::size_t, std::vector<stats::SownTray>> bySowing;
    for (const stats::SownTray& tray : m_gathered.trays) {
        bySowing[tray.sowing].push_back(tray);
    }
    for (const std::size_t sowing : sowingsOfTwoMedia()) {
        if (m_progress.isStopped()) {
            return;
        }
        const bool isIn = m_result.sowings[sowing].isAllIn();
        const stats::VerdictAsk asked =
            verdictAsk(isIn ? stats::Series::PlanDone : stats::Series::PlanRunning);
        const stats::MediaAnswer answer = stats::answerOfSowings(bySowing.at(sowing), asked);
        PairContext context = m_context;
        context.more.reset();
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
    context.more.reset();
    for (const stats::VarietyAnswer& answer : m_answer.byVariety) {
        VarietyPart part;
        part.id = VarietyId{static_cast<std::int64_t>(answer.variety)};
        const auto name = m_facts.varieties.find(part.id);
        part.variety = name == m_facts.varieties.end() ? std::string() : name->second;
        part.trials = answer.sowings;
        // The one with more first, in each variety for itself.
        context.reversed.clear();
        for (const stats::PairAnswer& pair : answer.pairs) {
            if (pair.difference.value_or(0) < 0) {
                context.reversed.emplace(pair.a, pair.b);
            }
            part.pairs.push_back(mediaPair(pair, context));
        }
        m_result.byVariety.push_back(std::move(part));
    }
}

void Comparer::takeGroups()
{
    m_result.groups = groupsAmong(m_facts, m_compared.media, m_result.ask.groups);
    answerForGroups(m_result, m_answer, marginOnItsScale());
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
                              const Series& asked, const ComparisonAsk& ask,
                              const Progress& progress)
{
    Series series = asked;
    const bool isOfTrial = series.kind == SeriesKind::Trial;
    if (filter.varieties.size() > 1 || !filter.shelves.empty() ||
        (!isOfTrial && !filter.trials.empty())) {
        series.kind = SeriesKind::ByHand;
    }
    if (filter.varieties.size() != 1 || series.kind == SeriesKind::ByHand) {
        return Comparer(facts, filter, series, ask, progress).compare();
    }
    SeasonFilter ofAll = filter;
    ofAll.varieties.clear();
    Series alone = series;
    alone.kind = SeriesKind::ByHand;
    alone.plannedTrials.reset();
    const VarietyId variety = filter.varieties.front();
    const auto name = facts.varieties.find(variety);
    SeasonComparison whole = Comparer(facts, ofAll, series, ask, progress).compare();
    if (progress.isStopped()) {
        return whole;
    }
    SeasonComparison own = Comparer(facts, filter, alone, ask, progress).compare();
    if (progress.isStopped()) {
        return own;
    }
    return ofOneVariety(whole, std::move(own), variety,
                        name == facts.varieties.end() ? std::string() : name->second);
}

} // namespace plumule
