#include "core/stats/growth/growth_report.h"

#include "core/stats/probability/plain_checks.h"

#include <algorithm>

namespace plumule::stats {

namespace {

Done checkAsk(const GrowthAsk& ask)
{
    if (!(ask.level > 0 && ask.level < 1)) {
        return fail(ErrorKind::Invalid, CurveReason::Level);
    }
    if (!allFinite(ask.at)) {
        return fail(ErrorKind::Invalid, CurveReason::AskedNotFinite);
    }
    if (!allFinite(ask.heights)) {
        return fail(ErrorKind::Invalid, CurveReason::AskedNotFinite);
    }
    return {};
}

Result<BestGrowth> chosenFit(std::span<const double> x, std::span<const double> y,
                             std::optional<GrowthCurve> curve)
{
    if (!curve) {
        return fitBestGrowth(x, y);
    }
    Result<CurveFit> fit = fitGrowth(*curve, x, y);
    if (!fit) {
        return tl::unexpected(fit.error());
    }
    return BestGrowth{*curve, std::move(*fit)};
}

GrowthReport summed(const BestGrowth& best, const GrowthAsk& ask)
{
    GrowthReport report;
    report.fit = best.fit;
    report.curve = best.curve;
    report.curveName = best.fit.model->name;
    report.n = best.fit.n;
    report.df = best.fit.df;
    report.rss = best.fit.rss;
    report.residualSd = best.fit.residualSd;
    report.aicc = best.fit.aicc;
    for (std::size_t i = 0; i < best.fit.estimates.size(); ++i) {
        report.parameters.push_back(
            {best.fit.model->parameterNames[i], parameterEstimate(best.fit, i, ask.level)});
    }
    for (const double place : ask.at) {
        report.at.push_back(curveAt(best.fit, place, ask.level));
    }
    for (const double height : ask.heights) {
        TimeToHeight& time = report.toHeight.emplace_back(TimeToHeight{height, {}});
        if (const auto x = xAtHeight(best.fit, height, ask.level)) {
            time.x = *x;
        }
    }
    return report;
}

} // namespace

Result<GrowthReport> growthReport(std::span<const double> x, std::span<const double> y,
                                  const GrowthAsk& ask)
{
    if (const Done good = checkAsk(ask); !good) {
        return tl::unexpected(good.error());
    }
    const Result<BestGrowth> best = chosenFit(x, y, ask.curve);
    if (!best) {
        return tl::unexpected(best.error());
    }
    GrowthReport report = summed(*best, ask);
    const auto rate = topRate(best->fit, ask.level);
    const auto ripe = xAtFraction(best->fit, 0.9, ask.level);
    if (!rate || !ripe) {
        return tl::unexpected(rate ? ripe.error() : rate.error());
    }
    report.topRate = *rate;
    report.xAt90pct = *ripe;
    report.lastX = *std::max_element(x.begin(), x.end());
    report.fullHeightSeen = !report.isForetold(ripe->estimate);
    return report;
}

} // namespace plumule::stats
