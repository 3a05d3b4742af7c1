#include "core/forecast/forecast_scores.h"

#include "core/forecast/foretelling.h"
#include "core/stats/prediction/counts.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>

namespace plumule {
namespace {

constexpr double kSeldom = 0.1; // intervals that are right score so badly that often
constexpr double kWidest = 3;
constexpr double kLeastWider = 1.1;

std::vector<const TrayFact*> latestCuts(const ForecastFacts& facts)
{
    std::vector<const TrayFact*> cut;
    for (const TrayFact& tray : facts.trays) {
        if (tray.cutAt && !tray.isSetAside) {
            cut.push_back(&tray);
        }
    }
    std::stable_sort(cut.begin(), cut.end(),
                     [](const TrayFact* a, const TrayFact* b) { return *a->cutAt > *b->cutAt; });
    std::map<VarietyId, std::size_t> counts;
    std::erase_if(cut,
                  [&](const TrayFact* tray) { return ++counts[tray->variety] > kScoredOfEach; });
    std::reverse(cut.begin(), cut.end());
    return cut;
}

// How far off it was, where 1 is an end of the interval.
double yieldMiss(const ScoredForecast& one)
{
    const YieldForecast& yield = one.forecast.yield;
    if (one.weighed <= Mass{}) {
        return kWidest;
    }
    return std::abs(std::log(one.weighed / yield.middle)) / std::log(yield.high / yield.middle);
}

double dayMiss(const ScoredForecast& one)
{
    const DayForecast& day = *one.forecast.day;
    const int off = one.cutOn - day.middle;
    const int half = off < 0 ? day.middle - day.low : day.high - day.middle;
    return (std::abs(off) + 0.5) / (half + 0.5);
}

// One question's outcomes: yields, or days.
struct Outcomes
{
    std::map<std::pair<VarietyId, Date>, std::pair<int, int>> sowings; // inside, of so many
    std::vector<double> misses;
    int inside = 0;

    void add(const ScoredForecast& one, bool isInside, double miss)
    {
        auto& [held, all] = sowings[{one.forecast.variety, one.forecast.sownOn}];
        held += isInside ? 1 : 0;
        ++all;
        inside += isInside ? 1 : 0;
        misses.push_back(miss);
    }
    [[nodiscard]] int count() const { return static_cast<int>(misses.size()); }
    [[nodiscard]] double widened() const;
};

double Outcomes::widened() const
{
    if (count() < kFewestForOwnPast) {
        return 1;
    }
    double shares = 0;
    for (const auto& [sowing, held] : sowings) {
        shares += static_cast<double>(held.first) / held.second;
    }
    const auto all = static_cast<double>(sowings.size());
    if (stats::binomialAtMost(shares, all, kForecastLevel) > kSeldom) {
        return 1;
    }
    std::vector<double> sorted = misses;
    std::sort(sorted.begin(), sorted.end());
    const auto held =
        static_cast<std::size_t>(std::ceil(kForecastLevel * static_cast<double>(sorted.size())));
    const double wide = std::round(10 * sorted[held - 1]) / 10;
    return std::clamp(wide, kLeastWider, kWidest);
}

} // namespace

std::vector<ScoredForecast> latestForecasts(const ForecastFacts& facts)
{
    const std::vector<const TrayFact*> cuts = latestCuts(facts);
    std::map<Moment, std::vector<std::size_t>> begunAt;
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        begunAt[cuts[i]->begunAt()].push_back(i);
    }
    std::vector<ScoredForecast> scored(cuts.size());
    for (const auto& [begun, places] : begunAt) {
        const KnownPast past(facts, begun);
        for (const std::size_t i : places) {
            const TrayFact& tray = *cuts[i];
            const TrayFact asKnown = begun < facts.now ? knownAt(tray, begun) : tray;
            scored[i] = {foretell(past, asKnown, begun, {}), tray.cutAt->date, tray.cut};
        }
    }
    return scored;
}

VarietyScore scoreOf(const std::vector<ScoredForecast>& scored, std::optional<VarietyId> variety)
{
    Outcomes yields;
    Outcomes days;
    for (const ScoredForecast& one : scored) {
        if (variety && one.forecast.variety != *variety) {
            continue;
        }
        if (one.isYieldScored()) {
            yields.add(one, one.isYieldInside(), yieldMiss(one));
        }
        if (one.isDayScored()) {
            days.add(one, one.isDayInside(), dayMiss(one));
        }
    }
    VarietyScore score;
    score.variety = variety.value_or(VarietyId{});
    score.harvests = yields.count();
    score.yieldInside = yields.inside;
    score.days = days.count();
    score.dayInside = days.inside;
    score.yieldWidened = yields.widened();
    score.dayWidened = days.widened();
    return score;
}

} // namespace plumule
