#include "core/stats/samples/friedman.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/studentized_range.h"
#include "core/stats/samples/ranks.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

namespace plumule::stats {

namespace {

// Above this many steps the exact distribution is not worth its wait (about a second).
constexpr double kMostSteps = 2e7;

using Sums = std::vector<int>;
// Sorted (doubled) rank sums with their weight; the statistic does not care which treatment has
// which sum, and neither do the orders of a block, so sorted sums stand for all.
using SumWeights = std::map<Sums, double>;

// All different orders of one block's doubled ranks; empty when there are too many.
std::vector<Sums> ordersOf(Sums ranks)
{
    std::vector<Sums> orders;
    if (ranks.size() > 8)
        return orders;
    std::sort(ranks.begin(), ranks.end());
    do
        orders.push_back(ranks);
    while (std::next_permutation(ranks.begin(), ranks.end()));
    return orders;
}

std::optional<SumWeights> sumDistribution(std::span<const Sums> blocks)
{
    SumWeights weights{{Sums(blocks.front().size(), 0), 1.0}};
    double steps = 0;
    for (const Sums& block : blocks) {
        const std::vector<Sums> orders = ordersOf(block);
        steps += static_cast<double>(weights.size() * orders.size());
        if (orders.empty() || steps > kMostSteps)
            return std::nullopt;
        SumWeights next;
        for (const auto& [sums, weight] : weights)
            for (const Sums& order : orders) {
                Sums sum = sums;
                for (std::size_t i = 0; i < sum.size(); ++i)
                    sum[i] += order[i];
                std::sort(sum.begin(), sum.end());
                next[std::move(sum)] += weight / static_cast<double>(orders.size());
            }
        weights = std::move(next);
    }
    return weights;
}

long long sumOfSquares(const Sums& sums)
{
    return std::accumulate(sums.begin(), sums.end(), 0LL, [](long long total, int sum) {
        return total + static_cast<long long>(sum) * sum;
    });
}

struct RankedBlocks
{
    std::vector<std::vector<double>> ranks;
    std::vector<double> sums;
    double squares = 0; // Σ of all squared ranks
    double ties = 0;
    double blocks = 0;
    double treatments = 0;
};

Result<RankedBlocks> rankBlocks(std::span<const std::vector<double>> blocks)
{
    if (blocks.size() < 2)
        return fail(ErrorKind::TooFew, "friedman.blocks", std::to_string(blocks.size()));
    const std::size_t k = blocks.front().size();
    if (k < 2)
        return fail(ErrorKind::TooFew, "friedman.treatments", std::to_string(k));
    RankedBlocks ranked;
    ranked.sums.assign(k, 0);
    ranked.blocks = static_cast<double>(blocks.size());
    ranked.treatments = static_cast<double>(k);
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        if (blocks[b].size() != k)
            return fail(ErrorKind::Invalid, "friedman.block", std::to_string(b));
        if (!std::all_of(blocks[b].begin(), blocks[b].end(),
                         [](double value) { return std::isfinite(value); }))
            return fail(ErrorKind::Invalid, "friedman.values", std::to_string(b));
        ranked.ranks.push_back(midranks(blocks[b]));
        ranked.ties += tieSum(blocks[b]);
        for (std::size_t i = 0; i < k; ++i) {
            ranked.sums[i] += ranked.ranks.back()[i];
            ranked.squares += ranked.ranks.back()[i] * ranked.ranks.back()[i];
        }
    }
    if (ranked.ties == ranked.blocks * (std::pow(ranked.treatments, 3) - ranked.treatments))
        return fail(ErrorKind::Invalid, "friedman.constant");
    return ranked;
}

double squaredSums(const RankedBlocks& ranked)
{
    return std::inner_product(ranked.sums.begin(), ranked.sums.end(), ranked.sums.begin(), 0.0);
}

std::optional<double> exactTail(const RankedBlocks& ranked)
{
    std::vector<Sums> blocks;
    Sums observed(ranked.sums.size(), 0);
    for (const std::vector<double>& ranks : ranked.ranks) {
        Sums whole;
        for (const double rank : ranks)
            whole.push_back(static_cast<int>(std::lround(2 * rank)));
        std::transform(whole.begin(), whole.end(), observed.begin(), observed.begin(),
                       std::plus<>());
        blocks.push_back(std::move(whole));
    }
    const auto weights = sumDistribution(blocks);
    if (!weights)
        return std::nullopt;
    double tail = 0;
    for (const auto& [sums, weight] : *weights)
        if (sumOfSquares(sums) >= sumOfSquares(observed))
            tail += weight;
    return std::min(tail, 1.0);
}

} // namespace

Result<Friedman> friedman(std::span<const std::vector<double>> blocks)
{
    const Result<RankedBlocks> ranked = rankBlocks(blocks);
    if (!ranked)
        return tl::unexpected(ranked.error());
    const double n = ranked->blocks;
    const double k = ranked->treatments;
    Friedman result;
    result.rankSums = ranked->sums;
    double spread = 0;
    for (const double sum : ranked->sums)
        spread += (sum - n * (k + 1) / 2) * (sum - n * (k + 1) / 2);
    result.chiSquare = 12 * spread / (n * k * (k + 1) - ranked->ties / (k - 1));
    result.df = static_cast<int>(k) - 1;
    result.p = chiSquareUpper(result.chiSquare, result.df);
    result.kendallW = result.chiSquare / (n * (k - 1));
    result.fDf1 = result.df;
    result.fDf2 = static_cast<int>(n - 1) * result.df;
    const double room = n * (k - 1) - result.chiSquare;
    const bool wholeAgreement = room <= 1e-12 * n * (k - 1);
    result.imanDavenportF = wholeAgreement ? std::numeric_limits<double>::infinity()
                                           : (n - 1) * result.chiSquare / room;
    result.pF = wholeAgreement ? 0 : fUpper(result.imanDavenportF, result.fDf1, result.fDf2);
    result.pExact = exactTail(*ranked);
    return result;
}

Result<std::vector<NemenyiPair>> nemenyi(std::span<const std::vector<double>> blocks)
{
    const Result<RankedBlocks> ranked = rankBlocks(blocks);
    if (!ranked)
        return tl::unexpected(ranked.error());
    const double sd = std::sqrt(ranked->blocks * ranked->treatments * (ranked->treatments + 1) / 6);
    const auto groups = static_cast<int>(ranked->treatments);
    std::vector<NemenyiPair> pairs;
    for (std::size_t a = 0; a < ranked->sums.size(); ++a)
        for (std::size_t b = a + 1; b < ranked->sums.size(); ++b) {
            NemenyiPair pair{a, b};
            pair.rankSumDifference = ranked->sums[b] - ranked->sums[a];
            pair.z = pair.rankSumDifference / sd;
            const Result<double> p =
                studentizedRangeUpper(std::abs(pair.z) * std::sqrt(2.0), groups, kInfiniteDf);
            if (!p)
                return tl::unexpected(p.error());
            pair.p = *p;
            pairs.push_back(pair);
        }
    return pairs;
}

Result<double> conoverRankSumDifference(std::span<const std::vector<double>> blocks, double alpha)
{
    const Result<RankedBlocks> ranked = rankBlocks(blocks);
    if (!ranked)
        return tl::unexpected(ranked.error());
    const double n = ranked->blocks;
    const double df = (n - 1) * (ranked->treatments - 1);
    const double spread = 2 * (n * ranked->squares - squaredSums(*ranked)) / df;
    return tQuantile(1 - alpha / 2, df) * std::sqrt(std::max(spread, 0.0));
}

Result<PageTrend> pageTrend(std::span<const std::vector<double>> blocks)
{
    const Result<RankedBlocks> ranked = rankBlocks(blocks);
    if (!ranked)
        return tl::unexpected(ranked.error());
    const double n = ranked->blocks;
    const double k = ranked->treatments;
    PageTrend trend;
    for (std::size_t i = 0; i < ranked->sums.size(); ++i)
        trend.l += static_cast<double>(i + 1) * ranked->sums[i];
    // Each block's variance shrinks with its ties.
    const double perBlock = (n * (k * k * k - k) - ranked->ties) / 12;
    const double variance = perBlock * k * (k + 1) / 12;
    trend.z = (trend.l - n * k * (k + 1) * (k + 1) / 4) / std::sqrt(variance);
    trend.p = normalUpper(trend.z);
    return trend;
}

double pageCriticalL(int blocks, int treatments, double alpha)
{
    const double n = blocks;
    const double k = treatments;
    return (normalQuantile(1 - alpha) * k * (k + 1) * std::sqrt(n * (k - 1)) +
            3 * n * k * (k + 1) * (k + 1)) /
           12;
}

double friedmanFromRankSums(std::span<const double> rankSums, int blocks)
{
    const auto k = static_cast<double>(rankSums.size());
    const double squares =
        std::inner_product(rankSums.begin(), rankSums.end(), rankSums.begin(), 0.0);
    return 12 / (blocks * k * (k + 1)) * squares - 3 * blocks * (k + 1);
}

std::optional<FriedmanCritical> friedmanCritical(int treatments, int blocks, double alpha)
{
    assert(treatments >= 2 && blocks >= 2);
    Sums ranks(static_cast<std::size_t>(treatments));
    std::iota(ranks.begin(), ranks.end(), 1);
    const auto weights =
        sumDistribution(std::vector<Sums>(static_cast<std::size_t>(blocks), ranks));
    if (!weights)
        return std::nullopt;
    std::map<long long, double, std::greater<>> bySquares;
    for (const auto& [sums, weight] : *weights)
        bySquares[sumOfSquares(sums)] += weight;
    std::optional<FriedmanCritical> critical;
    double tail = 0;
    const double k = treatments;
    for (const auto& [squares, weight] : bySquares) {
        tail += weight;
        if (tail > alpha + 1e-12)
            break;
        critical = {12 / (blocks * k * (k + 1)) * static_cast<double>(squares) -
                        3 * blocks * (k + 1),
                    tail};
    }
    return critical;
}

Result<int> rankSumCriticalDifference(int blocks, int treatments, double alpha)
{
    const Result<double> q = studentizedRangeQuantile(1 - alpha, treatments, kInfiniteDf);
    if (!q)
        return tl::unexpected(q.error());
    return static_cast<int>(
        std::ceil(*q * std::sqrt(blocks * treatments * (treatments + 1) / 12.0)));
}

double rankSumLeastDifference(int blocks, int treatments, double alpha)
{
    return normalQuantile(1 - alpha / 2) * std::sqrt(blocks * treatments * (treatments + 1) / 6.0);
}

} // namespace plumule::stats
