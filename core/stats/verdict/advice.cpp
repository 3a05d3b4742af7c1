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
    advice.isAtLeast = !(ground.cellDf > 0);
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

std::optional<Advice> adviceFor(const MediaAnswer& answer, const VerdictAsk& ask, double traysEach)
{
    AdviceGround ground;
    if (answer.scope == AnswerScope::NextSowing) {
        ground.cellVariance = answer.variance.value_or(0);
        ground.cellDf = answer.variance ? answer.df : 0;
    }
    if (ground.cellDf <= 0 && !answer.trayVariance) {
        return std::nullopt;
    }
    // Without trays to tell their own spread all of a cell's counts as its sowing's.
    ground.trayVariance = answer.trayVariance.value_or(0);
    ground.harmonicTrays = answer.harmonicTrays;
    ground.traysEach = traysEach;
    ground.media = static_cast<std::size_t>(
        std::count_if(answer.means.begin(), answer.means.end(),
                      [](const MediumMean& mean) { return mean.trays > 0; }));
    ground.sowings = answer.sowings;
    ground.margin = ask.margin;
    ground.sideMetrics = ask.sideMetrics;
    return ground.media < 2 ? std::nullopt : std::optional(sowingsNeeded(ground));
}

} // namespace plumule::stats
