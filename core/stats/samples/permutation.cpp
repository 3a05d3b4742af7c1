#include "core/stats/samples/permutation.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace plumule::stats {

namespace {

constexpr double kTie = 1e-9;

Done checkValues(std::span<const double> values)
{
    if (!std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); }))
        return fail(ErrorKind::Invalid, "permutation.values");
    return {};
}

Done checkNotConstant(std::span<const double> values, double constant)
{
    if (std::all_of(values.begin(), values.end(),
                    [constant](double value) { return value == constant; }))
        return fail(ErrorKind::Invalid, "permutation.constant");
    return {};
}

Done checkCount(double permutations)
{
    if (!(permutations <= kMostPermutations))
        return fail(ErrorKind::Invalid, "permutation.many", std::to_string(permutations));
    return {};
}

void centre(std::vector<double>& values)
{
    const double mean =
        std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
    for (double& value : values)
        value -= mean;
}

double share(std::uint64_t count, std::uint64_t all)
{
    return static_cast<double>(count) / static_cast<double>(all);
}

// Weighs a permuted difference against the observed one.
struct DifferenceCounter
{
    PermutedDifference result;
    double tie = 0;

    void count(double difference)
    {
        ++result.permutations;
        result.countTwoSided += std::abs(difference) >= std::abs(result.observed) - tie ? 1 : 0;
        result.countGreater += difference >= result.observed - tie ? 1 : 0;
        result.countLess += difference <= result.observed + tie ? 1 : 0;
    }
};

// All ways to choose; sums of what is chosen go to `leaf`.
template <class Leaf>
void chooseSums(std::span<const double> values, std::size_t choose, double sum, const Leaf& leaf)
{
    if (choose == 0) {
        leaf(sum);
        return;
    }
    for (std::size_t i = 0; i + choose <= values.size(); ++i)
        chooseSums(values.subspan(i + 1), choose - 1, sum + values[i], leaf);
}

template <class Leaf>
void signSums(std::span<const double> values, double sum, const Leaf& leaf)
{
    if (values.empty()) {
        leaf(sum);
        return;
    }
    signSums(values.subspan(1), sum + values.front(), leaf);
    signSums(values.subspan(1), sum - values.front(), leaf);
}

// Deals the values out to groups of given sizes in every way.
struct GroupDealer
{
    std::vector<double> values;
    std::vector<std::size_t> room;
    std::vector<double> sizes;
    std::vector<double> sums;
    double threshold = 0;
    PermutedF result;

    [[nodiscard]] double between() const
    {
        double squares = 0;
        for (std::size_t g = 0; g < sums.size(); ++g)
            squares += sums[g] * sums[g] / sizes[g];
        return squares;
    }

    void deal(std::size_t next)
    {
        if (next == values.size()) {
            ++result.permutations;
            result.count += between() >= threshold ? 1 : 0;
            return;
        }
        for (std::size_t g = 0; g < room.size(); ++g) {
            if (room[g] == 0)
                continue;
            const double before = sums[g];
            --room[g];
            sums[g] += values[next];
            deal(next + 1);
            sums[g] = before;
            ++room[g];
        }
    }
};

// Reorders each block in every way, the first left as it is: reordering it too only renames the
// treatments.
struct BlockDealer
{
    std::vector<std::vector<double>> blocks;
    std::vector<std::vector<std::size_t>> orders;
    double threshold = 0;
    std::uint64_t count = 0;
    std::uint64_t permutations = 0;

    void deal(std::size_t block, const std::vector<double>& sums)
    {
        if (block == blocks.size()) {
            ++permutations;
            count += std::inner_product(sums.begin(), sums.end(), sums.begin(), 0.0) >= threshold;
            return;
        }
        std::vector<double> next(sums.size());
        for (const std::vector<std::size_t>& order : orders) {
            for (std::size_t i = 0; i < sums.size(); ++i)
                next[i] = sums[i] + blocks[block][order[i]];
            deal(block + 1, next);
        }
    }
};

double fRatio(double between, double within, double df1, double df2)
{
    if (within <= 1e-14 * between)
        return std::numeric_limits<double>::infinity();
    return between / df1 / (within / df2);
}

double sumOfSquaresOf(const std::vector<double>& values)
{
    return std::inner_product(values.begin(), values.end(), values.begin(), 0.0);
}

Result<GroupDealer> dealerFor(std::span<const std::vector<double>> groups)
{
    if (groups.size() < 2)
        return fail(ErrorKind::TooFew, "permutation.groups", std::to_string(groups.size()));
    GroupDealer dealer;
    double logCount = 0;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        if (groups[g].empty())
            return fail(ErrorKind::TooFew, "permutation.group", std::to_string(g));
        dealer.values.insert(dealer.values.end(), groups[g].begin(), groups[g].end());
        dealer.room.push_back(groups[g].size());
        dealer.sizes.push_back(static_cast<double>(groups[g].size()));
        logCount -= std::lgamma(dealer.sizes.back() + 1);
    }
    if (const Done checked = checkValues(dealer.values); !checked)
        return tl::unexpected(checked.error());
    if (const Done checked = checkNotConstant(dealer.values, dealer.values.front()); !checked)
        return tl::unexpected(checked.error());
    if (dealer.values.size() <= groups.size())
        return fail(ErrorKind::TooFew, "permutation.values", std::to_string(dealer.values.size()));
    logCount += std::lgamma(static_cast<double>(dealer.values.size()) + 1);
    if (const Done checked = checkCount(std::exp(logCount)); !checked)
        return tl::unexpected(checked.error());
    centre(dealer.values);
    return dealer;
}

Result<BlockDealer> dealerWithin(std::span<const std::vector<double>> blocks)
{
    if (blocks.size() < 2)
        return fail(ErrorKind::TooFew, "permutation.blocks", std::to_string(blocks.size()));
    const std::size_t k = blocks.front().size();
    if (k < 2)
        return fail(ErrorKind::TooFew, "permutation.treatments", std::to_string(k));
    const double orders = std::tgamma(static_cast<double>(k) + 1);
    if (const Done checked = checkCount(std::pow(orders, static_cast<double>(blocks.size() - 1)));
        !checked)
        return tl::unexpected(checked.error());
    BlockDealer dealer;
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        if (blocks[b].size() != k)
            return fail(ErrorKind::Invalid, "permutation.block", std::to_string(b));
        if (const Done checked = checkValues(blocks[b]); !checked)
            return tl::unexpected(checked.error());
        dealer.blocks.push_back(blocks[b]);
        centre(dealer.blocks.back());
    }
    std::vector<std::size_t> order(k);
    std::iota(order.begin(), order.end(), std::size_t{0});
    do
        dealer.orders.push_back(order);
    while (std::next_permutation(order.begin(), order.end()));
    return dealer;
}

} // namespace

double PermutedDifference::pTwoSided() const
{
    return share(countTwoSided, permutations);
}

double PermutedDifference::pGreater() const
{
    return share(countGreater, permutations);
}

double PermutedDifference::pLess() const
{
    return share(countLess, permutations);
}

double PermutedF::p() const
{
    return share(count, permutations);
}

Result<PermutedDifference> permuteTwoGroups(std::span<const double> y, std::span<const double> x)
{
    if (y.empty() || x.empty() || y.size() + x.size() < 3)
        return fail(ErrorKind::TooFew, "permutation.group");
    std::vector<double> all(y.begin(), y.end());
    all.insert(all.end(), x.begin(), x.end());
    if (const Done checked = checkValues(all); !checked)
        return tl::unexpected(checked.error());
    if (const Done checked = checkNotConstant(all, all.front()); !checked)
        return tl::unexpected(checked.error());
    const auto ny = static_cast<double>(y.size());
    const auto nx = static_cast<double>(x.size());
    const double splits =
        std::exp(std::lgamma(ny + nx + 1) - std::lgamma(ny + 1) - std::lgamma(nx + 1));
    if (const Done checked = checkCount(splits); !checked)
        return tl::unexpected(checked.error());
    centre(all);
    // With the mean of all at 0 the difference of means is the sum of either group, scaled.
    const double scale = 1 / ny + 1 / nx;
    const auto end = all.begin() + static_cast<std::ptrdiff_t>(y.size());
    const auto [low, high] = std::minmax_element(all.begin(), all.end());
    DifferenceCounter counter;
    counter.result.observed = std::accumulate(all.begin(), end, 0.0) * scale;
    counter.tie = kTie * (*high - *low);
    const bool chooseY = y.size() <= x.size();
    chooseSums(all, chooseY ? y.size() : x.size(), 0,
               [&](double sum) { counter.count((chooseY ? sum : -sum) * scale); });
    return counter.result;
}

Result<PermutedDifference> flipSigns(std::span<const double> differences)
{
    if (differences.empty())
        return fail(ErrorKind::TooFew, "permutation.group");
    if (const Done checked = checkValues(differences); !checked)
        return tl::unexpected(checked.error());
    if (const Done checked = checkNotConstant(differences, 0); !checked)
        return tl::unexpected(checked.error());
    const auto n = static_cast<double>(differences.size());
    if (const Done checked = checkCount(std::exp2(n)); !checked)
        return tl::unexpected(checked.error());
    double widest = 0;
    for (const double difference : differences)
        widest = std::max(widest, std::abs(difference));
    DifferenceCounter counter;
    counter.result.observed = std::accumulate(differences.begin(), differences.end(), 0.0) / n;
    counter.tie = kTie * widest;
    signSums(differences, 0, [&](double sum) { counter.count(sum / n); });
    return counter.result;
}

Result<PermutedF> permuteGroups(std::span<const std::vector<double>> groups)
{
    Result<GroupDealer> dealer = dealerFor(groups);
    if (!dealer)
        return tl::unexpected(dealer.error());
    for (std::size_t g = 0, next = 0; g < groups.size(); ++g) {
        const auto begin = dealer->values.begin() + static_cast<std::ptrdiff_t>(next);
        next += groups[g].size();
        dealer->sums.push_back(
            std::accumulate(begin, begin + static_cast<std::ptrdiff_t>(groups[g].size()), 0.0));
    }
    const double total = sumOfSquaresOf(dealer->values);
    const double between = dealer->between();
    dealer->threshold = between - kTie * total;
    const auto k = static_cast<double>(groups.size());
    dealer->result.f =
        fRatio(between, total - between, k - 1, static_cast<double>(dealer->values.size()) - k);
    dealer->sums.assign(groups.size(), 0);
    dealer->deal(0);
    return dealer->result;
}

Result<PermutedF> permuteWithinBlocks(std::span<const std::vector<double>> blocks)
{
    Result<BlockDealer> dealer = dealerWithin(blocks);
    if (!dealer)
        return tl::unexpected(dealer.error());
    std::vector<double> sums(blocks.front().size(), 0);
    double total = 0;
    for (const std::vector<double>& block : dealer->blocks) {
        total += sumOfSquaresOf(block);
        std::transform(block.begin(), block.end(), sums.begin(), sums.begin(), std::plus<>());
    }
    if (total <= 0)
        return fail(ErrorKind::Invalid, "permutation.constant");
    const auto b = static_cast<double>(blocks.size());
    const auto k = static_cast<double>(sums.size());
    const double between = sumOfSquaresOf(sums) / b;
    dealer->threshold = (between - kTie * total) * b;
    dealer->deal(1, dealer->blocks.front());
    PermutedF result;
    result.f = fRatio(between, total - between, k - 1, (k - 1) * (b - 1));
    result.permutations = dealer->permutations * dealer->orders.size();
    result.count = dealer->count * dealer->orders.size();
    return result;
}

} // namespace plumule::stats
