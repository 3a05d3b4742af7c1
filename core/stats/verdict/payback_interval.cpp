#include "core/stats/verdict/payback_interval.h"

#include "core/stats/probability/distributions.h"

#include <cmath>

namespace plumule::stats {
namespace {

constexpr double kPaybackProbability = 0.975;
constexpr std::size_t kFewestForBand = 3;

struct Grams
{
    double n = 0;
    double mean = 0;
    double relativeVariance = 0; // of the mean
};

Grams gramsOf(std::span<const double> trays)
{
    Grams grams;
    grams.n = static_cast<double>(trays.size());
    for (const double tray : trays) {
        grams.mean += tray / grams.n;
    }
    double ss = 0;
    for (const double tray : trays) {
        ss += (tray - grams.mean) * (tray - grams.mean);
    }
    grams.relativeVariance = ss / (grams.n - 1) / (grams.n * grams.mean * grams.mean);
    return grams;
}

std::optional<double> usesAt(const PaybackGround& ground, double ratio)
{
    const double saved = ground.singleUseCost * ratio - ground.washing;
    return saved > 0 ? std::optional(ground.price / saved) : std::nullopt;
}

} // namespace

PaybackInterval paybackIntervalOf(const PaybackGround& ground)
{
    PaybackInterval result;
    const Grams reusable = gramsOf(ground.reusableGrams);
    const Grams single = gramsOf(ground.singleUseGrams);
    if (!(reusable.mean > 0) || !(single.mean > 0)) {
        return result;
    }
    const double ratio = reusable.mean / single.mean;
    result.uses = usesAt(ground, ratio);
    result.hasBand = ground.reusableGrams.size() >= kFewestForBand &&
                     ground.singleUseGrams.size() >= kFewestForBand;
    if (result.hasBand) {
        const double half = tQuantile(kPaybackProbability, reusable.n + single.n - 2) *
                            std::sqrt(reusable.relativeVariance + single.relativeVariance);
        result.lower = usesAt(ground, ratio * std::exp(half));
        result.upper = usesAt(ground, ratio * std::exp(-half));
    }
    return result;
}

} // namespace plumule::stats
