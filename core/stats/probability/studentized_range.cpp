#include "core/stats/probability/studentized_range.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/probability/root.h"
#include "core/stats/probability/spread_integral.h"

#include <cmath>
#include <vector>

namespace plumule::stats {

namespace {

constexpr double kFarBelow = -9;
constexpr double kFarAbove = 37;
constexpr int kMostGroups = 1000;

// The range of k standard normals with the spread known: P = k * integral over the largest, z, of
// density(z) * P(one other lies in [z - w, z])^(k-1). Trapezoid rule, the step set by how fast the
// integrand can swing: it is bounded in the plane by exp(k y^2 / 2).
class NormalRange
{
public:
    explicit NormalRange(int groups)
        : m_others(groups - 1)
        , m_step(0.7 / std::sqrt(static_cast<double>(groups)))
    {
        for (double z = kFarBelow; z < kFarAbove; z += m_step) {
            const double below = normalCdf(z);
            m_z.push_back(z);
            m_below.push_back(below);
            m_weight.push_back(groups * m_step * normalDensity(z));
            m_largest.push_back(m_weight.back() * std::pow(below, m_others));
        }
    }

    [[nodiscard]] double cdf(double w) const
    {
        double sum = 0;
        for (std::size_t i = 0; i < m_z.size() && m_z[i] < 9; ++i) {
            sum += m_weight[i] * std::pow(m_below[i] - normalCdf(m_z[i] - w), m_others);
        }
        return sum;
    }

    [[nodiscard]] double upper(double w) const
    {
        double sum = 0;
        for (std::size_t i = 0; i < m_z.size() && m_z[i] < 9 + w / 2; ++i) {
            if (m_z[i] < w / 2 - 9) {
                continue;
            }
            const double outside = std::min(1.0, normalCdf(m_z[i] - w) / m_below[i]);
            sum -= m_largest[i] * std::expm1(m_others * std::log1p(-outside));
        }
        return sum;
    }

private:
    double m_others;
    double m_step;
    std::vector<double> m_z;
    std::vector<double> m_below;
    std::vector<double> m_weight;
    std::vector<double> m_largest;
};

double rangeUpper(const NormalRange& range, double q, double df)
{
    return std::min(1.0,
                    meanOverSpread(df, q * q / 4, [&](double s) { return range.upper(q * s); }));
}

double rangeCdf(const NormalRange& range, double q, double df)
{
    return std::min(1.0, meanOverSpread(df, 0, [&](double s) { return range.cdf(q * s); }));
}

bool goodRange(int groups, double df)
{
    return groups >= 2 && groups <= kMostGroups && df > 0;
}

} // namespace

Result<double> studentizedRangeUpper(double q, int groups, double df)
{
    if (!goodRange(groups, df) || std::isnan(q)) {
        return fail(ErrorKind::Invalid, ProbabilityReason::OutOfRange);
    }
    if (q <= 0 || std::isinf(q)) {
        return q <= 0 ? 1 : 0;
    }
    const NormalRange range(groups);
    const double upper = rangeUpper(range, q, df);
    return upper < 0.5 ? upper : 1 - rangeCdf(range, q, df);
}

Result<double> studentizedRangeQuantile(double p, int groups, double df)
{
    if (!goodRange(groups, df) || !(p > 0 && p < 1)) {
        return fail(ErrorKind::Invalid, ProbabilityReason::OutOfRange);
    }
    const NormalRange range(groups);
    // On log scales both tails run nearly straight.
    const auto excess = [&](double logQ) {
        const double q = std::exp(logQ);
        return p < 0.5 ? std::log(rangeCdf(range, q, df) / p)
                       : std::log((1 - p) / rangeUpper(range, q, df));
    };
    const Result<double> logQ = risingRoot(excess, 1.0, 0.5);
    if (!logQ) {
        return tl::unexpected(logQ.error());
    }
    return std::exp(*logQ);
}

} // namespace plumule::stats
