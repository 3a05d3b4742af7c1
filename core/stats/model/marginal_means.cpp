#include "core/stats/model/marginal_means.h"

#include "core/stats/probability/distributions.h"

#include <algorithm>
#include <cmath>

namespace plumule::stats {

namespace {} // namespace

Result<std::vector<MarginalMean>> marginalMeans(const Estimator& fit, const std::string& factor,
                                                double level)
{
    const DesignFactor* of = fit.design().factor(factor);
    if (of == nullptr) {
        return fail(ErrorKind::NotFound, ModelReason::TermUnknown, factor);
    }
    if (!(level > 0 && level < 1)) {
        return fail(ErrorKind::Invalid, ModelReason::ConfidenceLevel);
    }
    std::vector<MarginalMean> means;
    for (std::size_t i = 0; i < of->levels.size(); ++i) {
        MarginalMean one;
        one.level = of->levels[i];
        one.n = static_cast<std::size_t>(std::count(of->codes.begin(), of->codes.end(), i));
        one.weights = fit.design().meanWeights(*of, i);
        one.estimable = fit.isEstimable(one.weights);
        if (one.estimable) {
            const Estimate estimate = fit.estimate(one.weights);
            const double reach = tQuantile(0.5 + level / 2, estimate.df) * estimate.se;
            one.mean = estimate.value;
            one.se = estimate.se;
            one.df = estimate.df;
            one.lower = estimate.value - reach;
            one.upper = estimate.value + reach;
        }
        means.push_back(std::move(one));
    }
    return means;
}

} // namespace plumule::stats
