#include "core/stats/growth/growth_fit.h"

#include "core/stats/probability/plain_checks.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace plumule::stats {

namespace {

// Full height as a multiple of the tallest reading, for readings that have levelled off, are about
// to, or are far from it.
constexpr std::array kFullHeights = {1.03, 1.4, 3.0};
constexpr std::array kRichardsShapes = {1.0, 0.25, 3.0};

struct WeightedLine
{
    double intercept = 0;
    double slope = 0;
    bool found = false;
};

// A straight line through points (x, u) that count by w.
struct LineSums
{
    double w = 0;
    double x = 0;
    double u = 0;
    double xx = 0;
    double xu = 0;

    void add(double atX, double atU, double weight)
    {
        w += weight;
        x += weight * atX;
        u += weight * atU;
        xx += weight * atX * atX;
        xu += weight * atX * atU;
    }

    [[nodiscard]] WeightedLine line() const
    {
        const double sxx = xx - x * x / w;
        const double slope = (xu - x * u / w) / sxx;
        const double intercept = (u - slope * x) / w;
        return {intercept, slope, std::isfinite(slope) && std::isfinite(intercept) && slope != 0};
    }
};

double tallest(std::span<const double> y)
{
    return *std::max_element(y.begin(), y.end(),
                             [](double a, double b) { return std::abs(a) < std::abs(b); });
}

// Share of the full height, kept off 0 and 1 where its odds would be infinite.
double shareOf(double y, double full)
{
    return std::clamp(y / full, 0.005, 0.995);
}

// With the full height taken as known, each curve becomes a line in t once the share is turned into
// its odds; the weights undo how that stretches the ends.
std::vector<double> logisticStart(std::span<const double> x, std::span<const double> y, double full)
{
    LineSums sums;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double q = shareOf(y[i], full);
        const double pull = q * (1 - q);
        sums.add(x[i], std::log(q / (1 - q)), pull * pull);
    }
    const WeightedLine line = sums.line();
    if (!line.found) {
        return {};
    }
    return {full, -line.intercept / line.slope, 1 / line.slope};
}

std::vector<double> gompertzStart(std::span<const double> x, std::span<const double> y, double full)
{
    LineSums sums;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double q = shareOf(y[i], full);
        const double pull = -q * std::log(q);
        sums.add(x[i], -std::log(-std::log(q)), pull * pull);
    }
    const WeightedLine line = sums.line();
    if (!line.found) {
        return {};
    }
    return {full, -line.intercept / line.slope, 1 / line.slope};
}

std::vector<double> richardsStart(std::span<const double> x, std::span<const double> y, double full,
                                  double shape)
{
    LineSums sums;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double q = shareOf(y[i], full);
        const double odds = std::expm1(-shape * std::log(q));
        const double pull = q / shape * odds / (1 + odds);
        sums.add(x[i], std::log(odds), pull * pull);
    }
    const WeightedLine line = sums.line();
    if (!line.found) {
        return {};
    }
    return {full, line.intercept, -line.slope, shape};
}

std::vector<std::vector<double>> startsFor(GrowthCurve curve, std::span<const double> x,
                                           std::span<const double> y)
{
    std::vector<std::vector<double>> starts;
    const double top = tallest(y);
    for (const double times : kFullHeights) {
        if (curve == GrowthCurve::Logistic) {
            starts.push_back(logisticStart(x, y, times * top));
        } else if (curve == GrowthCurve::Gompertz) {
            starts.push_back(gompertzStart(x, y, times * top));
        } else {
            for (const double shape : kRichardsShapes) {
                starts.push_back(richardsStart(x, y, times * top, shape));
            }
        }
    }
    std::erase_if(starts, [](const std::vector<double>& start) { return start.empty(); });
    return starts;
}

Done checkReadings(std::span<const double> x, std::span<const double> y)
{
    if (x.empty() || y.empty()) {
        return fail(ErrorKind::TooFew, CurveReason::TooFewReadings, 0,
                    logisticCurve()->parameterNames.size() + 1);
    }
    if (x.size() == y.size() && allAlike(y)) {
        return fail(ErrorKind::Invalid, CurveReason::AllAlike);
    }
    return {};
}

bool isBetter(const CurveFit& fit, const CurveFit& than)
{
    if (fit.aicc && than.aicc) {
        return *fit.aicc < *than.aicc;
    }
    return fit.estimates.size() == than.estimates.size() && fit.rss < than.rss;
}

} // namespace

const CurveModelPtr& growthModel(GrowthCurve curve)
{
    switch (curve) {
    case GrowthCurve::Gompertz:
        return gompertzCurve();
    case GrowthCurve::Richards:
        return richardsCurve();
    case GrowthCurve::Logistic:
        break;
    }
    return logisticCurve();
}

Result<CurveFit> fitGrowth(GrowthCurve curve, std::span<const double> x, std::span<const double> y)
{
    const CurveModelPtr& model = growthModel(curve);
    // Too few readings is said before anything else that may be wrong with them.
    if (x.size() == y.size() && x.size() <= model->parameterNames.size()) {
        return fail(ErrorKind::TooFew, CurveReason::TooFewReadings, x.size(),
                    model->parameterNames.size() + 1);
    }
    if (const Done checked = checkReadings(x, y); !checked) {
        return tl::unexpected(checked.error());
    }
    // Four parameters leave room for a false minimum, so every start is heard.
    return fitCurve(model, x, y, startsFor(curve, x, y),
                    curve == GrowthCurve::Richards ? StartsTried::All : StartsTried::UntilOneEnds);
}

Result<BestGrowth> fitBestGrowth(std::span<const double> x, std::span<const double> y)
{
    std::vector<GrowthCurve> curves = {GrowthCurve::Logistic, GrowthCurve::Gompertz};
    if (x.size() >= 7) {
        curves.push_back(GrowthCurve::Richards);
    }
    std::optional<BestGrowth> best;
    std::optional<Error> firstError;
    for (const GrowthCurve curve : curves) {
        Result<CurveFit> fit = fitGrowth(curve, x, y);
        if (!fit) {
            firstError = firstError.value_or(fit.error());
            continue;
        }
        if (!best || isBetter(*fit, best->fit)) {
            best = BestGrowth{curve, std::move(*fit)};
        }
    }
    if (!best) {
        return tl::unexpected(*firstError);
    }
    return *std::move(best);
}

} // namespace plumule::stats
