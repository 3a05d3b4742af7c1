#include "core/stats/verdict/advice.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/verdict/answer_frame.h"
#include "core/stats/verdict/critical_value.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {
namespace {

constexpr double kAdvisedPower = 0.8;
constexpr int kFewestAdvised = 3; // below there is no verdict for the next sowing

bool tellsApart(const AdviceGround& ground, double variance, int sowings)
{
    const double df = (sowings - 1.0) * (static_cast<double>(ground.media) - 1);
    const double level = kOpenRisk / sowings / std::max(1, ground.sideMetrics);
    const double reach = criticalValue(ground.media, df, level) + tQuantile(kAdvisedPower, df);
    return reach * std::sqrt(2 * variance / sowings) <= ground.margin;
}

} // namespace

Advice sowingsNeeded(const AdviceGround& ground)
{
    Advice advice;
    if (ground.cellDf > 0) {
        const double upper =
            ground.cellVariance * ground.cellDf / chiSquareQuantile(0.5, ground.cellDf);
        advice.trialVariance = std::max(0.0, upper - ground.trayVariance / ground.harmonicTrays);
    }
    const double variance = advice.trialVariance + ground.trayVariance / ground.traysEach;
    const int first = std::max(kFewestAdvised, ground.sowings + 1);
    for (int sowings = first; sowings <= ground.sowings + kMostSowingsMore; ++sowings) {
        if (tellsApart(ground, variance, sowings)) {
            advice.sowings = sowings;
            advice.moreSowings = sowings - ground.sowings;
            break;
        }
    }
    return advice;
}

} // namespace plumule::stats
