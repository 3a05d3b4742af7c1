#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>

// Integrals over the spread estimate, shared by the studentized range and the many-to-one t.
namespace plumule::stats {

// log of 2 (x/e)^x / Gamma(x), exact to rounding also for very large x (Stirling's series,
// DLMF 5.11.1): the constant of the density of log(s), s^2 = chi-square / df, x = df / 2.
[[nodiscard]] inline double logSpreadConstant(double x)
{
    if (x < 12)
        return std::numbers::ln2 + x * std::log(x) - x - std::lgamma(x);
    const double r = 1 / (x * x);
    const double series =
        (1.0 / 12 - r * (1.0 / 360 - r * (1.0 / 1260 - r * (1.0 / 1680 - r / 1188)))) / x;
    return std::numbers::ln2 + 0.5 * std::log(x / (2 * std::numbers::pi)) - series;
}

// The mean of tail(s) over s = sqrt(chi-square(df) / df). `decay` says how fast the tail falls,
// about exp(-decay s^2), so that the grid lies where the product does. Trapezoid rule in log(s):
// the integrand is analytic and dies out at both ends, where that rule converges geometrically; the
// steps leave an error near rounding. Infinite df gives tail(1). Coarse steps leave 1e-9 of the
// value and suit small corrections.
enum class Steps
{
    Fine,
    Coarse,
};
template <class Tail>
[[nodiscard]] double meanOverSpread(double df, double decay, const Tail& tail,
                                    Steps steps = Steps::Fine, double swing = 0)
{
    const bool fine = steps == Steps::Fine;
    const double negligible = fine ? 1e-18 : 1e-11;
    if (df > 1e12)
        return tail(1.0);
    const double constant = logSpreadConstant(df / 2);
    const double peak = 0.5 * std::log((df / 2) / (df / 2 + decay));
    const double step =
        (fine ? 1.0 : 1.6) * std::min(0.11, 0.6 / std::sqrt(2 * df + swing * swing));
    const auto density = [&](double u) {
        return std::exp(constant + df * (u - 0.5 * std::expm1(2 * u)));
    };
    double sum = density(peak) * tail(std::exp(peak));
    for (const double direction : {-step, step}) {
        for (int i = 1; i < 1000000; ++i) {
            const double u = peak + i * direction;
            const double term = density(u) * tail(std::exp(u));
            sum += term;
            const double fallen = df * (0.5 * std::expm1(2 * (u - peak)) - (u - peak));
            if (fallen > 8 && std::abs(term) <= negligible * std::abs(sum))
                break;
        }
    }
    return sum * step;
}

} // namespace plumule::stats
