#pragma once

#include "core/base/result.h"
#include "core/stats/growth/curve_fit.h"

#include <optional>
#include <span>
#include <vector>

namespace plumule::stats {

// The growth curves a grower may ask for; the starts are found from the readings.
enum class GrowthCurve
{
    Logistic,
    Gompertz,
    Richards,
};

[[nodiscard]] const CurveModelPtr& growthModel(GrowthCurve curve);

// Errors: those of fitCurve, and Invalid (AllAlike) where all y are alike.
[[nodiscard]] Result<CurveFit> fitGrowth(GrowthCurve curve, std::span<const double> x,
                                         std::span<const double> y);

// The curve of least AICc (of least sum of squares among equals where AICc is unknown); Richards
// takes part from seven readings on, where its AICc exists.
struct BestGrowth
{
    GrowthCurve curve = GrowthCurve::Logistic;
    CurveFit fit;
};

// Errors: that of the first curve, when none of them can be fitted.
[[nodiscard]] Result<BestGrowth> fitBestGrowth(std::span<const double> x,
                                               std::span<const double> y);

} // namespace plumule::stats
