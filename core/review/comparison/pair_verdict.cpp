#include "core/review/comparison/pair_verdict.h"

#include "core/review/facts/pooled_spread.h"
#include "core/stats/planning/power.h"
#include "core/stats/probability/distributions.h"
#include "core/stats/probability/studentized_range.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plumule {
namespace {

constexpr double kAlpha = 0.05;

double meanOver(const ComparedTrays& trays, double (*take)(const SeasonRecord&))
{
    double sum = 0;
    for (const ComparedTray& tray : trays.trays) {
        sum += take(*tray.record);
    }
    return trays.trays.empty() ? 0 : sum / static_cast<double>(trays.trays.size());
}

double seedGrams(const SeasonRecord& record)
{
    return inGrams(record.tray.seed.value_or(Mass()));
}

double daysInPlace(const SeasonRecord& record)
{
    return dayCount(record.tray.sownOn, *record.lastCut);
}

// A margin of grams a tray in the response's own unit; none where it says nothing about it.
std::optional<double> inResponseUnit(Mass perTray, const SeasonFacts& facts,
                                     const ComparedTrays& trays, Response response)
{
    const double margin = inGrams(perTray);
    double divisor = 0;
    switch (response) {
    case Response::YieldPerTray:
    case Response::Residue:
        return margin;
    case Response::YieldPerArea:
        divisor = facts.cost.layout.room.trayArea();
        break;
    case Response::YieldPerSeed:
        divisor = meanOver(trays, seedGrams);
        break;
    case Response::YieldPerDay:
        divisor = meanOver(trays, daysInPlace);
        break;
    case Response::CostPerGram:
    case Response::HeightOnDay:
    case Response::DaysToHarvest:
    case Response::Evenness:
    case Response::Work:
        return std::nullopt;
    }
    return divisor > 0 ? std::optional(margin / divisor) : std::nullopt;
}

std::optional<Mass> smallestTrialMargin(const SeasonFacts& facts, const ComparedTrays& trays)
{
    std::optional<Mass> smallest;
    for (const ComparedTray& tray : trays.trays) {
        const auto& trial = tray.record->tray.trial;
        const auto margin = trial ? facts.margins.find(*trial) : facts.margins.end();
        if (margin != facts.margins.end() && (!smallest || margin->second < *smallest)) {
            smallest = margin->second;
        }
    }
    return smallest;
}

stats::TPlan planOf(double sd, double alpha)
{
    stats::TPlan plan;
    plan.sd = sd;
    plan.alpha = alpha;
    return plan;
}

} // namespace

PairVerdict verdictOf(const VerdictGround& ground)
{
    if (ground.nA < 2 || ground.nB < 2) {
        return PairVerdict::NoVerdict;
    }
    if (!ground.isComparable) {
        return PairVerdict::NotComparable;
    }
    if (!ground.lower || !ground.upper) {
        return PairVerdict::NoVerdict;
    }
    const bool isClear = *ground.lower > 0 || *ground.upper < 0;
    if (ground.isWithinMargin) {
        return isClear ? PairVerdict::RealButTooSmall : PairVerdict::SameWithinMargin;
    }
    if (!isClear) {
        return PairVerdict::CantTellYet;
    }
    return *ground.lower > 0 ? PairVerdict::More : PairVerdict::Less;
}

Margin marginFor(const SeasonFacts& facts, const ComparedTrays& trays, const ComparisonAsk& ask)
{
    if (ask.margin && *ask.margin > 0) {
        return {*ask.margin, MarginFrom::Asked};
    }
    const auto asked = ask.marginPerTray
                           ? inResponseUnit(*ask.marginPerTray, facts, trays, ask.response)
                           : std::nullopt;
    if (asked && *asked > 0) {
        return {*asked, MarginFrom::Asked};
    }
    // A trial's margin is one of yield.
    const auto trial =
        ask.response == Response::Residue ? std::nullopt : smallestTrialMargin(facts, trays);
    const auto ofTrial = trial ? inResponseUnit(*trial, facts, trays, ask.response) : std::nullopt;
    if (ofTrial && *ofTrial > 0) {
        return {*ofTrial, MarginFrom::Trials};
    }
    return {kDefaultMargin * std::abs(trays.mean()), MarginFrom::Default};
}

SpreadOfTrays spreadToPlanBy(const SeasonFacts& facts, const SeasonFilter& filter,
                             const ComparisonAsk& ask, const ComparedTrays& trays)
{
    SeasonFilter all = filter;
    all.from = {};
    all.varieties.clear();
    all.trials.clear();
    all.shelves.clear();
    SpreadCells spread;
    for (const ComparedTray& tray : comparedTrays(facts, all, ask).trays) {
        const Tray& sown = tray.record->tray;
        spread.add({sown.medium, sown.variety, sown.trial, sown.sownOn, {}}, tray.value);
    }
    if (ask.response == Response::YieldPerTray || ask.response == Response::YieldPerArea) {
        // As a share a yield is the same by tray and by area.
        const double area =
            ask.response == Response::YieldPerArea ? facts.cost.layout.room.trayArea() : 1.0;
        for (const PastYield& past : facts.past) {
            spread.add(past, inGrams(past.yield) / area);
        }
    }
    SpreadOfTrays result;
    const auto pooled = spread.ofShares();
    result.from = pooled ? SpreadFrom::Room : SpreadFrom::Default;
    result.sd = (pooled ? pooled->sd : kDefaultSpread) * std::abs(trays.mean());
    if (pooled) {
        result.df = pooled->df;
    }
    return result;
}

double pairAlpha(int media, std::optional<double> df)
{
    const double freedom = df.value_or(stats::kInfiniteDf);
    const auto q = stats::studentizedRangeQuantile(1 - kAlpha, std::max(2, media), freedom);
    return q ? stats::tTwoSided(*q / std::numbers::sqrt2, freedom) : kAlpha;
}

std::optional<TraysNeeded> traysNeeded(const SpreadOfTrays& spread, double difference, int nA,
                                       int nB, double alpha)
{
    if (spread.sd <= 0 || difference <= 0) {
        return std::nullopt;
    }
    const auto each = stats::tWholeCountFor(planOf(spread.sd, alpha), difference, kPlannedPower);
    if (!each) {
        return std::nullopt;
    }
    TraysNeeded needed;
    // Where there are as many already, it was ill luck or an uneven design: one more at least.
    needed.each = std::max(*each, std::min(nA, nB) + 1);
    needed.moreOfA = std::max(0, needed.each - nA);
    needed.moreOfB = std::max(0, needed.each - nB);
    needed.spread = spread.sd;
    needed.from = spread.from;
    return needed;
}

std::optional<double> smallestDifference(double sd, double n, double alpha)
{
    if (sd <= 0 || n < 2) {
        return std::nullopt;
    }
    const auto difference = stats::tSmallestDifference(planOf(sd, alpha), n, kPlannedPower);
    return difference ? std::optional(*difference) : std::nullopt;
}

} // namespace plumule
