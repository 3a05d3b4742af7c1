#include "core/stats/probability/distributions.h"

#include "core/stats/probability/spread_integral.h"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/non_central_chi_squared.hpp>
#include <boost/math/distributions/non_central_f.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numbers>

namespace plumule::stats {

namespace {

namespace policies = boost::math::policies;

using Quiet = policies::policy<policies::domain_error<policies::ignore_error>,
                               policies::pole_error<policies::ignore_error>,
                               policies::overflow_error<policies::ignore_error>,
                               policies::evaluation_error<policies::ignore_error>>;
using Normal = boost::math::normal_distribution<double, Quiet>;
using StudentT = boost::math::students_t_distribution<double, Quiet>;
using FisherF = boost::math::fisher_f_distribution<double, Quiet>;
using ChiSquare = boost::math::chi_squared_distribution<double, Quiet>;
using NoncentralF = boost::math::non_central_f_distribution<double, Quiet>;
using NoncentralChiSquare = boost::math::non_central_chi_squared_distribution<double, Quiet>;

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kOneTailShift = 100;
// Boost counts in whole numbers; beyond this the shift's own spread no longer shows beside that of
// the estimated spread (it changes the result by about df2 over it).
constexpr double kMostSquaredShift = 1e9;

bool goodDf(double df)
{
    return df > 0;
}

bool goodProbability(double p)
{
    return p >= 0 && p <= 1;
}

} // namespace

double normalDensity(double z)
{
    return std::exp(-0.5 * z * z) / std::sqrt(2 * std::numbers::pi);
}

double normalCdf(double z)
{
    return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

double normalUpper(double z)
{
    return 0.5 * std::erfc(z / std::numbers::sqrt2);
}

double normalQuantile(double p)
{
    if (!goodProbability(p)) {
        return kNaN;
    }
    if (p == 0 || p == 1) {
        return p == 0 ? -kInfiniteDf : kInfiniteDf;
    }
    return boost::math::quantile(Normal(), p);
}

double tUpper(double t, double df)
{
    if (!goodDf(df) || std::isnan(t)) {
        return kNaN;
    }
    if (std::isinf(df)) {
        return normalUpper(t);
    }
    if (std::isinf(t)) {
        return t > 0 ? 0 : 1;
    }
    return boost::math::cdf(boost::math::complement(StudentT(df), t));
}

double tTwoSided(double t, double df)
{
    return 2 * tUpper(std::abs(t), df);
}

double tQuantile(double p, double df)
{
    if (!goodDf(df) || !goodProbability(p)) {
        return kNaN;
    }
    if (std::isinf(df) || p == 0 || p == 1) {
        return normalQuantile(p);
    }
    return boost::math::quantile(StudentT(df), p);
}

double fUpper(double f, double df1, double df2)
{
    if (!goodDf(df1) || !goodDf(df2) || std::isnan(f)) {
        return kNaN;
    }
    if (f <= 0) {
        return 1;
    }
    if (std::isinf(df2)) {
        return chiSquareUpper(f * df1, df1);
    }
    return std::isinf(f) ? 0 : boost::math::cdf(boost::math::complement(FisherF(df1, df2), f));
}

double fQuantile(double p, double df1, double df2)
{
    if (!goodDf(df1) || !goodDf(df2) || !goodProbability(p)) {
        return kNaN;
    }
    if (p == 0 || p == 1) {
        return p == 0 ? 0 : kInfiniteDf;
    }
    if (std::isinf(df2)) {
        return chiSquareQuantile(p, df1) / df1;
    }
    return boost::math::quantile(FisherF(df1, df2), p);
}

double chiSquareCdf(double x, double df)
{
    if (!goodDf(df) || std::isinf(df) || std::isnan(x)) {
        return kNaN;
    }
    if (x <= 0 || std::isinf(x)) {
        return x <= 0 ? 0 : 1;
    }
    return boost::math::cdf(ChiSquare(df), x);
}

double chiSquareUpper(double x, double df)
{
    if (!goodDf(df) || std::isinf(df) || std::isnan(x)) {
        return kNaN;
    }
    if (x <= 0 || std::isinf(x)) {
        return x <= 0 ? 1 : 0;
    }
    return boost::math::cdf(boost::math::complement(ChiSquare(df), x));
}

double chiSquareQuantile(double p, double df)
{
    if (!goodDf(df) || std::isinf(df) || !goodProbability(p)) {
        return kNaN;
    }
    if (p == 0 || p == 1) {
        return p == 0 ? 0 : kInfiniteDf;
    }
    return boost::math::quantile(ChiSquare(df), p);
}

double noncentralTCdf(double t, double df, double noncentrality)
{
    return noncentralTUpper(-t, df, -noncentrality);
}

double noncentralTUpper(double t, double df, double noncentrality)
{
    if (!goodDf(df) || std::isnan(t) || !std::isfinite(noncentrality)) {
        return kNaN;
    }
    if (std::isinf(t)) {
        return t > 0 ? 0 : 1;
    }
    if (std::isinf(df)) {
        return normalUpper(t - noncentrality);
    }
    if (noncentrality == 0) {
        return tUpper(t, df);
    }
    // So far out the other tail is empty: T squared is an F.
    if (noncentrality < -kOneTailShift) {
        return 1 - noncentralTUpper(-t, df, -noncentrality);
    }
    if (noncentrality > kOneTailShift) {
        return t <= 0 ? 1 : noncentralFUpper(t * t, 1, df, noncentrality * noncentrality);
    }
    // The mean over the spread of the normal tail; Boost 1.74 has only 9 decimals here.
    const double beyond = std::max(0.0, t - std::max(0.0, noncentrality));
    return std::min(1.0, meanOverSpread(
                             df, beyond * beyond / 2,
                             [&](double s) { return normalUpper(t * s - noncentrality); },
                             std::max(std::abs(t), std::abs(noncentrality))));
}

double noncentralFUpper(double f, double df1, double df2, double noncentrality)
{
    if (!goodDf(df1) || !goodDf(df2) || std::isnan(f) || !(noncentrality >= 0) ||
        std::isinf(noncentrality)) {
        return kNaN;
    }
    if (f <= 0 || std::isinf(f)) {
        return f <= 0 ? 1 : 0;
    }
    if (noncentrality == 0) {
        return fUpper(f, df1, df2);
    }
    if (noncentrality > kMostSquaredShift && !std::isinf(df2)) {
        return chiSquareCdf(df2 * (noncentrality + df1) / (df1 * f), df2);
    }
    if (noncentrality > kMostSquaredShift) {
        return normalUpper((f * df1 - df1 - noncentrality) /
                           std::sqrt(2 * df1 + 4 * noncentrality));
    }
    if (std::isinf(df2)) {
        return boost::math::cdf(
            boost::math::complement(NoncentralChiSquare(df1, noncentrality), f * df1));
    }
    return boost::math::cdf(boost::math::complement(NoncentralF(df1, df2, noncentrality), f));
}

} // namespace plumule::stats
