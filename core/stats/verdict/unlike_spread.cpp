#include "core/stats/verdict/unlike_spread.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/samples/checks.h"

#include <algorithm>
#include <map>

namespace plumule::stats {
namespace {

constexpr double kUnlikeRisk = 0.05;
constexpr double kRatioRisk = 0.10;
constexpr std::size_t kFewestShared = 3;

std::optional<double> brownForsytheOf(const TrayResiduals& residuals)
{
    std::map<std::size_t, std::vector<double>> byMedium;
    for (const TrayResidual& tray : residuals.trays) {
        byMedium[tray.medium].push_back(tray.value);
    }
    std::vector<std::vector<double>> groups;
    groups.reserve(byMedium.size());
    for (auto& [medium, values] : byMedium) {
        groups.push_back(std::move(values));
    }
    const auto test = brownForsythe(groups);
    return test ? std::optional(test->p) : std::nullopt;
}

void compareVariances(UnlikeSpread& spread, const CellFit& fit)
{
    std::vector<double> variances;
    std::size_t fewest = 0;
    for (std::size_t i = 0; i < fit.media().size(); ++i) {
        for (std::size_t j = i + 1; j < fit.media().size(); ++j) {
            const std::size_t a = fit.media()[i];
            const std::size_t b = fit.media()[j];
            const std::size_t shared = fit.sharedDifferences(a, b).size();
            if (shared >= kFewestShared) {
                fewest = variances.empty() ? shared : std::min(fewest, shared);
                variances.push_back(*pairVariance(fit, a, b));
            }
        }
    }
    if (variances.size() < 2) {
        return;
    }
    const auto [least, most] = std::minmax_element(variances.begin(), variances.end());
    const double df = static_cast<double>(fewest) - 1;
    spread.limit = fQuantile(1 - kRatioRisk / static_cast<double>(variances.size()), df, df);
    if (*least > 0) {
        spread.largestToSmallest = *most / *least;
    }
    spread.isUnlike = spread.isUnlike || *most > *spread.limit * *least;
}

} // namespace

std::optional<double> pairVariance(const CellFit& fit, std::size_t a, std::size_t b)
{
    const std::vector<double> differences = fit.sharedDifferences(a, b);
    if (differences.size() < 2) {
        return std::nullopt;
    }
    const double n = static_cast<double>(differences.size());
    double mean = 0;
    for (const double difference : differences) {
        mean += difference / n;
    }
    double ss = 0;
    for (const double difference : differences) {
        ss += (difference - mean) * (difference - mean);
    }
    return ss / (n - 1) / 2;
}

UnlikeSpread unlikeSpreadOf(const CellFit& fit, const TrayResiduals& residuals)
{
    UnlikeSpread spread;
    if (fit.media().size() < 3) {
        return spread;
    }
    spread.brownForsytheP = brownForsytheOf(residuals);
    spread.isUnlike = spread.brownForsytheP.value_or(1) < kUnlikeRisk;
    compareVariances(spread, fit);
    return spread;
}

} // namespace plumule::stats
