#include "core/forecast/forecast_total.h"

#include "core/stats/prediction/counts.h"
#include "core/stats/probability/distributions.h"
#include "core/stats/probability/root.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace plumule {
namespace {

// Outcomes rarer than this are left out, and the others make up for them.
constexpr double kRarest = 1e-6;

// All parts of one variety on one medium.
struct Stand
{
    YieldModel model;
    int trays = 0;
    std::map<Date, int> sowings;   // trays of each
    std::vector<double> survivors; // chances of 0, 1, … trays

    // A harvested tray's mean, in grams.
    [[nodiscard]] double mean() const
    {
        return std::exp(model.logMean +
                        (model.meanVariance + model.sowingVariance + model.trayVariance) / 2);
    }
};

// Ordered pairs of a tray of one and a tray of the other that were sown on one day; of one and the
// same, of two trays.
double pairsOfSowing(const Stand& one, const Stand& other)
{
    double pairs = 0;
    for (const auto& [day, trays] : one.sowings) {
        const auto found = other.sowings.find(day);
        if (found != other.sowings.end()) {
            pairs += double{1} * trays * (found->second - (&one == &other ? 1 : 0));
        }
    }
    return pairs;
}

// The variance of the sum of `left` survivors.
double varianceOf(const Stand& stand, int left)
{
    const double all = stand.trays;
    const double k = left;
    const double pairs = k * (k - 1);
    const double together =
        stand.trays > 1 ? pairsOfSowing(stand, stand) * pairs / (all * (all - 1)) : 0;
    const double shared = stand.model.meanVariance;
    const double sowing = shared + stand.model.sowingVariance;
    return stand.mean() * stand.mean() *
           (k * std::expm1(sowing + stand.model.trayVariance) + together * std::expm1(sowing) +
            (pairs - together) * std::expm1(shared));
}

// The covariance of the sums of two media of one variety.
double covarianceOf(const Stand& a, int leftOfA, const Stand& b, int leftOfB)
{
    const double pairs = double{1} * leftOfA * leftOfB;
    const double together = pairsOfSowing(a, b) * pairs / (double{1} * a.trays * b.trays);
    const double shared = std::min(a.model.meanVariance, b.model.meanVariance);
    const double sowing = shared + std::min(a.model.sowingVariance, b.model.sowingVariance);
    return a.mean() * b.mean() *
           (together * std::expm1(sowing) + (pairs - together) * std::expm1(shared));
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
        stand.survivors = stats::chancesOfCounts(
            stand.trays, {1 - stand.model.discardRate, stand.model.discardWeight});
        all[cell.first].push_back(std::move(stand));
    }
    return all;
}

// How many trays survive of each stand of a variety, with what that comes to.
struct Survival
{
    double chance = 1;
    double mean = 0;
    double variance = 0;
    std::vector<int> left;
};

Survival with(const Survival& before, const std::vector<Stand>& stands, int left)
{
    const std::size_t at = before.left.size();
    const Stand& stand = stands[at];
    Survival after = before;
    after.chance *= stand.survivors[static_cast<std::size_t>(left)];
    after.mean += left * stand.mean();
    after.variance += varianceOf(stand, left);
    for (std::size_t other = 0; other < at; ++other) {
        after.variance += 2 * covarianceOf(stands[other], before.left[other], stand, left);
    }
    after.left.push_back(left);
    return after;
}

std::vector<Survival> survivalsOf(const std::vector<Stand>& stands)
{
    std::vector<Survival> survivals(1);
    for (const Stand& stand : stands) {
        std::vector<Survival> next;
        for (const Survival& before : survivals) {
            for (int left = 0; left <= stand.trays; ++left) {
                if (before.chance * stand.survivors[static_cast<std::size_t>(left)] > kRarest) {
                    next.push_back(with(before, stands, left));
                }
            }
        }
        survivals = std::move(next);
    }
    return survivals;
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
        std::vector<Moments> next;
        for (const Survival& survival : survivalsOf(stands)) {
            for (const Moments& sum : sums) {
                const double chance = sum.chance * survival.chance;
                if (chance > kRarest) {
                    next.push_back(
                        {chance, sum.mean + survival.mean, sum.variance + survival.variance});
                }
            }
        }
        sums = std::move(next);
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
