#pragma once

#include "core/base/result.h"
#include "core/stats/growth/curve_model.h"
#include "core/stats/growth/curve_reason.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace plumule::stats {

// A number with its standard error and its interval (Student's t on the residual degrees of
// freedom).
struct CurveEstimate
{
    double estimate = 0;
    double se = 0;
    double lower = 0;
    double upper = 0;
};

// The curve at one x with the interval of the mean (the band, by the delta method).
struct CurvePoint
{
    double x = 0;
    double fit = 0;
    double se = 0;
    double lower = 0;
    double upper = 0;
};

// A curve fitted by least squares.
struct CurveFit
{
    CurveModelPtr model;
    std::vector<double> estimates;
    // s²·(JᵀJ)⁻¹ row by row, one row a parameter.
    std::vector<double> covariance;
    std::size_t n = 0;
    int df = 0;
    double rss = 0;
    double residualSd = 0;
    // Akaike's, with the variance counted as a parameter and the small-sample correction (Hurvich
    // and Tsai 1989); unknown for a fit without residuals and where n ≤ parameters + 2.
    std::optional<double> aicc;

    [[nodiscard]] double covarianceOf(std::size_t a, std::size_t b) const;
    [[nodiscard]] double se(std::size_t parameter) const;
};

// Which starts a search is made from.
enum class StartsTried
{
    UntilOneEnds, // in turn, until one ends in a minimum
    All,          // the least sum of squares wins
};

// Least squares by Levenberg–Marquardt (MINPACK's, as in Eigen).
// Errors: Invalid (lengths differ, a value is not finite), TooFew (no residual degree of freedom or
// fewer distinct x than parameters), NoConvergence with the curve's name: Stalled (no minimum
// reached) or Undetermined (the data cannot tell the parameters apart).
[[nodiscard]] Result<CurveFit> fitCurve(const CurveModelPtr& model, std::span<const double> x,
                                        std::span<const double> y,
                                        std::span<const std::vector<double>> starts,
                                        StartsTried tried = StartsTried::UntilOneEnds);

[[nodiscard]] CurveEstimate parameterEstimate(const CurveFit& fit, std::size_t parameter,
                                              double level = 0.95);
[[nodiscard]] CurvePoint curveAt(const CurveFit& fit, double x, double level = 0.95);

// Derived numbers by the delta method. NotEstimable where the curve has none.
[[nodiscard]] Result<CurveEstimate> topRate(const CurveFit& fit, double level = 0.95);
// The x at which the curve has done that fraction of its way, 0 < fraction < 1.
[[nodiscard]] Result<CurveEstimate> xAtFraction(const CurveFit& fit, double fraction,
                                                double level = 0.95);
// The x at which the curve reaches the height y; HeightNotReached for one that it never reaches.
[[nodiscard]] Result<CurveEstimate> xAtHeight(const CurveFit& fit, double y, double level = 0.95);

} // namespace plumule::stats
