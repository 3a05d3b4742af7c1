#pragma once

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

// Integrals over the spread estimate, shared by the studentized range and the many-to-one t.
namespace plumule::stats {

// log of 2 (x/e)^x / Gamma(x), to rounding also for very large x: the constant of the density of
// log(s), s^2 = chi-square / df, x = df / 2.
[[nodiscard]] inline double logSpreadConstant(double x)
{
    // The gamma density of shape x at x is (x/e)^x / (x Gamma(x)).
    return std::log(2 * x * boost::math::gamma_p_derivative(x, x));
}

// The mean of tail(s) over s = sqrt(chi-square(df) / df). `decay` says how fast the tail falls,
// about exp(-decay s^2), so that the grid lies where the product does; `swing` how fast it turns in
// log(s) beyond that. Trapezoid rule in log(s): the integrand is analytic and dies out at both
// ends, where that rule converges geometrically; the steps leave an error near rounding. Infinite
// df gives tail(1).
template <class Tail>
[[nodiscard]] double meanOverSpread(double df, double decay, const Tail& tail, double swing = 0)
{
    constexpr double kNegligible = 1e-18;
    if (df > 1e12) {
        return tail(1.0);
    }
    const double constant = logSpreadConstant(df / 2);
    const double peak = 0.5 * std::log((df / 2) / (df / 2 + decay));
    const double step = std::min(0.11, 0.6 / std::sqrt(2 * df + swing * swing));
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
            if (fallen > 8 && std::abs(term) <= kNegligible * std::abs(sum)) {
                break;
            }
        }
    }
    return sum * step;
}

} // namespace plumule::stats
