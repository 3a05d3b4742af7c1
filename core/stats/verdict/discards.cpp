#include "core/stats/verdict/discards.h"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <map>

namespace plumule::stats {
namespace {

constexpr double kDiscardRisk = 0.05;
constexpr double kAsLikely = 1e-7; // relative: tables of one probability differ by rounding

double logChoose(int n, int k)
{
    using boost::math::lgamma;
    return lgamma(n + 1.0) - lgamma(k + 1.0) - lgamma(n - k + 1.0);
}

} // namespace

double fisherMidP(int a, int n1, int b, int n2)
{
    const int lost = a + b;
    const auto logLikelihood = [&](int x) {
        return logChoose(n1, x) + logChoose(n2, lost - x) - logChoose(n1 + n2, lost);
    };
    const double seen = logLikelihood(a);
    double p = 0;
    for (int x = std::max(0, lost - n2); x <= std::min(lost, n1); ++x) {
        const double one = logLikelihood(x);
        if (one < seen - kAsLikely) {
            p += std::exp(one);
        } else if (one <= seen + kAsLikely) {
            p += std::exp(one) / 2;
        }
    }
    return std::min(1.0, p);
}

std::vector<MediumDiscards> discardsOf(std::span<const SownAndDiscarded> counts)
{
    std::map<std::size_t, MediumDiscards> byMedium;
    std::map<std::size_t, std::map<std::size_t, int>> lostBySowing;
    int sown = 0;
    int discarded = 0;
    for (const SownAndDiscarded& count : counts) {
        if (count.sown <= 0) {
            continue;
        }
        MediumDiscards& medium = byMedium[count.medium];
        medium.medium = count.medium;
        medium.sown += count.sown;
        medium.discarded += count.discarded;
        sown += count.sown;
        discarded += count.discarded;
        if (count.discarded > 0) {
            lostBySowing[count.medium][count.sowing] += count.discarded;
        }
    }
    std::vector<MediumDiscards> result;
    for (auto& [number, medium] : byMedium) {
        if (byMedium.size() > 1) {
            medium.p = fisherMidP(medium.discarded, medium.sown, discarded - medium.discarded,
                                  sown - medium.sown);
        }
        medium.differs = medium.p <= kDiscardRisk / static_cast<double>(byMedium.size());
        medium.isInOneSowing = lostBySowing[number].size() == 1;
        result.push_back(medium);
    }
    return result;
}

} // namespace plumule::stats
