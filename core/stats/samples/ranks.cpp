#include "core/stats/samples/ranks.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/holm.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace plumule::stats {

namespace {

constexpr std::size_t kMostExact = 100;

std::vector<std::size_t> orderOf(std::span<const double> values)
{
    std::vector<std::size_t> order(values.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(),
              [&values](std::size_t a, std::size_t b) { return values[a] < values[b]; });
    return order;
}

// Calls visit(first, last) for each run of equal values of the order.
template <class Visit>
void forEachTie(std::span<const double> values, const std::vector<std::size_t>& order, Visit visit)
{
    for (std::size_t first = 0; first < order.size();) {
        std::size_t last = first;
        while (last + 1 < order.size() && values[order[last + 1]] == values[order[first]])
            ++last;
        visit(first, last);
        first = last + 1;
    }
}

bool allFinite(std::span<const double> values)
{
    return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
}

bool allAlike(std::span<const double> values)
{
    return std::all_of(values.begin(), values.end(),
                       [&values](double v) { return v == values.front(); });
}

// The ranks of all groups together, group after group.
struct GroupRanks
{
    std::vector<std::size_t> sizes;
    std::vector<double> sums;
    double n = 0;
    double ties = 0;
};

Result<GroupRanks> rankGroups(std::span<const std::vector<double>> groups)
{
    if (groups.size() < 2)
        return fail(ErrorKind::TooFew, "ranks.groups", std::to_string(groups.size()));
    std::vector<double> all;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        if (groups[g].empty())
            return fail(ErrorKind::TooFew, "ranks.group", std::to_string(g));
        all.insert(all.end(), groups[g].begin(), groups[g].end());
    }
    if (!allFinite(all))
        return fail(ErrorKind::Invalid, "ranks.values");
    if (allAlike(all))
        return fail(ErrorKind::Invalid, "ranks.constant");
    const std::vector<double> ranks = midranks(all);
    GroupRanks result;
    result.n = static_cast<double>(all.size());
    result.ties = tieSum(all);
    auto next = ranks.begin();
    for (const std::vector<double>& group : groups) {
        const auto end = next + static_cast<std::ptrdiff_t>(group.size());
        result.sizes.push_back(group.size());
        result.sums.push_back(std::accumulate(next, end, 0.0));
        next = end;
    }
    return result;
}

// Two-sided p of a distance from the mean, without and with the half step towards the mean.
double twoSided(double distance, double sd)
{
    return std::min(1.0, 2 * normalUpper(std::abs(distance) / sd));
}

double twoSidedCorrected(double distance, double sd)
{
    return std::min(1.0, 2 * normalUpper((std::abs(distance) - 0.5) / sd));
}

// Twice a midrank is a whole number, so sums of them index a table.
std::vector<std::size_t> doubled(const std::vector<double>& ranks)
{
    std::vector<std::size_t> whole;
    for (const double rank : ranks)
        whole.push_back(static_cast<std::size_t>(std::lround(2 * rank)));
    return whole;
}

// Share of the table's weight at least as far from its middle as `observed`; the middle is given
// doubled, so that it is whole.
double shareAsFar(const std::vector<double>& weights, std::size_t observed,
                  std::size_t doubledMiddle)
{
    const auto distance = [doubledMiddle](std::size_t sum) {
        return 2 * sum > doubledMiddle ? 2 * sum - doubledMiddle : doubledMiddle - 2 * sum;
    };
    double far = 0;
    double all = 0;
    for (std::size_t sum = 0; sum < weights.size(); ++sum) {
        all += weights[sum];
        if (distance(sum) >= distance(observed))
            far += weights[sum];
    }
    return far / all;
}

double exactRankSum(const std::vector<double>& ranks, std::size_t chosen, double rankTotal)
{
    const std::vector<std::size_t> whole = doubled(ranks);
    std::vector<std::size_t> largest = whole;
    std::sort(largest.rbegin(), largest.rend());
    const std::size_t most = std::accumulate(
        largest.begin(), largest.begin() + static_cast<std::ptrdiff_t>(chosen), std::size_t{0});
    // ways[c][s]: ways to choose c of the ranks so far with (doubled) sum s.
    std::vector<std::vector<double>> ways(chosen + 1, std::vector<double>(most + 1, 0));
    ways[0][0] = 1;
    for (const std::size_t rank : whole)
        for (std::size_t c = chosen; c > 0; --c)
            for (std::size_t sum = most; sum + 1 > rank; --sum)
                ways[c][sum] += ways[c - 1][sum - rank];
    return shareAsFar(ways[chosen], static_cast<std::size_t>(std::lround(2 * rankTotal)),
                      2 * chosen * (ranks.size() + 1));
}

double exactSignedRank(const std::vector<double>& ranks, double v)
{
    const std::vector<std::size_t> whole = doubled(ranks);
    const std::size_t most = std::accumulate(whole.begin(), whole.end(), std::size_t{0});
    std::vector<double> ways(most + 1, 0);
    ways[0] = 1;
    for (const std::size_t rank : whole)
        for (std::size_t sum = most; sum + 1 > rank; --sum)
            ways[sum] += ways[sum - rank];
    return shareAsFar(ways, static_cast<std::size_t>(std::lround(2 * v)), most);
}

} // namespace

std::vector<double> midranks(std::span<const double> values)
{
    const std::vector<std::size_t> order = orderOf(values);
    std::vector<double> ranks(values.size());
    forEachTie(values, order, [&](std::size_t first, std::size_t last) {
        for (std::size_t i = first; i <= last; ++i)
            ranks[order[i]] = static_cast<double>(first + last) / 2 + 1;
    });
    return ranks;
}

double tieSum(std::span<const double> values)
{
    double sum = 0;
    forEachTie(values, orderOf(values), [&sum](std::size_t first, std::size_t last) {
        const auto t = static_cast<double>(last - first + 1);
        sum += t * t * t - t;
    });
    return sum;
}

Result<KruskalWallis> kruskalWallis(std::span<const std::vector<double>> groups)
{
    const Result<GroupRanks> ranked = rankGroups(groups);
    if (!ranked)
        return tl::unexpected(ranked.error());
    const double n = ranked->n;
    KruskalWallis result;
    double between = 0;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        const auto size = static_cast<double>(ranked->sizes[g]);
        const double meanRank = ranked->sums[g] / size;
        result.meanRanks.push_back(meanRank);
        between += size * (meanRank - (n + 1) / 2) * (meanRank - (n + 1) / 2);
    }
    result.h = 12 / (n * (n + 1)) * between / (1 - ranked->ties / (n * n * n - n));
    result.df = static_cast<int>(groups.size()) - 1;
    result.p = chiSquareUpper(result.h, result.df);
    result.epsilonSquared = result.h / (n - 1);
    return result;
}

Result<std::vector<DunnPair>> dunn(std::span<const std::vector<double>> groups)
{
    const Result<GroupRanks> ranked = rankGroups(groups);
    if (!ranked)
        return tl::unexpected(ranked.error());
    const double n = ranked->n;
    const double variance = (n * (n + 1) - ranked->ties / (n - 1)) / 12;
    std::vector<DunnPair> pairs;
    std::vector<std::optional<double>> raw;
    for (std::size_t a = 0; a < groups.size(); ++a)
        for (std::size_t b = a + 1; b < groups.size(); ++b) {
            const auto sizeA = static_cast<double>(ranked->sizes[a]);
            const auto sizeB = static_cast<double>(ranked->sizes[b]);
            DunnPair pair{a, b};
            pair.meanRankDifference = ranked->sums[b] / sizeB - ranked->sums[a] / sizeA;
            pair.z = pair.meanRankDifference / std::sqrt(variance * (1 / sizeA + 1 / sizeB));
            pair.p = 2 * normalUpper(std::abs(pair.z));
            raw.emplace_back(pair.p);
            pairs.push_back(pair);
        }
    const std::vector<std::optional<double>> holm = holmAdjusted(raw);
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        pairs[i].pHolm = *holm[i];
        pairs[i].pBonferroni = std::min(1.0, pairs[i].p * static_cast<double>(pairs.size()));
    }
    return pairs;
}

Result<RankSum> rankSum(std::span<const double> y, std::span<const double> x)
{
    if (y.empty() || x.empty())
        return fail(ErrorKind::TooFew, "ranks.group");
    std::vector<double> all(y.begin(), y.end());
    all.insert(all.end(), x.begin(), x.end());
    if (!allFinite(all))
        return fail(ErrorKind::Invalid, "ranks.values");
    if (allAlike(all))
        return fail(ErrorKind::Invalid, "ranks.constant");
    const std::vector<double> ranks = midranks(all);
    const auto m = static_cast<double>(y.size());
    const auto k = static_cast<double>(x.size());
    const double n = m + k;
    const double total =
        std::accumulate(ranks.begin(), ranks.begin() + static_cast<std::ptrdiff_t>(y.size()), 0.0);
    RankSum result;
    result.u = total - m * (m + 1) / 2;
    const double sd = std::sqrt(m * k / 12 * (n + 1 - tieSum(all) / (n * (n - 1))));
    result.pNormal = twoSided(result.u - m * k / 2, sd);
    result.pNormalCorrected = twoSidedCorrected(result.u - m * k / 2, sd);
    if (all.size() <= kMostExact)
        result.pExact = exactRankSum(ranks, y.size(), total);
    return result;
}

Result<SignedRank> signedRank(std::span<const double> differences)
{
    if (!allFinite(differences))
        return fail(ErrorKind::Invalid, "ranks.values");
    std::vector<double> sizes;
    std::vector<bool> positive;
    for (const double difference : differences)
        if (difference != 0) {
            sizes.push_back(std::abs(difference));
            positive.push_back(difference > 0);
        }
    if (sizes.empty())
        return fail(ErrorKind::TooFew, "ranks.differences");
    const std::vector<double> ranks = midranks(sizes);
    SignedRank result;
    result.zeroDifferences = differences.size() - sizes.size();
    for (std::size_t i = 0; i < ranks.size(); ++i)
        result.v += positive[i] ? ranks[i] : 0;
    const auto n = static_cast<double>(sizes.size());
    const double sd = std::sqrt(n * (n + 1) * (2 * n + 1) / 24 - tieSum(sizes) / 48);
    result.pNormal = twoSided(result.v - n * (n + 1) / 4, sd);
    result.pNormalCorrected = twoSidedCorrected(result.v - n * (n + 1) / 4, sd);
    if (sizes.size() <= kMostExact)
        result.pExact = exactSignedRank(ranks, result.v);
    return result;
}

} // namespace plumule::stats
