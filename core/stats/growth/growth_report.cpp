#include "core/stats/growth/growth_report.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {

namespace {

Result<BestGrowth> chosenFit(std::span<const double> x, std::span<const double> y,
                             std::optional<GrowthCurve> curve)
{
    if (!curve)
        return fitBestGrowth(x, y);
    Result<CurveFit> fit = fitGrowth(*curve, x, y);
    if (!fit)
        return tl::unexpected(fit.error());
    return BestGrowth{*curve, std::move(*fit), {}};
}

GrowthReport summed(const BestGrowth& best, double level)
{
    GrowthReport report;
    report.curve = best.curve;
    report.curveName = best.fit.model->name;
    report.n = best.fit.n;
    report.df = best.fit.df;
    report.rss = best.fit.rss;
    report.residualSd = best.fit.residualSd;
    report.aicc = best.fit.aicc;
    report.rivals = best.rivals;
    for (std::size_t i = 0; i < best.fit.estimates.size(); ++i)
        report.parameters.push_back(
            {best.fit.model->parameterNames[i], parameterEstimate(best.fit, i, level)});
    return report;
}

} // namespace

Result<GrowthReport> growthReport(std::span<const double> x, std::span<const double> y,
                                  std::optional<GrowthCurve> curve, std::span<const double> at,
                                  double level)
{
    if (!(level > 0 && level < 1))
        return fail(ErrorKind::Invalid, "curve.level", std::to_string(level));
    if (!std::all_of(at.begin(), at.end(), [](double place) { return std::isfinite(place); }))
        return fail(ErrorKind::Invalid, "curve.at");
    const Result<BestGrowth> best = chosenFit(x, y, curve);
    if (!best)
        return tl::unexpected(best.error());
    GrowthReport report = summed(*best, level);
    for (const double place : at)
        report.at.push_back(curveAt(best->fit, place, level));
    const auto rate = topRate(best->fit, level);
    const auto ripe = xAtFraction(best->fit, 0.9, level);
    if (!rate || !ripe)
        return tl::unexpected(rate ? ripe.error() : rate.error());
    report.topRate = *rate;
    report.xAt90pct = *ripe;
    report.fullHeightSeen = *std::max_element(x.begin(), x.end()) >= ripe->estimate;
    return report;
}

} // namespace plumule::stats
