#pragma once

#include "core/stats/model/marginal_means.h"

#include <optional>

namespace plumule::stats {

// A contrast of means with its own t test; the interval is for this contrast alone. Numbers are
// missing where it is not estimable, t and p also where it has no standard error.
struct ContrastTest
{
    bool estimable = false;
    std::optional<double> estimate;
    std::optional<double> se;
    std::optional<double> df;
    std::optional<double> t;
    std::optional<double> p;
    std::optional<double> lower;
    std::optional<double> upper;
};

// mean(a) - mean(b), numbers of levels. Tukey-Kramer: the studentized range over all means of the
// factor at the pair's own df, for p and the simultaneous interval. Holm is over the estimable
// pairs.
struct PairComparison
{
    std::size_t a = 0;
    std::size_t b = 0;
    ContrastTest raw;
    std::optional<double> pTukey;
    std::optional<double> lowerTukey;
    std::optional<double> upperTukey;
    std::optional<double> pHolm;
};

// mean(level) - mean(control). Two-sided Dunnett by the multivariate t of the contrasts' actual
// correlation, over those that are estimable.
struct ControlComparison
{
    std::size_t level = 0;
    ContrastTest raw;
    std::optional<double> pDunnett;
    std::optional<double> lowerDunnett;
    std::optional<double> upperDunnett;
};

// Every pair of means, the earlier level as b: a = 1, b = 0 comes first, then a = 2, b = 0.
[[nodiscard]] Result<std::vector<PairComparison>>
allPairs(const Estimator& fit, const std::vector<MarginalMean>& means, double level = 0.95);

// Every other mean against the one numbered `control` (one of `means`).
[[nodiscard]] Result<std::vector<ControlComparison>>
againstControl(const Estimator& fit, const std::vector<MarginalMean>& means, std::size_t control,
               double level = 0.95);

// Any linear contrast, one weight a mean; ContrastSum unless they sum to zero and are not all zero.
[[nodiscard]] Result<ContrastTest> meansContrast(const Estimator& fit,
                                                 const std::vector<MarginalMean>& means,
                                                 std::span<const double> weights,
                                                 double level = 0.95);

// The test of weights on the design's columns.
[[nodiscard]] ContrastTest testContrast(const Estimator& fit, std::span<const double> weights,
                                        double level = 0.95);

// Two one-sided tests (Schuirmann 1987, J. Pharmacokinet. Biopharm. 15:657): the p of "the contrast
// lies within -margin to margin". Missing where the contrast has no se; Invalid unless margin > 0.
[[nodiscard]] Result<std::optional<double>> equivalenceP(const ContrastTest& test, double margin);

} // namespace plumule::stats
