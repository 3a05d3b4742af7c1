#pragma once

#include "core/base/result.h"
#include "core/stats/probability/chebyshev.h"
#include "core/stats/probability/normal_rectangle.h"

#include <optional>
#include <span>
#include <vector>

namespace plumule::stats {

enum class Sides
{
    Two,
    Upper,
};

// The largest of several correlated t statistics that share one spread estimate: Dunnett's
// distribution for comparisons with a control, for unequal counts and for any correlation. By
// quadrature. With a product correlation the tail keeps its relative accuracy; with another one it
// has about nine decimals up to seven comparisons, six beyond. df > 0 or infinite. Invalid when an
// argument is out of its range.
class ManyToOne
{
public:
    // Correlations of treatment minus control from the counts of a one-way layout.
    [[nodiscard]] static Result<ManyToOne> fromCounts(std::size_t control,
                                                      std::span<const std::size_t> treatments);
    // Correlation (i, j) = loading i * loading j; every |loading| < 1.
    [[nodiscard]] static Result<ManyToOne> fromLoadings(std::span<const double> loadings);
    // Any correlation matrix of size x size, row by row; it may be singular.
    [[nodiscard]] static Result<ManyToOne> fromCorrelation(std::span<const double> rows,
                                                           std::size_t size);

    // P(max |T| > t), or P(max T > t) with Sides::Upper: the adjusted p of a comparison.
    [[nodiscard]] Result<double> upper(double t, double df, Sides sides = Sides::Two) const;
    // The t with probability p below it, 0 < p < 1: the critical value.
    [[nodiscard]] Result<double> quantile(double p, double df, Sides sides = Sides::Two) const;

private:
    [[nodiscard]] double outside(double t, double df, Sides sides) const;
    [[nodiscard]] Box boxOf(double t, Sides sides) const;

    std::vector<double> m_loadings;
    Correlation m_correlation;         // empty when the loadings say it all
    bool m_opposites = false;          // two statistics are each other's negative
    std::optional<Chebyshev> m_beyond; // beyondProduct of the two-sided box by its half width
};

} // namespace plumule::stats
