#pragma once

#include "core/base/result.h"
#include "core/stats/growth/growth_fit.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace plumule::stats {

struct GrowthAsk
{
    std::optional<GrowthCurve> curve; // none: the best by AICc
    std::vector<double> at;           // x at which the curve is wanted
    std::vector<double> heights;      // y whose x is wanted
    double level = 0.95;              // of the intervals
};

// When the curve reaches a height; nothing where it never does.
struct TimeToHeight
{
    double height = 0;
    std::optional<CurveEstimate> x;
};

// A fitted curve with everything a grower asks of it. Intervals are by Student's t on `df`.
struct GrowthReport
{
    struct Parameter
    {
        std::string name;
        CurveEstimate value;
    };

    CurveFit fit; // for what else is asked of it
    GrowthCurve curve = GrowthCurve::Logistic;
    std::string curveName; // "logistic", "gompertz", "richards"
    std::size_t n = 0;
    int df = 0;
    double rss = 0;
    double residualSd = 0;
    std::optional<double> aicc;
    std::vector<Parameter> parameters;
    std::vector<CurvePoint> at;
    std::vector<TimeToHeight> toHeight;
    CurveEstimate topRate;
    CurveEstimate xAt90pct;
    double lastX = 0; // of the readings
    // False while the last reading lies before 90 % of the fitted full height: A, and what hangs on
    // it, is then foretold rather than seen.
    bool fullHeightSeen = false;

    // The curve alone speaks of what lies beyond the last reading.
    [[nodiscard]] bool isForetold(double x) const { return x > lastX; }
};

// Errors: those of fitGrowth and fitBestGrowth; Invalid for a place or a height that is not finite
// (AskedNotFinite) and for a level outside (0, 1).
[[nodiscard]] Result<GrowthReport> growthReport(std::span<const double> x,
                                                std::span<const double> y, const GrowthAsk& ask);

} // namespace plumule::stats
