#pragma once

#include "core/stats/model/estimator.h"

namespace plumule::stats {

// The marginal mean of one level: equal weights over the levels of the other factors, covariates at
// their mean. Numbers are missing where the mean is not estimable.
struct MarginalMean
{
    std::string level;
    std::size_t n = 0; // rows of the level in the fit
    bool estimable = false;
    std::optional<double> mean;
    std::optional<double> se;
    std::optional<double> df;
    std::optional<double> lower;
    std::optional<double> upper;
    std::vector<double> weights; // on the columns of the design
};

// Of every level of `factor`, in their order, with intervals of that level (0.95). TermUnknown
// when the factor is not in the model, ConfidenceLevel outside (0, 1).
[[nodiscard]] Result<std::vector<MarginalMean>>
marginalMeans(const Estimator& fit, const std::string& factor, double level = 0.95);

} // namespace plumule::stats
