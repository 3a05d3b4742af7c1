#pragma once

#include "core/stats/samples/oneway.h"

#include <span>

// t tests of one or two samples. Differences are mean(y) - mean(x). Errors: TooFew "values" (no
// degree of freedom), NotEstimable "spread" (all values alike), Invalid "values" (not finite).
namespace plumule::stats {

// Spreads of their own, Satterthwaite's degrees of freedom; each sample needs two values.
[[nodiscard]] Result<TEstimate> welchT(std::span<const double> y, std::span<const double> x,
                                       double level = 0.95);
// One pooled spread.
[[nodiscard]] Result<TEstimate> pooledT(std::span<const double> y, std::span<const double> x,
                                        double level = 0.95);
// Pairs y[i], x[i]; Invalid "values" when their counts differ.
[[nodiscard]] Result<TEstimate> pairedT(std::span<const double> y, std::span<const double> x,
                                        double level = 0.95);
// The mean of one sample against `reference`; the estimate is mean - reference.
[[nodiscard]] Result<TEstimate> oneSampleT(std::span<const double> values, double reference = 0,
                                           double level = 0.95);
// P(T > t): the p of the one-sided question whether the estimate is above 0.
[[nodiscard]] double pGreater(const TEstimate& test);

// var(y) / var(x) with a two-sided p.
[[nodiscard]] Result<VarianceRatio> varianceRatio(std::span<const double> y,
                                                  std::span<const double> x);

} // namespace plumule::stats
