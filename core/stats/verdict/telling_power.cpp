#include "core/stats/verdict/telling_power.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/verdict/answer_frame.h"
#include "core/stats/verdict/critical_value.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace plumule::stats {
namespace {

constexpr int kNodes = 24;
constexpr double kFarthestShift = 100;
constexpr int kHalvings = 50;

double normalUpper(double x)
{
    return std::erfc(x / std::numbers::sqrt2) / 2;
}

// Chi-square quantiles in the middle of equal shares.
std::vector<double> chiSquareNodes(double df)
{
    std::vector<double> nodes;
    nodes.reserve(kNodes);
    for (int i = 0; i < kNodes; ++i) {
        nodes.push_back(df > 0 ? chiSquareQuantile((i + 0.5) / kNodes, df) : 0);
    }
    return nodes;
}

// The half-width that is drawn around a difference, in true standard errors, for each spread that
// may be found, all equally likely.
std::vector<double> reachesOf(const TellingPlan& plan)
{
    const bool hasOwn = plan.ownDf >= 1 && plan.ownDf < plan.df;
    const double ownDf = hasOwn ? plan.ownDf : 0;
    const std::vector<double> own = chiSquareNodes(ownDf);
    const std::vector<double> rest = chiSquareNodes(plan.df - ownDf);
    std::vector<double> reaches;
    for (const double ofOwn : own) {
        for (const double ofRest : rest) {
            double variance = (ofOwn + ofRest) / plan.df;
            double df = plan.df;
            const double ownVariance = hasOwn ? ofOwn / ownDf : 0;
            if (ownVariance > variance) {
                df = std::max(ownDf, df * variance / ownVariance);
                variance = ownVariance;
            }
            reaches.push_back(criticalValue(plan.media, df, kSingleRisk) * std::sqrt(variance));
        }
        if (!hasOwn) {
            break;
        }
    }
    return reaches;
}

double shareTold(const std::vector<double>& reaches, double shift)
{
    double sum = 0;
    for (const double reach : reaches) {
        sum += normalUpper(reach - shift) + normalUpper(reach + shift);
    }
    return sum / static_cast<double>(reaches.size());
}

} // namespace

double tellingPower(const TellingPlan& plan, double shift)
{
    return plan.df < kFewestDegrees ? 0 : shareTold(reachesOf(plan), shift);
}

double tellingShift(const TellingPlan& plan, double power)
{
    if (plan.df < kFewestDegrees) {
        return 0;
    }
    const std::vector<double> reaches = reachesOf(plan);
    double low = 0;
    double high = kFarthestShift;
    for (int i = 0; i < kHalvings; ++i) {
        const double middle = (low + high) / 2;
        (shareTold(reaches, middle) < power ? low : high) = middle;
    }
    return (low + high) / 2;
}

} // namespace plumule::stats
