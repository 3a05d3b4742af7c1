#include "core/stats/model/comparisons.h"

#include "core/stats/probability/holm.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/dunnett.h"
#include "core/stats/probability/studentized_range.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>
#include <numeric>

namespace plumule::stats {

namespace {

using Weights = std::vector<double>;

Weights difference(const Weights& a, const Weights& b)
{
    Weights result(a.size());
    std::transform(a.begin(), a.end(), b.begin(), result.begin(), std::minus<>());
    return result;
}

Done checkLevel(double level)
{
    if (!(level > 0 && level < 1)) {
        return fail(ErrorKind::Invalid, ModelReason::ConfidenceLevel);
    }
    return {};
}

// The Tukey part of a pair; one quantile serves all pairs that share their df.
class TukeyFamily
{
public:
    TukeyFamily(std::size_t means, double level)
        : m_groups(static_cast<int>(means))
        , m_level(level)
    {}

    Done fill(PairComparison& pair)
    {
        const double df = *pair.raw.df;
        const auto p =
            studentizedRangeUpper(std::abs(*pair.raw.t) * std::numbers::sqrt2, m_groups, df);
        if (!p) {
            return tl::unexpected(p.error());
        }
        if (df != m_quantileDf) {
            const auto quantile = studentizedRangeQuantile(m_level, m_groups, df);
            if (!quantile) {
                return tl::unexpected(quantile.error());
            }
            m_quantile = *quantile;
            m_quantileDf = df;
        }
        const double reach = m_quantile / std::numbers::sqrt2 * *pair.raw.se;
        pair.pTukey = *p;
        pair.lowerTukey = *pair.raw.estimate - reach;
        pair.upperTukey = *pair.raw.estimate + reach;
        return {};
    }

private:
    int m_groups;
    double m_level;
    double m_quantileDf = -1;
    double m_quantile = 0;
};

// Correlation of the estimable contrasts, which `rows` holds.
Result<ManyToOne> correlationOf(const Estimator& fit, const std::vector<Weights>& rows)
{
    const std::size_t m = rows.size();
    std::vector<double> matrix(m * m);
    for (std::size_t i = 0; i < m; ++i) {
        for (std::size_t j = 0; j <= i; ++j) {
            matrix[i * m + j] = matrix[j * m + i] = fit.covariance(rows[i], rows[j]);
        }
    }
    std::vector<double> spread(m);
    for (std::size_t i = 0; i < m; ++i) {
        spread[i] = std::sqrt(matrix[i * m + i]);
    }
    for (std::size_t i = 0; i < m; ++i) {
        for (std::size_t j = 0; j < m; ++j) {
            matrix[i * m + j] = i == j ? 1 : matrix[i * m + j] / (spread[i] * spread[j]);
        }
    }
    return ManyToOne::fromCorrelation(matrix, m);
}

// One quantile serves the comparisons that share their df, which follow one another.
Done fillDunnett(std::vector<ControlComparison>& comparisons, const ManyToOne& joint, double level)
{
    double criticalDf = -1;
    double critical = 0;
    for (ControlComparison& one : comparisons) {
        if (!one.raw.t) {
            continue;
        }
        const double df = *one.raw.df;
        if (df != criticalDf) {
            const auto found = joint.quantile(level, df);
            if (!found) {
                return tl::unexpected(found.error());
            }
            critical = *found;
            criticalDf = df;
        }
        const auto p = joint.upper(*one.raw.t, df);
        if (!p) {
            return tl::unexpected(p.error());
        }
        one.pDunnett = *p;
        one.lowerDunnett = *one.raw.estimate - critical * *one.raw.se;
        one.upperDunnett = *one.raw.estimate + critical * *one.raw.se;
    }
    return {};
}

} // namespace

ContrastTest testContrast(const Estimator& fit, std::span<const double> weights, double level)
{
    ContrastTest test;
    test.estimable = fit.isEstimable(weights);
    if (!test.estimable) {
        return test;
    }
    const Estimate estimate = fit.estimate(weights);
    test.estimate = estimate.value;
    test.se = estimate.se;
    test.df = estimate.df;
    const double reach = tQuantile(0.5 + level / 2, estimate.df) * estimate.se;
    test.lower = estimate.value - reach;
    test.upper = estimate.value + reach;
    if (estimate.se > 0) {
        test.t = estimate.value / estimate.se;
        test.p = tTwoSided(*test.t, estimate.df);
    }
    return test;
}

Result<std::optional<double>> equivalenceP(const ContrastTest& test, double margin)
{
    if (!(margin > 0) || !std::isfinite(margin)) {
        return fail(ErrorKind::Invalid, ModelReason::Margin);
    }
    if (!test.t) {
        return std::nullopt;
    }
    const double nearest = (margin - std::abs(*test.estimate)) / *test.se;
    return tUpper(nearest, *test.df);
}

Result<std::vector<PairComparison>> allPairs(const Estimator& fit,
                                             const std::vector<MarginalMean>& means, double level)
{
    if (auto done = checkLevel(level); !done) {
        return tl::unexpected(done.error());
    }
    std::vector<PairComparison> pairs;
    std::vector<std::optional<double>> p;
    TukeyFamily tukey(means.size(), level);
    for (std::size_t b = 0; b < means.size(); ++b) {
        for (std::size_t a = b + 1; a < means.size(); ++a) {
            PairComparison pair;
            pair.a = a;
            pair.b = b;
            pair.raw = testContrast(fit, difference(means[a].weights, means[b].weights), level);
            if (pair.raw.t) {
                if (auto done = tukey.fill(pair); !done) {
                    return tl::unexpected(done.error());
                }
            }
            p.push_back(pair.raw.p);
            pairs.push_back(pair);
        }
    }
    const auto adjusted = holmAdjusted(p);
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        pairs[i].pHolm = adjusted[i];
    }
    return pairs;
}

Result<std::vector<ControlComparison>> againstControl(const Estimator& fit,
                                                      const std::vector<MarginalMean>& means,
                                                      std::size_t control, double level)
{
    assert(control < means.size());
    if (auto done = checkLevel(level); !done) {
        return tl::unexpected(done.error());
    }
    std::vector<ControlComparison> comparisons;
    std::vector<Weights> rows;
    for (std::size_t i = 0; i < means.size(); ++i) {
        if (i == control) {
            continue;
        }
        ControlComparison one;
        one.level = i;
        Weights row = difference(means[i].weights, means[control].weights);
        one.raw = testContrast(fit, row, level);
        if (one.raw.t) {
            rows.push_back(std::move(row));
        }
        comparisons.push_back(one);
    }
    if (rows.empty()) {
        return comparisons;
    }
    const auto joint = correlationOf(fit, rows);
    if (!joint) {
        return tl::unexpected(joint.error());
    }
    if (auto done = fillDunnett(comparisons, *joint, level); !done) {
        return tl::unexpected(done.error());
    }
    return comparisons;
}

Result<ContrastTest> meansContrast(const Estimator& fit, const std::vector<MarginalMean>& means,
                                   std::span<const double> weights, double level)
{
    if (auto done = checkLevel(level); !done) {
        return tl::unexpected(done.error());
    }
    assert(weights.size() == means.size() && !means.empty());
    const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
    double largest = 0;
    for (const double weight : weights) {
        largest = std::max(largest, std::abs(weight));
    }
    if (!(largest > 0) || std::abs(sum) > 1e-9 * largest) {
        return fail(ErrorKind::Invalid, ModelReason::ContrastSum);
    }
    Weights row(means.front().weights.size(), 0.0);
    for (std::size_t i = 0; i < means.size(); ++i) {
        for (std::size_t c = 0; c < row.size(); ++c) {
            row[c] += weights[i] * means[i].weights[c];
        }
    }
    return testContrast(fit, row, level);
}

} // namespace plumule::stats
