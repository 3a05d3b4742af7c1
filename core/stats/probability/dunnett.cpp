#include "core/stats/probability/dunnett.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/root.h"
#include "core/stats/probability/spread_integral.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {

namespace {

constexpr double kSame = 1 - 1e-10;
constexpr double kFarthest = 9;
constexpr std::size_t kTerms = 64;

// The work grows steeply with the comparisons, so many of them are given fewer digits.
double digitsWorth(std::size_t size)
{
    if (size <= 5) {
        return 100;
    }
    return size == 6 ? 1e-5 : size == 7 ? 1e-6 : 1e-8;
}

// A matrix with a clearly negative pivot is no correlation matrix.
bool isPositive(Correlation work)
{
    const std::size_t n = work.size;
    for (std::size_t k = 0; k < n; ++k) {
        const double pivot = work.at(k, k);
        if (pivot < -1e-9) {
            return false;
        }
        for (std::size_t i = k + 1; i < n && pivot > 1e-10; ++i) {
            for (std::size_t j = k + 1; j < n; ++j) {
                work.values[i * n + j] -= work.at(i, k) * work.at(k, j) / pivot;
            }
        }
    }
    return true;
}

bool isCorrelation(const Correlation& matrix)
{
    if (matrix.size == 0 || matrix.values.size() != matrix.size * matrix.size) {
        return false;
    }
    for (std::size_t i = 0; i < matrix.size; ++i) {
        if (!(std::abs(matrix.at(i, i) - 1) < 1e-9)) {
            return false;
        }
        for (std::size_t j = 0; j < i; ++j) {
            if (!(std::abs(matrix.at(i, j)) <= 1 + 1e-9) ||
                !(std::abs(matrix.at(i, j) - matrix.at(j, i)) < 1e-9)) {
                return false;
            }
        }
    }
    return isPositive(matrix);
}

Correlation without(const Correlation& whole, const std::vector<std::size_t>& dropped)
{
    Correlation rest;
    rest.size = whole.size - dropped.size();
    const auto kept = [&](std::size_t i) {
        return std::find(dropped.begin(), dropped.end(), i) == dropped.end();
    };
    for (std::size_t i = 0; i < whole.size; ++i) {
        for (std::size_t j = 0; j < whole.size; ++j) {
            if (kept(i) && kept(j)) {
                rest.values.push_back(whole.at(i, j));
            }
        }
    }
    return rest;
}

// A comparison that repeats an earlier one, or is its negative, adds nothing to the largest |t|.
std::vector<std::size_t> repeatedIn(const Correlation& matrix)
{
    std::vector<std::size_t> repeated;
    for (std::size_t i = 0; i < matrix.size; ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            if (std::abs(matrix.at(i, j)) > kSame) {
                repeated.push_back(i);
                break;
            }
        }
    }
    return repeated;
}

} // namespace

Result<ManyToOne> ManyToOne::fromCorrelation(std::span<const double> rows, std::size_t size)
{
    const Correlation whole{size, {rows.begin(), rows.end()}};
    if (!isCorrelation(whole)) {
        return fail(ErrorKind::Invalid, ProbabilityReason::Correlation);
    }
    const Correlation distinct = without(whole, repeatedIn(whole));
    ManyToOne made;
    made.m_loadings = distinct.size == 1 ? std::vector<double>{0.0} : nearestLoadings(distinct);
    if (distinct.size > 2 && !isProduct(distinct, made.m_loadings)) {
        const auto beyond = [&](double t) {
            return beyondProduct(distinct, made.m_loadings, made.boxOf(t),
                                 digitsWorth(distinct.size));
        };
        made.m_beyond.emplace(beyond, 0.0, kFarthest, kTerms);
    }
    return made;
}

Box ManyToOne::boxOf(double t) const
{
    const std::size_t size = m_loadings.size();
    return {std::vector<double>(size, -t), std::vector<double>(size, t)};
}

double ManyToOne::outside(double t, double df) const
{
    const double decay = t > 0 ? t * t / 2 : 0;
    const double product = meanOverSpread(
        df, decay, [&](double s) { return outsideOfProduct(m_loadings, boxOf(t * s)); });
    if (!m_beyond) {
        return std::min(1.0, product);
    }
    const double beyond = meanOverSpread(df, decay, [&](double s) { return (*m_beyond)(t * s); });
    return std::clamp(product - beyond, 0.0, 1.0);
}

Result<double> ManyToOne::upper(double t, double df) const
{
    if (!(df > 0) || std::isnan(t)) {
        return fail(ErrorKind::Invalid, ProbabilityReason::OutOfRange);
    }
    const double size = std::abs(t);
    if (std::isinf(size)) {
        return 0;
    }
    return m_loadings.size() == 1 ? tTwoSided(size, df) : outside(size, df);
}

Result<double> ManyToOne::quantile(double p, double df) const
{
    if (!(df > 0) || !(p > 0 && p < 1)) {
        return fail(ErrorKind::Invalid, ProbabilityReason::OutOfRange);
    }
    // Bonferroni lies at or above the answer, the single comparison below it.
    const double tail = (1 - p) / 2;
    const double single = -tQuantile(tail, df);
    if (m_loadings.size() == 1) {
        return single;
    }
    const double most = -tQuantile(tail / static_cast<double>(m_loadings.size()), df);
    const double width = std::max(1e-6, (most - single) / 2);
    return risingRoot([&](double t) { return std::log((1 - p) / outside(t, df)); }, single + width,
                      width / 2);
}

} // namespace plumule::stats
