#pragma once

#include <functional>
#include <memory>
#include <span>
#include <string>
#include <vector>

namespace plumule::stats {

// A curve y = f(x; parameters) that rises from 0 to its first parameter, with analytic derivatives.
// `gradient` spans are either empty (not wanted) or as long as the parameters, and are filled with
// derivatives by each parameter. A value that does not exist (a logarithm of a negative number) is
// NaN. Fitting asks for the value alone.
struct CurveModel
{
    using Parameters = std::span<const double>;
    using Gradient = std::span<double>;

    // Stable name ("logistic"), not for reading aloud.
    std::string name;
    std::vector<std::string> parameterNames;
    std::function<double(double x, Parameters, Gradient)> value;
    std::function<double(double x, Parameters)> slope; // dy/dx
    // The steepest slope of the whole curve.
    std::function<double(Parameters, Gradient)> topRate;
    // Where the curve has done that fraction of its way.
    std::function<double(double fraction, Parameters, Gradient)> xAtFraction;
};

using CurveModelPtr = std::shared_ptr<const CurveModel>;

// A/(1+exp((tm−t)/s)); parameters A, tm, s.
[[nodiscard]] const CurveModelPtr& logisticCurve();
// A·exp(−exp((tm−t)/s)); parameters A, tm, s.
[[nodiscard]] const CurveModelPtr& gompertzCurve();
// A/(1+exp(b−c·t))^(1/d), d > 0; parameters A, b, c, d (Richards 1959, J. Exp. Bot. 10:290, in the
// form of Ratkowsky 1983).
[[nodiscard]] const CurveModelPtr& richardsCurve();

} // namespace plumule::stats
