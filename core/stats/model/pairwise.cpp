#include "core/stats/model/pairwise.h"

#include "core/stats/model/comparisons.h"
#include "core/stats/probability/distributions.h"
#include "core/stats/probability/dunnett.h"
#include "core/stats/probability/holm.h"
#include "core/stats/probability/studentized_range.h"
#include "core/stats/samples/letter_display.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace plumule::stats {

namespace {

struct Layout
{
    GroupSums sums;
    OneWayAnova anova;
};

Result<Layout> layoutOf(Groups groups, double level)
{
    const Result<OneWayAnova> anova = oneWayAnova(groups);
    if (!anova)
        return tl::unexpected(anova.error());
    if (!(level > 0 && level < 1))
        return fail(ErrorKind::Invalid, "level");
    Result<GroupSums> sums = sumGroups(groups);
    if (!sums)
        return tl::unexpected(sums.error());
    return Layout{std::move(*sums), *anova};
}

double difference(const GroupSums& sums, std::size_t i, std::size_t j)
{
    return sums.meanLessShift[j] - sums.meanLessShift[i];
}

double count(const GroupSums& sums, std::size_t i)
{
    return static_cast<double>(sums.n[i]);
}

void addEffectSizes(GroupPair& pair, const GroupSums& sums)
{
    const double df = count(sums, pair.i) + count(sums, pair.j) - 2;
    const double squares = sums.squares[pair.i] + sums.squares[pair.j];
    if (df < 1 || squares == 0)
        return;
    pair.cohensD = difference(sums, pair.i, pair.j) / std::sqrt(squares / df);
    if (df > 1)
        pair.hedgesG = *pair.cohensD * hedgesFactor(df);
}

// Satterthwaite's degrees of freedom for the sum of two squared standard errors.
Done addWelch(GroupPair& pair, const GroupSums& sums, double level)
{
    const double ni = count(sums, pair.i);
    const double nj = count(sums, pair.j);
    if (ni < 2 || nj < 2 || sums.squares[pair.i] + sums.squares[pair.j] == 0)
        return {};
    const double vi = sums.squares[pair.i] / (ni - 1) / ni;
    const double vj = sums.squares[pair.j] / (nj - 1) / nj;
    const double df = (vi + vj) * (vi + vj) / (vi * vi / (ni - 1) + vj * vj / (nj - 1));
    const Result<TEstimate> test =
        tEstimate(difference(sums, pair.i, pair.j), std::sqrt(vi + vj), df, level);
    if (!test)
        return tl::unexpected(test.error());
    const int groups = static_cast<int>(sums.n.size());
    const Result<double> p =
        studentizedRangeUpper(std::abs(test->t) * std::numbers::sqrt2, groups, df);
    const Result<double> q = studentizedRangeQuantile(level, groups, df);
    if (!p || !q)
        return tl::unexpected(p ? q.error() : p.error());
    const double half = *q / std::numbers::sqrt2 * test->se;
    pair.welch = WelchPair{*test, *p, test->estimate - half, test->estimate + half, 1};
    return {};
}

Result<GroupPair> pairOf(const Layout& layout, std::size_t i, std::size_t j, double criticalQ,
                         double level)
{
    GroupPair pair;
    pair.i = i;
    pair.j = j;
    const GroupSums& sums = layout.sums;
    const double se = std::sqrt(layout.anova.msWithin * (1 / count(sums, i) + 1 / count(sums, j)));
    const Result<TEstimate> test =
        tEstimate(difference(sums, i, j), se, layout.anova.dfWithin, level);
    if (!test)
        return tl::unexpected(test.error());
    pair.test = *test;
    const Result<double> p = studentizedRangeUpper(std::abs(test->t) * std::numbers::sqrt2,
                                                   static_cast<int>(sums.n.size()), test->df);
    if (!p)
        return tl::unexpected(p.error());
    pair.pTukey = *p;
    const double half = criticalQ / std::numbers::sqrt2 * se;
    pair.lowerTukey = test->estimate - half;
    pair.upperTukey = test->estimate + half;
    addEffectSizes(pair, sums);
    if (const Done done = addWelch(pair, sums, level); !done)
        return tl::unexpected(done.error());
    return pair;
}

void adjust(std::vector<GroupPair>& pairs)
{
    std::vector<double> raw;
    std::vector<std::optional<double>> own;
    std::vector<std::optional<double>> welch;
    for (const GroupPair& pair : pairs) {
        raw.push_back(pair.test.p);
        own.emplace_back(pair.test.p);
        welch.push_back(pair.welch ? std::optional(pair.welch->test.p) : std::nullopt);
    }
    const auto holm = holmAdjusted(own);
    const auto welchHolm = holmAdjusted(welch);
    const auto bonferroni = bonferroniAdjusted(raw);
    const auto stepUp = benjaminiHochbergAdjusted(raw);
    for (std::size_t r = 0; r < pairs.size(); ++r) {
        pairs[r].pHolm = holm[r].value_or(1);
        pairs[r].pBonferroni = bonferroni[r];
        pairs[r].pBenjaminiHochberg = stepUp[r];
        if (pairs[r].welch)
            pairs[r].welch->pHolm = welchHolm[r].value_or(1);
    }
}

Result<ManyToOne> distributionFor(const GroupSums& sums, std::size_t control)
{
    std::vector<std::size_t> treatments;
    for (std::size_t i = 0; i < sums.n.size(); ++i)
        if (i != control)
            treatments.push_back(sums.n[i]);
    return ManyToOne::fromCounts(sums.n[control], treatments);
}

Result<GroupAgainstControl> againstControlOf(const Layout& layout, const ManyToOne& joint,
                                             std::size_t group, std::size_t control,
                                             double critical, double level)
{
    const GroupSums& sums = layout.sums;
    const double se =
        std::sqrt(layout.anova.msWithin * (1 / count(sums, group) + 1 / count(sums, control)));
    const Result<TEstimate> test =
        tEstimate(difference(sums, control, group), se, layout.anova.dfWithin, level);
    if (!test)
        return tl::unexpected(test.error());
    const Result<double> two = joint.upper(test->t, test->df);
    const Result<double> greater = joint.upper(test->t, test->df, Sides::Upper);
    if (!two || !greater)
        return tl::unexpected(two ? greater.error() : two.error());
    return GroupAgainstControl{group,
                               *test,
                               *two,
                               *greater,
                               test->estimate - critical * se,
                               test->estimate + critical * se};
}

} // namespace

Result<GroupPairs> allGroupPairs(Groups groups, double level)
{
    const Result<Layout> layout = layoutOf(groups, level);
    if (!layout)
        return tl::unexpected(layout.error());
    const Result<double> q =
        studentizedRangeQuantile(level, static_cast<int>(groups.size()), layout->anova.dfWithin);
    if (!q)
        return tl::unexpected(q.error());
    GroupPairs result;
    result.criticalQ = *q;
    for (std::size_t i = 0; i < groups.size(); ++i)
        for (std::size_t j = i + 1; j < groups.size(); ++j) {
            const Result<GroupPair> pair = pairOf(*layout, i, j, *q, level);
            if (!pair)
                return tl::unexpected(pair.error());
            result.pairs.push_back(*pair);
        }
    adjust(result.pairs);
    return result;
}

Result<GroupsAgainstControl> groupsAgainstControl(Groups groups, std::size_t control, double level)
{
    const Result<Layout> layout = layoutOf(groups, level);
    if (!layout)
        return tl::unexpected(layout.error());
    if (control >= groups.size())
        return fail(ErrorKind::Invalid, "control");
    const Result<ManyToOne> joint = distributionFor(layout->sums, control);
    if (!joint)
        return tl::unexpected(joint.error());
    const double df = layout->anova.dfWithin;
    const Result<double> two = joint->quantile(level, df);
    const Result<double> one = joint->quantile(level, df, Sides::Upper);
    if (!two || !one)
        return tl::unexpected(two ? one.error() : two.error());
    GroupsAgainstControl result;
    result.criticalTwoSided = *two;
    result.criticalOneSided = *one;
    for (std::size_t group = 0; group < groups.size(); ++group) {
        if (group == control)
            continue;
        const auto comparison = againstControlOf(*layout, *joint, group, control, *two, level);
        if (!comparison)
            return tl::unexpected(comparison.error());
        result.comparisons.push_back(*comparison);
    }
    return result;
}

std::vector<std::string> tukeyLetters(Groups groups, const GroupPairs& pairs, double alpha)
{
    std::vector<double> means(groups.size(), 0);
    for (const GroupPair& pair : pairs.pairs)
        if (pair.i == 0)
            means[pair.j] = pair.test.estimate;
    std::vector<std::size_t> order(groups.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return means[a] > means[b]; });
    std::vector<std::size_t> place(groups.size());
    for (std::size_t r = 0; r < order.size(); ++r)
        place[order[r]] = r;
    std::vector<std::pair<std::size_t, std::size_t>> differing;
    for (const GroupPair& pair : pairs.pairs)
        if (pair.pTukey < alpha)
            differing.emplace_back(place[pair.i], place[pair.j]);
    const std::vector<std::string> byPlace = letterDisplay(groups.size(), differing);
    std::vector<std::string> letters(groups.size());
    for (std::size_t i = 0; i < letters.size(); ++i)
        letters[i] = byPlace[place[i]];
    return letters;
}

std::vector<double> bonferroniAdjusted(const std::vector<double>& p)
{
    std::vector<double> adjusted;
    for (const double value : p)
        adjusted.push_back(std::min(1.0, value * static_cast<double>(p.size())));
    return adjusted;
}

std::vector<double> benjaminiHochbergAdjusted(const std::vector<double>& p)
{
    std::vector<std::size_t> order(p.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return p[a] > p[b]; });
    std::vector<double> adjusted(p.size());
    double least = 1;
    for (std::size_t r = 0; r < order.size(); ++r) {
        const auto rank = static_cast<double>(p.size() - r);
        least = std::min(least, p[order[r]] * static_cast<double>(p.size()) / rank);
        adjusted[order[r]] = least;
    }
    return adjusted;
}

double hedgesFactor(double df)
{
    return std::exp(std::lgamma(df / 2) - std::lgamma((df - 1) / 2)) / std::sqrt(df / 2);
}

} // namespace plumule::stats
