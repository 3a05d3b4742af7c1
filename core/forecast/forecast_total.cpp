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
    double pairsOfSowing = 0;      // ordered pairs of trays that share their sowing
    std::vector<double> survivors; // chances of 0, 1, … trays

    // A harvested tray's mean, and the moments of `left` survivors' sum.
    [[nodiscard]] double mean() const
    {
        return std::exp(model.logMean +
                        (model.meanVariance + model.sowingVariance + model.trayVariance) / 2);
    }
    [[nodiscard]] double variance(int left) const
    {
        const double all = trays;
        const double k = left;
        const double pairs = k * (k - 1);
        const double together = trays > 1 ? pairsOfSowing * pairs / (all * (all - 1)) : 0;
        const double shared = model.meanVariance;
        const double sowing = shared + model.sowingVariance;
        return mean() * mean() *
               (k * std::expm1(sowing + model.trayVariance) + together * std::expm1(sowing) +
                (pairs - together) * std::expm1(shared));
    }
};

std::vector<Stand> standsOf(const std::vector<SumPart>& parts)
{
    std::map<std::pair<VarietyId, MediumId>, Stand> stands;
    for (const SumPart& part : parts) {
        if (part.trays > 0) {
            Stand& stand = stands[{part.model.variety, part.model.medium}];
            stand.model = part.model;
            stand.trays += part.trays;
            stand.pairsOfSowing += double{1} * part.trays * (part.trays - 1);
        }
    }
    std::vector<Stand> all;
    for (auto& [cell, stand] : stands) {
        stand.survivors = stats::chancesOfCounts(
            stand.trays, {1 - stand.model.discardRate, stand.model.discardWeight});
        all.push_back(std::move(stand));
    }
    return all;
}

} // namespace

ForecastTotal::ForecastTotal(const std::vector<SumPart>& parts)
{
    std::vector<Moments> sums{{1, 0, 0}};
    m_degreesOfFreedom = stats::kInfiniteDf;
    for (const Stand& stand : standsOf(parts)) {
        m_degreesOfFreedom = std::min(m_degreesOfFreedom, stand.model.degreesOfFreedom);
        std::vector<Moments> next;
        for (const Moments& sum : sums) {
            for (int left = 0; left <= stand.trays; ++left) {
                const double chance = sum.chance * stand.survivors[static_cast<std::size_t>(left)];
                if (chance > kRarest) {
                    next.push_back({chance, sum.mean + left * stand.mean(),
                                    sum.variance + stand.variance(left)});
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
