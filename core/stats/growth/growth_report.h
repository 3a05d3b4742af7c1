#pragma once

#include "core/base/result.h"
#include "core/stats/growth/growth_fit.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace plumule::stats {

// What `plumule growth` prints: the fitted curve with everything a grower asks of it. Intervals are
// at `level`, by Student's t on `df`.
struct GrowthReport
{
    struct Parameter
    {
        std::string name;
        CurveEstimate value;
    };

    GrowthCurve curve = GrowthCurve::Logistic;
    std::string curveName; // "logistic", "gompertz", "richards"
    std::size_t n = 0;
    int df = 0;
    double rss = 0;
    double residualSd = 0;
    std::optional<double> aicc;
    std::vector<Parameter> parameters;
    std::vector<CurvePoint> at;
    CurveEstimate topRate;
    CurveEstimate xAt90pct;
    // False while the last reading lies before 90 % of the fitted full height: A, and what hangs on
    // it, is then foretold rather than seen.
    bool fullHeightSeen = false;
    // Filled where the best of several was asked for.
    std::vector<BestGrowth::Rival> rivals;
};

// `curve` empty asks for the best by AICc. Errors: those of fitGrowth and fitBestGrowth; Invalid
// with subject "curve.at" for a place that is not finite, "curve.level" for a level outside (0, 1).
[[nodiscard]] Result<GrowthReport> growthReport(std::span<const double> x,
                                                std::span<const double> y,
                                                std::optional<GrowthCurve> curve,
                                                std::span<const double> at, double level = 0.95);

} // namespace plumule::stats
