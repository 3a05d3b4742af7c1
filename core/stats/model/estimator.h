#pragma once

#include "core/stats/model/model_design.h"

#include <span>

namespace plumule::stats {

// An estimate with its standard error and that one's degrees of freedom.
struct Estimate
{
    double value = 0;
    double se = 0;
    double df = 0;
};

struct FTest
{
    double f = 0;
    double df1 = 0;
    double df2 = 0;
    double p = 1;
};

// What marginal means and comparisons ask of a fitted model. Weights are on the columns of
// design(); what they make is estimable when the data can tell it apart from everything else.
class Estimator
{
public:
    virtual ~Estimator() = default;
    [[nodiscard]] virtual const ModelDesign& design() const = 0;
    [[nodiscard]] virtual bool isEstimable(std::span<const double> weights) const = 0;
    // The weights must be estimable.
    [[nodiscard]] virtual Estimate estimate(std::span<const double> weights) const = 0;
    [[nodiscard]] virtual double covariance(std::span<const double> a,
                                            std::span<const double> b) const = 0;
};

} // namespace plumule::stats
