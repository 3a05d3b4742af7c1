#include "core/forecast/forecast_total.h"

#include "core/stats/prediction/counts.h"
#include "core/stats/probability/distributions.h"
#include "core/stats/probability/root.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace plumule {
namespace {

// Outcomes of one variety rarer than this are left out, and the others make up for them.
constexpr double kRarest = 1e-6;

// Finer than this the means of outcomes need not be told apart: each is by far wider itself.
constexpr std::size_t kMostOutcomes = 400;

// All parts of one variety on one medium.
struct Stand
{
    YieldModel model;
    int trays = 0;
    std::map<Date, int> sowings;   // trays of each
    std::vector<double> survivors; // chances of 0, 1, … trays
    // Of a harvested tray, in grams and their squares: its mean, its variance, and the covariance
    // of two of them.
    double mean = 0;
    double variance = 0;
    double covariance = 0;
};

// The share of pairs, a tray of one and a tray of the other, that were sown on one day; of one and
// the same, of two trays.
double shareOfOneSowing(const Stand& one, const Stand& other)
{
    const bool isSame = &one == &other;
    double pairs = 0;
    for (const auto& [day, trays] : one.sowings) {
        const auto found = other.sowings.find(day);
        if (found != other.sowings.end()) {
            pairs += double{1} * trays * (found->second - (isSame ? 1 : 0));
        }
    }
    const double all = double{1} * one.trays * (other.trays - (isSame ? 1 : 0));
    return all > 0 ? pairs / all : 0;
}

// Of the yields of a tray of one and a tray of the other.
double covarianceOf(const Stand& one, const Stand& other)
{
    const double together = shareOfOneSowing(one, other);
    const double shared = std::min(one.model.meanVariance, other.model.meanVariance);
    const double sowing = shared + std::min(one.model.sowingVariance, other.model.sowingVariance);
    return one.mean * other.mean *
           (together * std::expm1(sowing) + (1 - together) * std::expm1(shared));
}

void complete(Stand& stand)
{
    const YieldModel& model = stand.model;
    const double all = model.meanVariance + model.sowingVariance + model.trayVariance;
    stand.mean = std::exp(model.logMean + all / 2);
    stand.variance = stand.mean * stand.mean * std::expm1(all);
    stand.covariance = covarianceOf(stand, stand);
    stand.survivors =
        stats::chancesOfCounts(stand.trays, {1 - model.discardRate, model.discardWeight});
}

// By variety, then medium.
std::map<VarietyId, std::vector<Stand>> standsOf(const std::vector<SumPart>& parts)
{
    std::map<std::pair<VarietyId, MediumId>, Stand> stands;
    for (const SumPart& part : parts) {
        if (part.trays > 0) {
            Stand& stand = stands[{part.model.variety, part.model.medium}];
            stand.model = part.model;
            stand.trays += part.trays;
            stand.sowings[part.sownOn] += part.trays;
        }
    }
    std::map<VarietyId, std::vector<Stand>> all;
    for (auto& [cell, stand] : stands) {
        complete(stand);
        all[cell.first].push_back(std::move(stand));
    }
    return all;
}

using Moments = ForecastTotal::Moments;

// How many trays survive of each stand of a variety, with what that comes to.
struct Survival
{
    Moments sum{1, 0, 0};
    std::vector<int> left;
};

// `shared`: of a tray of each stand before, with one of this.
Survival with(const Survival& before, const Stand& stand, const std::vector<double>& shared,
              int left)
{
    Survival after = before;
    after.sum.chance *= stand.survivors[static_cast<std::size_t>(left)];
    after.sum.mean += left * stand.mean;
    after.sum.variance += left * stand.variance + double{1} * left * (left - 1) * stand.covariance;
    for (std::size_t other = 0; other < shared.size(); ++other) {
        after.sum.variance += 2.0 * before.left[other] * left * shared[other];
    }
    after.left.push_back(left);
    return after;
}

std::vector<Moments> outcomesOf(const std::vector<Stand>& stands)
{
    std::vector<Survival> survivals(1);
    for (std::size_t at = 0; at < stands.size(); ++at) {
        const Stand& stand = stands[at];
        std::vector<double> shared;
        for (std::size_t other = 0; other < at; ++other) {
            shared.push_back(covarianceOf(stands[other], stand));
        }
        std::vector<Survival> next;
        for (const Survival& before : survivals) {
            for (int left = 0; left <= stand.trays; ++left) {
                const double chance = stand.survivors[static_cast<std::size_t>(left)];
                if (before.sum.chance * chance > kRarest) {
                    next.push_back(with(before, stand, shared, left));
                }
            }
        }
        survivals = std::move(next);
    }
    std::vector<Moments> outcomes;
    outcomes.reserve(survivals.size());
    for (const Survival& survival : survivals) {
        outcomes.push_back(survival.sum);
    }
    return outcomes;
}

void add(Moments& to, const Moments& outcome)
{
    const double chance = to.chance + outcome.chance;
    const double mean = (to.chance * to.mean + outcome.chance * outcome.mean) / chance;
    const auto square = [mean](const Moments& part) {
        return part.chance * (part.variance + (part.mean - mean) * (part.mean - mean));
    };
    to = {chance, mean, (square(to) + square(outcome)) / chance};
}

// Outcomes whose means are alike become one that has their first two moments. That nothing is left
// stays apart.
std::vector<Moments> merged(std::vector<Moments> outcomes)
{
    if (outcomes.size() <= kMostOutcomes) {
        return outcomes;
    }
    const auto byMean = [](const Moments& a, const Moments& b) { return a.mean < b.mean; };
    const auto [least, most] = std::minmax_element(outcomes.begin(), outcomes.end(), byMean);
    const double from = least->mean;
    const double width = (most->mean - from) / static_cast<double>(kMostOutcomes - 1);
    if (!(width > 0)) {
        return outcomes;
    }
    std::vector<Moments> bins(kMostOutcomes + 1);
    for (const Moments& outcome : outcomes) {
        const auto bin = static_cast<std::size_t>((outcome.mean - from) / width);
        add(bins[outcome.mean > 0 ? bin + 1 : 0], outcome);
    }
    std::erase_if(bins, [](const Moments& bin) { return bin.chance <= 0; });
    return bins;
}

// Of sums that share nothing.
std::vector<Moments> sumsOf(const std::vector<Moments>& ones, const std::vector<Moments>& others)
{
    std::vector<Moments> sums;
    sums.reserve(ones.size() * others.size());
    for (const Moments& one : ones) {
        for (const Moments& other : others) {
            sums.push_back(
                {one.chance * other.chance, one.mean + other.mean, one.variance + other.variance});
        }
    }
    return sums;
}

} // namespace

ForecastTotal::ForecastTotal(const std::vector<SumPart>& parts)
{
    std::vector<Moments> sums{{1, 0, 0}};
    m_degreesOfFreedom = stats::kInfiniteDf;
    for (const auto& [variety, stands] : standsOf(parts)) {
        for (const Stand& stand : stands) {
            m_degreesOfFreedom = std::min(m_degreesOfFreedom, stand.model.degreesOfFreedom);
        }
        sums = merged(sumsOf(merged(outcomesOf(stands)), sums));
    }
    double all = 0;
    for (const Moments& sum : sums) {
        all += sum.chance;
        m_meanGrams += sum.chance * sum.mean;
    }
    m_meanGrams /= all;
    for (Moments& sum : sums) {
        sum.chance /= all;
    }
    m_outcomes = std::move(sums);
}

// The chance that the sum is less than that, or, at nothing, that no tray is left.
double ForecastTotal::below(double grams) const
{
    double chance = 0;
    for (const Moments& sum : m_outcomes) {
        if (sum.mean <= 0) {
            chance += sum.chance;
        } else if (grams > 0) {
            const double ratio = std::log1p(sum.variance / (sum.mean * sum.mean));
            const double middle = std::log(sum.mean) - ratio / 2;
            chance += sum.chance * stats::tUpper((middle - std::log(grams)) / std::sqrt(ratio),
                                                 m_degreesOfFreedom);
        }
    }
    return chance;
}

double ForecastTotal::chanceOf(Mass atLeast) const
{
    return atLeast <= Mass{} ? 1 : 1 - below(inGrams(atLeast));
}

Mass ForecastTotal::quantile(double p) const
{
    if (m_meanGrams <= 0 || below(0) >= p) {
        return {};
    }
    const auto root = stats::risingRoot(
        [&](double logGrams) { return below(std::exp(logGrams)) - p; }, std::log(m_meanGrams), 0.1);
    return root ? grams(std::exp(*root)) : Mass{};
}

Mass ForecastTotal::mean() const
{
    return grams(m_meanGrams);
}

} // namespace plumule
