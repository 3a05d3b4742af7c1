#pragma once

#include "core/base/result.h"
#include "core/stats/probability/chebyshev.h"
#include "core/stats/probability/normal_rectangle.h"
#include "core/stats/probability/probability_reason.h"

#include <optional>
#include <span>
#include <vector>

namespace plumule::stats {

// The largest of several correlated |t| that share one spread estimate: Dunnett's two-sided
// distribution for comparisons with a control, for unequal counts and for any correlation. By
// quadrature. With a product correlation the tail keeps its relative accuracy; with another one it
// has about nine decimals up to seven comparisons, six beyond. df > 0 or infinite. Invalid when an
// argument is out of its range.
class ManyToOne
{
public:
    // Any correlation matrix of size x size, row by row; it may be singular.
    [[nodiscard]] static Result<ManyToOne> fromCorrelation(std::span<const double> rows,
                                                           std::size_t size);

    // P(max |T| > t): the adjusted p of a comparison.
    [[nodiscard]] Result<double> upper(double t, double df) const;
    // The t with probability p below it, 0 < p < 1: the critical value.
    [[nodiscard]] Result<double> quantile(double p, double df) const;

private:
    [[nodiscard]] double outside(double t, double df) const;
    [[nodiscard]] Box boxOf(double t) const;

    std::vector<double> m_loadings;
    std::optional<Chebyshev> m_beyond; // beyondProduct of the box by its half width
};

} // namespace plumule::stats
