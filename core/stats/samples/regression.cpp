#include "core/stats/samples/regression.h"

#include "core/stats/probability/distributions.h"
#include "core/stats/samples/ranks.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

namespace plumule::stats {

namespace {

double meanOf(std::span<const double> values)
{
    const auto n = static_cast<double>(values.size());
    const double rough = std::accumulate(values.begin(), values.end(), 0.0) / n;
    // Once more about the rough mean, which wins back the digits the sum lost.
    double rest = 0;
    for (const double value : values)
        rest += value - rough;
    return rough + rest / n;
}

double medianOf(std::vector<double> values)
{
    const std::size_t half = values.size() / 2;
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(half);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1)
        return *middle;
    return (*std::max_element(values.begin(), middle) + *middle) / 2;
}

// Sums of squares and products about the means.
struct Moments
{
    double meanX = 0;
    double meanY = 0;
    double sxx = 0;
    double sxy = 0;
    double syy = 0;
};

Moments momentsOf(std::span<const double> x, std::span<const double> y)
{
    Moments m;
    m.meanX = meanOf(x);
    m.meanY = meanOf(y);
    for (std::size_t i = 0; i < x.size(); ++i) {
        m.sxx += (x[i] - m.meanX) * (x[i] - m.meanX);
        m.sxy += (x[i] - m.meanX) * (y[i] - m.meanY);
        m.syy += (y[i] - m.meanY) * (y[i] - m.meanY);
    }
    return m;
}

bool isConstant(std::span<const double> values)
{
    return std::all_of(values.begin(), values.end(),
                       [&values](double value) { return value == values.front(); });
}

Done checkPairs(std::span<const double> x, std::span<const double> y, std::size_t fewest)
{
    const auto finite = [](double value) { return std::isfinite(value); };
    if (x.size() != y.size())
        return fail(ErrorKind::Invalid, "line.lengths");
    if (!std::all_of(x.begin(), x.end(), finite) || !std::all_of(y.begin(), y.end(), finite))
        return fail(ErrorKind::Invalid, "line.values");
    if (x.size() < fewest)
        return fail(ErrorKind::TooFew, "line.points", std::to_string(x.size()));
    return {};
}

// Variance of Kendall's statistic with ties in x and in y (Kendall 1970, Rank Correlation Methods).
double kendallVariance(std::span<const double> x, std::span<const double> y)
{
    struct TieTerms
    {
        double one = 0;   // Σ t(t−1)
        double two = 0;   // Σ t(t−1)(t−2)
        double three = 0; // Σ t(t−1)(2t+5)
    };
    const auto terms = [](std::span<const double> values) {
        std::vector<double> sorted(values.begin(), values.end());
        std::sort(sorted.begin(), sorted.end());
        TieTerms sums;
        for (auto first = sorted.begin(); first != sorted.end();) {
            const auto last = std::upper_bound(first, sorted.end(), *first);
            const auto t = static_cast<double>(last - first);
            sums.one += t * (t - 1);
            sums.two += t * (t - 1) * (t - 2);
            sums.three += t * (t - 1) * (2 * t + 5);
            first = last;
        }
        return sums;
    };
    const auto n = static_cast<double>(x.size());
    const TieTerms tx = terms(x);
    const TieTerms ty = terms(y);
    double variance = (n * (n - 1) * (2 * n + 5) - tx.three - ty.three) / 18;
    if (n > 2)
        variance += tx.two * ty.two / (9 * n * (n - 1) * (n - 2));
    return variance + tx.one * ty.one / (2 * n * (n - 1));
}

} // namespace

Result<LineFit> fitLine(std::span<const double> x, std::span<const double> y, double level)
{
    if (const Done checked = checkPairs(x, y, 3); !checked)
        return tl::unexpected(checked.error());
    if (isConstant(x))
        return fail(ErrorKind::Invalid, "line.constant");
    const Moments m = momentsOf(x, y);
    const auto n = static_cast<double>(x.size());
    LineFit line;
    line.n = x.size();
    line.df = static_cast<int>(x.size()) - 2;
    line.meanX = m.meanX;
    line.sxx = m.sxx;
    line.slope = m.sxy / m.sxx;
    line.intercept = m.meanY - line.slope * m.meanX;
    double explained = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double fitted = line.slope * (x[i] - m.meanX);
        const double residual = y[i] - m.meanY - fitted;
        line.rss += residual * residual;
        explained += fitted * fitted;
    }
    const double s2 = line.rss / line.df;
    line.residualSd = std::sqrt(s2);
    line.slopeSe = std::sqrt(s2 / m.sxx);
    line.interceptSe = std::sqrt(s2 * (1 / n + m.meanX * m.meanX / m.sxx));
    line.slopeT = line.slope / line.slopeSe;
    line.slopeP = tTwoSided(line.slopeT, line.df);
    line.rSquared = m.syy > 0 ? explained / (explained + line.rss) : 0;
    line.f = explained / s2;
    const double t = tQuantile(0.5 + level / 2, line.df);
    line.slopeLower = line.slope - t * line.slopeSe;
    line.slopeUpper = line.slope + t * line.slopeSe;
    line.interceptLower = line.intercept - t * line.interceptSe;
    line.interceptUpper = line.intercept + t * line.interceptSe;
    return line;
}

LinePoint lineAt(const LineFit& line, double x, double level)
{
    LinePoint point;
    point.x = x;
    point.fit = line.intercept + line.slope * x;
    const double s2 = line.residualSd * line.residualSd;
    const double variance =
        s2 * (1 / static_cast<double>(line.n) + (x - line.meanX) * (x - line.meanX) / line.sxx);
    point.se = std::sqrt(variance);
    const double t = tQuantile(0.5 + level / 2, line.df);
    point.lower = point.fit - t * point.se;
    point.upper = point.fit + t * point.se;
    point.readingLower = point.fit - t * std::sqrt(variance + s2);
    point.readingUpper = point.fit + t * std::sqrt(variance + s2);
    return point;
}

Result<TheilSen> theilSen(std::span<const double> x, std::span<const double> y, double level)
{
    if (const Done checked = checkPairs(x, y, 2); !checked)
        return tl::unexpected(checked.error());
    if (isConstant(x))
        return fail(ErrorKind::Invalid, "line.constant");
    std::vector<double> slopes;
    for (std::size_t i = 0; i < x.size(); ++i)
        for (std::size_t j = i + 1; j < x.size(); ++j)
            if (x[i] != x[j])
                slopes.push_back((y[j] - y[i]) / (x[j] - x[i]));
    std::sort(slopes.begin(), slopes.end());
    TheilSen line;
    line.slopes = slopes.size();
    line.slope = medianOf(slopes);
    std::vector<double> residuals(x.size());
    for (std::size_t i = 0; i < x.size(); ++i)
        residuals[i] = y[i] - line.slope * x[i];
    line.intercept = medianOf(std::move(residuals));
    const double count = static_cast<double>(slopes.size());
    const double reach =
        normalQuantile(0.5 + level / 2) * std::sqrt(std::max(0.0, kendallVariance(x, y)));
    const double last = count - 1;
    const double low = std::clamp(std::floor((count - reach) / 2) - 1, 0.0, last);
    const double high = std::clamp(std::ceil((count + reach) / 2), 0.0, last);
    line.lower = slopes[static_cast<std::size_t>(low)];
    line.upper = slopes[static_cast<std::size_t>(high)];
    return line;
}

Result<Correlations> correlations(std::span<const double> x, std::span<const double> y)
{
    if (const Done checked = checkPairs(x, y, 2); !checked)
        return tl::unexpected(checked.error());
    if (isConstant(x) || isConstant(y))
        return fail(ErrorKind::Invalid, "correlation.constant");
    const auto r = [](std::span<const double> a, std::span<const double> b) {
        const Moments m = momentsOf(a, b);
        return std::clamp(m.sxy / std::sqrt(m.sxx) / std::sqrt(m.syy), -1.0, 1.0);
    };
    Correlations result;
    result.pearson = r(x, y);
    const auto df = static_cast<double>(x.size()) - 2;
    if (df > 0) {
        const double left = 1 - result.pearson * result.pearson;
        result.pearsonP = left > 0 ? tTwoSided(result.pearson * std::sqrt(df / left), df) : 0;
    }
    result.spearman = r(midranks(x), midranks(y));
    double concordant = 0;
    double pairsX = 0;
    double pairsY = 0;
    for (std::size_t i = 0; i < x.size(); ++i)
        for (std::size_t j = i + 1; j < x.size(); ++j) {
            const int dx = (x[j] > x[i]) - (x[j] < x[i]);
            const int dy = (y[j] > y[i]) - (y[j] < y[i]);
            concordant += dx * dy;
            pairsX += dx * dx;
            pairsY += dy * dy;
        }
    result.kendallTauB = concordant / std::sqrt(pairsX) / std::sqrt(pairsY);
    return result;
}

} // namespace plumule::stats
