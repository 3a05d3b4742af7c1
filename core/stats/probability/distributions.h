#pragma once

#include <limits>

// Distribution functions. Degrees of freedom may be fractional and, where a normal or chi-square
// limit exists, infinite. `Upper` is the tail above the value, with relative accuracy far out.
// Quantiles take the probability below. Arguments out of their range give NaN: the tests built on
// these check theirs first.
namespace plumule::stats {

inline constexpr double kInfiniteDf = std::numeric_limits<double>::infinity();

[[nodiscard]] double normalDensity(double z);
[[nodiscard]] double normalCdf(double z);
[[nodiscard]] double normalUpper(double z);
[[nodiscard]] double normalQuantile(double p);

[[nodiscard]] double tUpper(double t, double df);
// P(|T| > |t|).
[[nodiscard]] double tTwoSided(double t, double df);
[[nodiscard]] double tQuantile(double p, double df);

[[nodiscard]] double fUpper(double f, double df1, double df2);
[[nodiscard]] double fQuantile(double p, double df1, double df2);

[[nodiscard]] double chiSquareCdf(double x, double df);
[[nodiscard]] double chiSquareUpper(double x, double df);
[[nodiscard]] double chiSquareQuantile(double p, double df);

// Noncentrality of t is the mean shift over its standard error; of F the sum of squared shifts over
// the variance.
[[nodiscard]] double noncentralTCdf(double t, double df, double noncentrality);
[[nodiscard]] double noncentralTUpper(double t, double df, double noncentrality);
[[nodiscard]] double noncentralFUpper(double f, double df1, double df2, double noncentrality);

} // namespace plumule::stats
