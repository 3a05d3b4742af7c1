#pragma once

#include <boost/math/special_functions/chebyshev.hpp>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

namespace plumule::stats {

// A smooth function on [low, high] kept as a Chebyshev series, so that a costly one is worked out
// only `terms` times. Outside the interval the value is 0. The coefficients are the plain cosine
// sum: Boost's own transform wants a Fourier library for what happens once a comparison.
class Chebyshev
{
public:
    template <class Function>
    Chebyshev(const Function& function, double low, double high, std::size_t terms)
        : m_low(low)
        , m_high(high)
        , m_terms(terms)
    {
        const auto n = static_cast<double>(terms);
        for (std::size_t k = 0; k < terms; ++k) {
            const double angle = std::numbers::pi * (static_cast<double>(k) + 0.5) / n;
            const double value =
                function(0.5 * (low + high) + 0.5 * (high - low) * std::cos(angle));
            for (std::size_t j = 0; j < terms; ++j) {
                m_terms[j] += 2 / n * value * std::cos(static_cast<double>(j) * angle);
            }
        }
    }

    [[nodiscard]] double operator()(double x) const
    {
        if (x < m_low || x > m_high) {
            return 0;
        }
        const double y = (2 * x - m_low - m_high) / (m_high - m_low);
        return boost::math::chebyshev_clenshaw_recurrence(m_terms.data(), m_terms.size(), y);
    }

private:
    double m_low;
    double m_high;
    std::vector<double> m_terms; // the first counts half
};

} // namespace plumule::stats
