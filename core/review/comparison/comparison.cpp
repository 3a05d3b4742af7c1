#include "core/review/comparison/comparison.h"

#include "core/review/comparison/comparison_checks.h"
#include "core/review/comparison/pair_verdict.h"
#include "core/review/comparison/ratio_comparison.h"
#include "core/stats/samples/equivalence.h"

#include <algorithm>
#include <cassert>
#include <limits>

namespace plumule {
namespace {

AdjustedMean adjustedMean(const stats::MarginalMean& mean, const Medium& medium)
{
    AdjustedMean result;
    result.medium = medium;
    result.n = static_cast<int>(mean.n);
    result.isEstimable = mean.estimable;
    result.mean = mean.mean;
    result.se = mean.se;
    result.df = mean.df;
    result.lower = mean.lower;
    result.upper = mean.upper;
    return result;
}

// One way to answer: by a model, by ratios, or, where neither can be had, by plain means.
class Comparer
{
public:
    Comparer(const SeasonFacts& facts, const SeasonFilter& filter, const ComparisonAsk& ask,
             const Progress& progress)
        : m_facts(facts)
        , m_filter(filter)
        , m_progress(progress)
        , m_trays(comparedTrays(facts, filter, ask))
    {
        m_result.ask = ask;
    }

    [[nodiscard]] SeasonComparison compare(bool splitByVariety)
    {
        describeTrays();
        m_result.margin = marginFor(m_facts, m_trays, m_result.ask);
        if (m_result.ask.response == Response::CostPerGram) {
            compareByRatios();
        } else {
            compareByModel(splitByVariety);
        }
        planForMore();
        judgeFairness();
        return std::move(m_result);
    }

private:
    void describeTrays();
    void compareByModel(bool splitByVariety);
    void compareByRatios();
    void takePlainMeans();
    void takePairs(const ComparisonFit& fit);
    [[nodiscard]] MediaPair pairOf(const stats::PairComparison& found, bool hasNoSpread) const;
    void addUnjudgedPairs();
    void splitIntoVarieties();
    void planForMore();
    void judgeFairness();
    [[nodiscard]] double meanTraysOfMedium() const;

    const SeasonFacts& m_facts;
    const SeasonFilter& m_filter;
    const Progress& m_progress;
    ComparedTrays m_trays;
    SeasonComparison m_result;
};

void Comparer::describeTrays()
{
    m_result.day = m_trays.day;
    m_result.currency = m_facts.cost.layout.room.currency;
    m_result.n = static_cast<int>(m_trays.trays.size());
    m_result.withoutValue = m_trays.withoutValue;
    m_result.grandMean = m_trays.mean();
    m_result.trays.reserve(m_trays.trays.size());
    for (const ComparedTray& tray : m_trays.trays) {
        m_result.trays.push_back(
            {tray.record->tray.id, tray.record->tray.code, tray.medium, tray.value});
    }
}

void Comparer::compareByModel(bool splitByVariety)
{
    const ComparisonColumns columns = columnsOf(m_facts, m_trays);
    const auto fit = fitComparison(columns);
    if (!fit) {
        takePlainMeans();
        addUnjudgedPairs();
        return;
    }
    m_result.model = fit->model;
    m_result.spread.sd = fit->sd;
    m_result.spread.df = fit->residualDf;
    m_result.spread.from = SpreadFrom::TheseTrays;
    for (std::size_t medium = 0; medium < fit->means.size(); ++medium) {
        m_result.means.push_back(adjustedMean(fit->means[medium], *m_trays.media[medium]));
    }
    takePairs(*fit);
    m_result.checks = checksOf(*fit, m_trays);
    if (splitByVariety && !fit->hasNoSpread) {
        m_result.interaction = interactionOf(columns, fit->model, ModelPart::Variety);
        m_result.interactionWithFeeding = interactionOf(columns, fit->model, ModelPart::Feeding);
        if (m_result.interaction && m_result.interaction->isClear) {
            splitIntoVarieties();
        }
    }
}

void Comparer::compareByRatios()
{
    RatioComparison ratios = compareRatios(m_trays, m_result.margin.value, m_progress);
    m_result.model.isBootstrap = true;
    m_result.means = std::move(ratios.means);
    m_result.pairs = std::move(ratios.pairs);
    m_result.spread.sd = ratios.sd.value_or(0);
    m_result.spread.df = ratios.df;
    m_result.spread.from = SpreadFrom::TheseTrays;
}

void Comparer::takePlainMeans()
{
    std::vector<std::vector<double>> values(m_trays.media.size());
    for (const ComparedTray& tray : m_trays.trays) {
        values[tray.medium].push_back(tray.value);
    }
    for (std::size_t medium = 0; medium < values.size(); ++medium) {
        const MeanInterval plain = meanInterval(values[medium]);
        AdjustedMean mean;
        mean.medium = *m_trays.media[medium];
        mean.n = plain.n;
        mean.isEstimable = true;
        mean.mean = plain.mean;
        mean.lower = plain.lower;
        mean.upper = plain.upper;
        m_result.means.push_back(std::move(mean));
    }
}

void Comparer::takePairs(const ComparisonFit& fit)
{
    const auto pairs = stats::allPairs(*fit.estimator, fit.means);
    if (!pairs) {
        addUnjudgedPairs();
        return;
    }
    for (const stats::PairComparison& pair : *pairs) {
        m_result.pairs.push_back(pairOf(pair, fit.hasNoSpread));
    }
}

MediaPair Comparer::pairOf(const stats::PairComparison& found, bool hasNoSpread) const
{
    MediaPair pair;
    pair.a = found.a;
    pair.b = found.b;
    pair.nA = m_result.means[found.a].n;
    pair.nB = m_result.means[found.b].n;
    pair.difference = found.raw.estimate;
    VerdictGround ground{found.raw.estimable, pair.nA, pair.nB, {}, {}, false};
    if (found.raw.estimable && !hasNoSpread) {
        pair.se = found.raw.se;
        pair.df = found.raw.df;
        pair.lower = ground.lower = found.lowerTukey;
        pair.upper = ground.upper = found.upperTukey;
        pair.p = found.pTukey;
        const double margin = m_result.margin.value;
        const double df = pair.df.value_or(std::numeric_limits<double>::infinity());
        if (const auto within =
                stats::equivalence(*pair.difference, *pair.se, df, -margin, margin)) {
            pair.pWithinMargin = within->p;
            pair.lowerWithin = within->lower;
            pair.upperWithin = within->upper;
            ground.isWithinMargin = within->isWithin;
        }
    }
    pair.verdict = verdictOf(ground);
    if (pair.verdict == PairVerdict::NoVerdict) {
        pair.why = std::min(pair.nA, pair.nB) < 2 ? WhyNoVerdict::OneTray : WhyNoVerdict::NoSpread;
    }
    return pair;
}

// Every pair, where nothing is left over to judge it by.
void Comparer::addUnjudgedPairs()
{
    for (std::size_t b = 0; b < m_result.means.size(); ++b) {
        for (std::size_t a = b + 1; a < m_result.means.size(); ++a) {
            MediaPair pair;
            pair.a = a;
            pair.b = b;
            pair.nA = m_result.means[a].n;
            pair.nB = m_result.means[b].n;
            pair.why =
                std::min(pair.nA, pair.nB) < 2 ? WhyNoVerdict::OneTray : WhyNoVerdict::TooFewTrays;
            m_result.pairs.push_back(pair);
        }
    }
}

void Comparer::splitIntoVarieties()
{
    std::set<VarietyId> varieties;
    for (const ComparedTray& tray : m_trays.trays) {
        varieties.insert(tray.record->tray.variety);
    }
    for (const VarietyId variety : varieties) {
        SeasonFilter one = m_filter;
        one.varieties = {variety};
        ComparisonAsk ask = m_result.ask;
        ask.day = m_trays.day;
        SeasonComparison part = Comparer(m_facts, one, ask, m_progress).compare(false);
        const auto name = m_facts.varieties.find(variety);
        part.variety = name == m_facts.varieties.end() ? std::string() : name->second;
        m_result.byVariety.push_back(std::move(part));
    }
}

// Trays still needed, and what the design can see.
void Comparer::planForMore()
{
    if (m_result.spread.sd <= 0 && m_result.n > 0) {
        m_result.spread = spreadToPlanBy(m_facts, m_filter, m_result.ask, m_trays);
    }
    const SpreadOfTrays& spread = m_result.spread;
    if (m_result.pairs.empty() || spread.sd <= 0) {
        return;
    }
    const double alpha = pairAlpha(static_cast<int>(m_result.means.size()),
                                   m_result.model.isBootstrap ? std::nullopt : spread.df);
    m_result.spread.smallestDifference = smallestDifference(spread.sd, meanTraysOfMedium(), alpha);
    for (MediaPair& pair : m_result.pairs) {
        if (pair.verdict == PairVerdict::CantTellYet || pair.verdict == PairVerdict::NoVerdict) {
            pair.needed = traysNeeded(spread, m_result.margin.value, m_result.means[pair.a].n,
                                      m_result.means[pair.b].n, alpha);
        }
    }
}

// The harmonic mean, as a difference of two means has it.
double Comparer::meanTraysOfMedium() const
{
    double inverse = 0;
    for (const AdjustedMean& mean : m_result.means) {
        inverse += 1.0 / mean.n;
    }
    return static_cast<double>(m_result.means.size()) / inverse;
}

void Comparer::judgeFairness()
{
    m_result.fairness = fairnessOf(m_facts, m_trays, aspectsIn(m_result.model));
    if (m_result.ask.response == Response::DaysToHarvest) {
        std::erase_if(m_result.fairness,
                      [](const Finding& finding) { return finding.aspect == Aspect::DaysGrown; });
    }
    m_result.suggestions = suggestionsFor(m_result.fairness);
    std::optional<int> most;
    for (const MediaPair& pair : m_result.pairs) {
        if (pair.needed) {
            most = std::max(most.value_or(0), pair.needed->each);
        }
    }
    if (most) {
        m_result.suggestions.push_back({Advice::GrowMoreTrays, most});
    }
}

} // namespace

SeasonComparison comparisonOf(const SeasonFacts& facts, const SeasonFilter& filter,
                              const ComparisonAsk& ask, const Progress& progress)
{
    return Comparer(facts, filter, ask, progress).compare(true);
}

} // namespace plumule
