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
    if (!sums) {
        return sums;
    }
    if (sums->dfWithin() < 1) {
        return fail(ErrorKind::TooFew, GroupsReason::TooFewValues);
    }
    if (haveNoSpread(groups)) {
        return fail(ErrorKind::NotEstimable, GroupsReason::NoSpread);
    }
    return sums;
}

} // namespace

Result<OneWayAnova> oneWayAnova(Groups groups)
{
    const Result<GroupSums> sums = pooledSums(groups);
    if (!sums) {
        return tl::unexpected(sums.error());
    }
    OneWayAnova anova;
    anova.ssBetween = sums->between;
    anova.ssWithin = sums->within;
    anova.dfBetween = sums->dfBetween();
    anova.dfWithin = sums->dfWithin();
    anova.msBetween = anova.ssBetween / anova.dfBetween;
    anova.msWithin = anova.ssWithin / anova.dfWithin;
    anova.f = anova.msBetween / anova.msWithin;
    anova.p = fUpper(anova.f, anova.dfBetween, anova.dfWithin);
    return anova;
}

Result<VarianceRatio> welchAnova(Groups groups)
{
    const Result<GroupSums> sums = pooledSums(groups);
    if (!sums) {
        return tl::unexpected(sums.error());
    }
    const std::size_t k = sums->n.size();
    std::vector<double> weights;
    double total = 0;
    double mean = 0;
    for (std::size_t i = 0; i < k; ++i) {
        const auto n = static_cast<double>(sums->n[i]);
        if (sums->n[i] < 2) {
            return fail(ErrorKind::TooFew, GroupsReason::TooFewValues);
        }
        if (sums->squares[i] == 0) {
            return fail(ErrorKind::NotEstimable, GroupsReason::NoSpread);
        }
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

} // namespace plumule::stats
