#include "core/review/model/tray_model.h"

#include "core/review/model/comparison_checks.h"

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

std::vector<AdjustedMean> plainMeans(const ComparedTrays& trays)
{
    std::vector<std::vector<double>> values(trays.mediaWithValues());
    for (const ComparedTray& tray : trays.trays) {
        values[tray.medium].push_back(tray.value);
    }
    std::vector<AdjustedMean> means;
    for (std::size_t medium = 0; medium < values.size(); ++medium) {
        const MeanInterval plain = meanInterval(values[medium]);
        AdjustedMean& mean = means.emplace_back();
        mean.medium = *trays.media[medium];
        mean.n = plain.n;
        mean.isEstimable = true;
        mean.mean = plain.mean;
        mean.lower = plain.lower;
        mean.upper = plain.upper;
    }
    return means;
}

ModelPair modelPair(const stats::PairComparison& found, bool hasNoSpread)
{
    ModelPair pair;
    pair.a = found.a;
    pair.b = found.b;
    pair.difference = found.raw.estimate;
    if (found.raw.estimable && !hasNoSpread) {
        pair.se = found.raw.se;
        pair.df = found.raw.df;
        pair.lower = found.lowerTukey;
        pair.upper = found.upperTukey;
        pair.p = found.pTukey;
    }
    return pair;
}

} // namespace

TrayModel trayModelOf(const SeasonFacts& facts, const ComparedTrays& trays)
{
    TrayModel result;
    const auto fit = fitComparison(columnsOf(facts, trays));
    if (!fit) {
        result.means = plainMeans(trays);
        return result;
    }
    result.model = fit->model;
    result.sd = fit->sd;
    result.df = fit->residualDf;
    for (std::size_t medium = 0; medium < fit->means.size(); ++medium) {
        result.means.push_back(adjustedMean(fit->means[medium], *trays.media[medium]));
    }
    if (const auto pairs = stats::allPairs(*fit->estimator, fit->means)) {
        for (const stats::PairComparison& pair : *pairs) {
            result.pairs.push_back(modelPair(pair, fit->hasNoSpread));
        }
    }
    result.checks = checksOf(*fit, trays);
    return result;
}

} // namespace plumule
