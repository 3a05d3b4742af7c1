#include "core/stats/verdict/own_variance.h"

#include <set>

namespace plumule::stats {
namespace {

struct Moments
{
    double n = 0;
    double mean = 0;
    double ss = 0;

    void add(double value)
    {
        ++n;
        const double off = value - mean;
        mean += off / n;
        ss += off * (value - mean);
    }
    [[nodiscard]] double variance() const { return ss / (n - 1); }
};

// `spent` degrees of freedom went into taking columns off: in a square of n rows the variance of
// the differences is then (n - 2)/(n - 1) of what it was.
std::optional<OwnVariance> fromBlocks(const std::map<std::size_t, Moments>& ofA,
                                      const std::map<std::size_t, Moments>& ofB, double spent)
{
    Moments differences;
    double perTray = 0; // what a block's difference varies by, in units of a tray's variance
    for (const auto& [block, inA] : ofA) {
        if (const auto inB = ofB.find(block); inB != ofB.end()) {
            differences.add(inA.mean - inB->second.mean);
            perTray += 1 / inA.n + 1 / inB->second.n;
        }
    }
    const double df = differences.n - 1 - spent;
    if (df < 1) {
        return std::nullopt;
    }
    return OwnVariance{differences.ss / df / (perTray / differences.n), df};
}

std::optional<OwnVariance> fromMedia(const Moments& a, const Moments& b)
{
    if (a.n < 2 || b.n < 2) {
        return std::nullopt;
    }
    const double u = a.variance() / a.n;
    const double v = b.variance() / b.n;
    if (!(u + v > 0)) {
        return OwnVariance{0, a.n + b.n - 2};
    }
    const double df = (u + v) * (u + v) / (u * u / (a.n - 1) + v * v / (b.n - 1));
    return OwnVariance{(u + v) / (1 / a.n + 1 / b.n), df};
}

} // namespace

std::optional<OwnVariance> ownVarianceOf(const MediaDesign& trays, std::size_t a, std::size_t b)
{
    std::map<std::size_t, Moments> blocksOfA;
    std::map<std::size_t, Moments> blocksOfB;
    std::set<std::size_t> blocks;
    for (std::size_t row = 0; row < trays.rows().size(); ++row) {
        const DesignRow& tray = trays.rows()[row];
        blocks.insert(tray.block);
        if (tray.medium == a) {
            blocksOfA[tray.block].add(trays.withoutVarietyAndColumn(row));
        } else if (tray.medium == b) {
            blocksOfB[tray.block].add(trays.withoutVarietyAndColumn(row));
        }
    }
    if (blocks.size() > 1) {
        return fromBlocks(blocksOfA, blocksOfB, trays.countOfColumns() > 1 ? 1 : 0);
    }
    if (blocksOfA.empty() || blocksOfB.empty()) {
        return std::nullopt;
    }
    return fromMedia(blocksOfA.begin()->second, blocksOfB.begin()->second);
}

std::optional<OwnVariance> pooled(const std::vector<OwnVariance>& variances)
{
    OwnVariance sum;
    for (const OwnVariance& one : variances) {
        sum.variance += one.df * one.variance;
        sum.df += one.df;
    }
    if (!(sum.df > 0)) {
        return std::nullopt;
    }
    return OwnVariance{sum.variance / sum.df, sum.df};
}

} // namespace plumule::stats
