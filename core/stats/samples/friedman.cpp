#include "core/stats/samples/friedman.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/plain_checks.h"
#include "core/stats/probability/studentized_range.h"
#include "core/stats/samples/ranks.h"

#include <algorithm>
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
    if (ranks.size() > 8) {
        return orders;
    }
    std::sort(ranks.begin(), ranks.end());
    do {
        orders.push_back(ranks);
    } while (std::next_permutation(ranks.begin(), ranks.end()));
    return orders;
}

std::optional<SumWeights> sumDistribution(std::span<const Sums> blocks)
{
    SumWeights weights{{Sums(blocks.front().size(), 0), 1.0}};
    double steps = 0;
    for (const Sums& block : blocks) {
        const std::vector<Sums> orders = ordersOf(block);
        steps += static_cast<double>(weights.size() * orders.size());
        if (orders.empty() || steps > kMostSteps) {
            return std::nullopt;
        }
        SumWeights next;
        for (const auto& [sums, weight] : weights) {
            for (const Sums& order : orders) {
                Sums sum = sums;
                for (std::size_t i = 0; i < sum.size(); ++i) {
                    sum[i] += order[i];
                }
                std::sort(sum.begin(), sum.end());
                next[std::move(sum)] += weight / static_cast<double>(orders.size());
            }
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
    double ties = 0;
    double blocks = 0;
    double treatments = 0;
};

Result<RankedBlocks> rankBlocks(std::span<const std::vector<double>> blocks)
{
    if (blocks.size() < 2) {
        return fail(ErrorKind::TooFew, GroupsReason::TooFewBlocks);
    }
    const std::size_t k = blocks.front().size();
    if (k < 2) {
        return fail(ErrorKind::TooFew, GroupsReason::TooFewTreatments);
    }
    RankedBlocks ranked;
    ranked.sums.assign(k, 0);
    ranked.blocks = static_cast<double>(blocks.size());
    ranked.treatments = static_cast<double>(k);
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        if (blocks[b].size() != k) {
            return fail(ErrorKind::Invalid, GroupsReason::BlockSize, b + 1);
        }
        if (!allFinite(blocks[b])) {
            return fail(ErrorKind::Invalid, GroupsReason::NotFinite);
        }
        ranked.ranks.push_back(midranks(blocks[b]));
        ranked.ties += tieSum(blocks[b]);
        for (std::size_t i = 0; i < k; ++i) {
            ranked.sums[i] += ranked.ranks.back()[i];
        }
    }
    if (ranked.ties == ranked.blocks * (std::pow(ranked.treatments, 3) - ranked.treatments)) {
        return fail(ErrorKind::Invalid, GroupsReason::AllAlike);
    }
    return ranked;
}

std::optional<double> exactTail(const RankedBlocks& ranked)
{
    std::vector<Sums> blocks;
    Sums observed(ranked.sums.size(), 0);
    for (const std::vector<double>& ranks : ranked.ranks) {
        Sums whole;
        for (const double rank : ranks) {
            whole.push_back(static_cast<int>(std::lround(2 * rank)));
        }
        std::transform(whole.begin(), whole.end(), observed.begin(), observed.begin(),
                       std::plus<>());
        blocks.push_back(std::move(whole));
    }
    const auto weights = sumDistribution(blocks);
    if (!weights) {
        return std::nullopt;
    }
    double tail = 0;
    for (const auto& [sums, weight] : *weights) {
        if (sumOfSquares(sums) >= sumOfSquares(observed)) {
            tail += weight;
        }
    }
    return std::min(tail, 1.0);
}

} // namespace

Result<Friedman> friedman(std::span<const std::vector<double>> blocks)
{
    const Result<RankedBlocks> ranked = rankBlocks(blocks);
    if (!ranked) {
        return tl::unexpected(ranked.error());
    }
    const double n = ranked->blocks;
    const double k = ranked->treatments;
    Friedman result;
    result.rankSums = ranked->sums;
    double spread = 0;
    for (const double sum : ranked->sums) {
        spread += (sum - n * (k + 1) / 2) * (sum - n * (k + 1) / 2);
    }
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
    if (!ranked) {
        return tl::unexpected(ranked.error());
    }
    const double sd = std::sqrt(ranked->blocks * ranked->treatments * (ranked->treatments + 1) / 6);
    const auto groups = static_cast<int>(ranked->treatments);
    std::vector<NemenyiPair> pairs;
    for (std::size_t a = 0; a < ranked->sums.size(); ++a) {
        for (std::size_t b = a + 1; b < ranked->sums.size(); ++b) {
            NemenyiPair pair{a, b};
            pair.rankSumDifference = ranked->sums[b] - ranked->sums[a];
            pair.z = pair.rankSumDifference / sd;
            const Result<double> p =
                studentizedRangeUpper(std::abs(pair.z) * std::sqrt(2.0), groups, kInfiniteDf);
            if (!p) {
                return tl::unexpected(p.error());
            }
            pair.p = *p;
            pairs.push_back(pair);
        }
    }
    return pairs;
}

Result<int> rankSumCriticalDifference(int blocks, int treatments, double alpha)
{
    const Result<double> q = studentizedRangeQuantile(1 - alpha, treatments, kInfiniteDf);
    if (!q) {
        return tl::unexpected(q.error());
    }
    return static_cast<int>(
        std::ceil(*q * std::sqrt(blocks * treatments * (treatments + 1) / 12.0)));
}

} // namespace plumule::stats
