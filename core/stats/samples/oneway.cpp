#include "core/stats/samples/oneway.h"

#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace plumule::stats {

namespace {

Result<GroupSums> pooledSums(Groups groups)
{
    Result<GroupSums> sums = sumGroups(groups);
    if (!sums)
        return sums;
    if (sums->dfWithin() < 1)
        return fail(ErrorKind::TooFew, "values");
    if (haveNoSpread(groups))
        return fail(ErrorKind::NotEstimable, "spread");
    return sums;
}

double pooledVariance(const GroupSums& sums)
{
    return sums.within / sums.dfWithin();
}

// The two roots of Fieller's quadratic in the ratio b / a, a and b independent.
void addFieller(RatioToControl& ratio, const GroupSums& sums, std::size_t control, double level)
{
    const double a = sums.mean[control];
    const double b = sums.mean[ratio.group];
    const double t = tQuantile(0.5 + level / 2, sums.dfWithin());
    const double t2 = t * t * pooledVariance(sums);
    const double va = t2 / static_cast<double>(sums.n[control]);
    const double vb = t2 / static_cast<double>(sums.n[ratio.group]);
    const double lead = a * a - va;
    if (lead <= 0)
        return;
    const double root = std::sqrt(a * a * b * b - lead * (b * b - vb));
    ratio.lower = (a * b - root) / lead;
    ratio.upper = (a * b + root) / lead;
}

std::optional<std::vector<std::vector<double>>> logarithms(Groups groups)
{
    std::vector<std::vector<double>> logs;
    for (const auto& group : groups) {
        auto& back = logs.emplace_back();
        for (const double x : group) {
            if (x <= 0)
                return std::nullopt;
            back.push_back(std::log(x));
        }
    }
    return logs;
}

std::vector<double> pairWeights(std::size_t groups, std::size_t group, std::size_t control)
{
    std::vector<double> weights(groups, 0.0);
    weights[group] = 1;
    weights[control] = -1;
    return weights;
}

} // namespace

Result<OneWayAnova> oneWayAnova(Groups groups)
{
    const Result<GroupSums> sums = pooledSums(groups);
    if (!sums)
        return tl::unexpected(sums.error());
    OneWayAnova anova;
    anova.ssBetween = sums->between;
    anova.ssWithin = sums->within;
    anova.dfBetween = sums->dfBetween();
    anova.dfWithin = sums->dfWithin();
    anova.msBetween = anova.ssBetween / anova.dfBetween;
    anova.msWithin = anova.ssWithin / anova.dfWithin;
    anova.f = anova.msBetween / anova.msWithin;
    anova.p = fUpper(anova.f, anova.dfBetween, anova.dfWithin);
    anova.residualSd = std::sqrt(anova.msWithin);
    const double total = anova.ssBetween + anova.ssWithin;
    const double beyondChance = anova.ssBetween - anova.dfBetween * anova.msWithin;
    anova.eta2 = anova.ssBetween / total;
    anova.omega2 = beyondChance / (total + anova.msWithin);
    anova.epsilon2 = beyondChance / total;
    anova.cohensF = std::sqrt(anova.ssBetween / anova.ssWithin);
    return anova;
}

Result<VarianceRatio> welchAnova(Groups groups)
{
    const Result<GroupSums> sums = pooledSums(groups);
    if (!sums)
        return tl::unexpected(sums.error());
    const std::size_t k = sums->n.size();
    std::vector<double> weights;
    double total = 0;
    double mean = 0;
    for (std::size_t i = 0; i < k; ++i) {
        const auto n = static_cast<double>(sums->n[i]);
        if (sums->n[i] < 2)
            return fail(ErrorKind::TooFew, "values");
        if (sums->squares[i] == 0)
            return fail(ErrorKind::NotEstimable, "spread");
        weights.push_back(n * (n - 1) / sums->squares[i]);
        total += weights.back();
        mean += weights.back() * sums->meanLessShift[i];
    }
    mean /= total;
    double between = 0;
    double unlike = 0;
    for (std::size_t i = 0; i < k; ++i) {
        const double off = sums->meanLessShift[i] - mean;
        between += weights[i] * off * off;
        const double share = 1 - weights[i] / total;
        unlike += share * share / (static_cast<double>(sums->n[i]) - 1);
    }
    const auto groupsCount = static_cast<double>(k);
    const double spread = groupsCount * groupsCount - 1;
    VarianceRatio result;
    result.df1 = groupsCount - 1;
    result.df2 = spread / (3 * unlike);
    result.f = between / result.df1 / (1 + 2 * (groupsCount - 2) * unlike / spread);
    result.p = fUpper(result.f, result.df1, result.df2);
    return result;
}

Result<TEstimate> tEstimate(double estimate, double se, double df, double level)
{
    if (!(level > 0 && level < 1))
        return fail(ErrorKind::Invalid, "level");
    if (!(df > 0))
        return fail(ErrorKind::TooFew, "df");
    if (!(se > 0) || !std::isfinite(se) || !std::isfinite(estimate))
        return fail(ErrorKind::NotEstimable, "spread");
    TEstimate result;
    result.estimate = estimate;
    result.se = se;
    result.df = df;
    result.t = estimate / se;
    result.p = tTwoSided(result.t, df);
    const double half = se * tQuantile(0.5 + level / 2, df);
    result.lower = estimate - half;
    result.upper = estimate + half;
    return result;
}

Result<TEstimate> oneWayContrast(Groups groups, std::span<const double> weights, double level)
{
    const Result<GroupSums> sums = pooledSums(groups);
    if (!sums)
        return tl::unexpected(sums.error());
    if (weights.size() != groups.size())
        return fail(ErrorKind::Invalid, "weights");
    double size = 0;
    for (const double weight : weights)
        size += std::abs(weight);
    if (!(size > 0) || !std::isfinite(size) ||
        std::abs(std::accumulate(weights.begin(), weights.end(), 0.0)) > 1e-9 * size)
        return fail(ErrorKind::Invalid, "weights");
    double estimate = 0;
    double variance = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        estimate += weights[i] * sums->meanLessShift[i];
        variance += weights[i] * weights[i] / static_cast<double>(sums->n[i]);
    }
    return tEstimate(estimate, std::sqrt(variance * pooledVariance(*sums)), sums->dfWithin(),
                     level);
}

Result<std::vector<RatioToControl>> ratiosToControl(Groups groups, std::size_t control,
                                                    double level)
{
    const Result<GroupSums> sums = pooledSums(groups);
    if (!sums)
        return tl::unexpected(sums.error());
    if (control >= groups.size())
        return fail(ErrorKind::Invalid, "control");
    if (!(level > 0 && level < 1))
        return fail(ErrorKind::Invalid, "level");
    if (sums->mean[control] == 0)
        return fail(ErrorKind::NotEstimable, "control");
    const auto logs = logarithms(groups);
    std::vector<RatioToControl> ratios;
    for (std::size_t group = 0; group < groups.size(); ++group) {
        if (group == control)
            continue;
        RatioToControl ratio;
        ratio.group = group;
        ratio.ratio = sums->mean[group] / sums->mean[control];
        addFieller(ratio, *sums, control, level);
        if (logs) {
            const auto test =
                oneWayContrast(*logs, pairWeights(groups.size(), group, control), level);
            if (test) {
                ratio.geometric = *test;
                ratio.geometric->estimate = std::exp(test->estimate);
                ratio.geometric->lower = std::exp(test->lower);
                ratio.geometric->upper = std::exp(test->upper);
            }
        }
        ratios.push_back(ratio);
    }
    return ratios;
}

} // namespace plumule::stats
