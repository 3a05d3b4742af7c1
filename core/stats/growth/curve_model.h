#pragma once

#include <functional>
#include <memory>
#include <span>
#include <string>
#include <vector>

namespace plumule::stats {

// A curve y = f(x; parameters) with its analytic derivatives. `gradient` spans are either empty
// (not wanted) or as long as the parameters, and are filled with derivatives by each parameter.
// A value that does not exist (a logarithm of a negative number, no steepest point) is NaN.
struct CurveModel
{
    using Parameters = std::span<const double>;
    using Gradient = std::span<double>;

    // Stable name ("logistic"), not for reading aloud.
    std::string name;
    std::vector<std::string> parameterNames;
    std::function<double(double x, Parameters, Gradient)> value;
    // dy/dx. The ones below may be empty functions for a curve that is only fitted.
    std::function<double(double x, Parameters)> slope;
    // The steepest slope of the whole curve.
    std::function<double(Parameters, Gradient)> topRate;
    // Where the curve has done that fraction of its way from its lower to its upper level.
    std::function<double(double fraction, Parameters, Gradient)> xAtFraction;
    // The lower and the upper level.
    std::function<double(Parameters)> lowerLevel;
    std::function<double(Parameters)> upperLevel;
};

using CurveModelPtr = std::shared_ptr<const CurveModel>;

// A/(1+exp((tm−t)/s)); parameters A, tm, s.
[[nodiscard]] const CurveModelPtr& logisticCurve();
// A·exp(−exp((tm−t)/s)); parameters A, tm, s.
[[nodiscard]] const CurveModelPtr& gompertzCurve();
// A/(1+exp(b−c·t))^(1/d), d > 0; parameters A, b, c, d (Richards 1959, J. Exp. Bot. 10:290, in the
// form of Ratkowsky 1983).
[[nodiscard]] const CurveModelPtr& richardsCurve();

// The same curves as other books write them, and neighbours of theirs.
// A/(1+exp(b−c·x)); parameters A, b, c.
[[nodiscard]] const CurveModelPtr& logisticCurveByRate();
// A·exp(−exp(−k·(x−ti))); parameters A, k, ti.
[[nodiscard]] const CurveModelPtr& gompertzCurveByRate();
// A·(1−exp(−k·x)); parameters A, k. No steepest point.
[[nodiscard]] const CurveModelPtr& saturationCurve();
// A+(B−A)/(1+exp((xmid−x)/scal)); parameters A, B, xmid, scal.
[[nodiscard]] const CurveModelPtr& fourParameterLogisticCurve();
// A·(1−exp(−k·x))^p; parameters A, k, p. A steepest point only where p > 1.
[[nodiscard]] const CurveModelPtr& chapmanRichardsCurve();

} // namespace plumule::stats
