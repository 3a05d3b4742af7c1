#include "core/stats/samples/ranks.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/plain_checks.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace plumule::stats {

namespace {

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
        while (last + 1 < order.size() && values[order[last + 1]] == values[order[first]]) {
            ++last;
        }
        visit(first, last);
        first = last + 1;
    }
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
    if (groups.size() < 2) {
        return fail(ErrorKind::TooFew, GroupsReason::TooFewGroups);
    }
    std::vector<double> all;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        if (groups[g].empty()) {
            return fail(ErrorKind::TooFew, GroupsReason::EmptyGroup, g + 1);
        }
        all.insert(all.end(), groups[g].begin(), groups[g].end());
    }
    if (!allFinite(all)) {
        return fail(ErrorKind::Invalid, GroupsReason::NotFinite);
    }
    if (allAlike(all)) {
        return fail(ErrorKind::Invalid, GroupsReason::AllAlike);
    }
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

} // namespace

std::vector<double> midranks(std::span<const double> values)
{
    const std::vector<std::size_t> order = orderOf(values);
    std::vector<double> ranks(values.size());
    forEachTie(values, order, [&](std::size_t first, std::size_t last) {
        for (std::size_t i = first; i <= last; ++i) {
            ranks[order[i]] = static_cast<double>(first + last) / 2 + 1;
        }
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
    if (!ranked) {
        return tl::unexpected(ranked.error());
    }
    const double n = ranked->n;
    KruskalWallis result;
    double between = 0;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        const auto size = static_cast<double>(ranked->sizes[g]);
        const double meanRank = ranked->sums[g] / size;
        between += size * (meanRank - (n + 1) / 2) * (meanRank - (n + 1) / 2);
    }
    result.h = 12 / (n * (n + 1)) * between / (1 - ranked->ties / (n * n * n - n));
    result.df = static_cast<int>(groups.size()) - 1;
    result.p = chiSquareUpper(result.h, result.df);
    return result;
}

} // namespace plumule::stats
