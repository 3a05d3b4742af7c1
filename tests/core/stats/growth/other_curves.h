#pragma once

#include "core/stats/growth/curve_model.h"

// Curves of the references that growth does not offer, for the solver to be held against: the
// logistic and Gompertz curves as other books write them, and neighbours of theirs. Only their
// values are known, not what can be derived.
namespace plumule::stats::reference {

// A/(1+exp(b−c·x)); parameters A, b, c.
[[nodiscard]] const CurveModelPtr& logisticCurveByRate();
// A·exp(−exp(−k·(x−ti))); parameters A, k, ti.
[[nodiscard]] const CurveModelPtr& gompertzCurveByRate();
// A·(1−exp(−k·x)); parameters A, k.
[[nodiscard]] const CurveModelPtr& saturationCurve();
// A+(B−A)/(1+exp((xmid−x)/scal)); parameters A, B, xmid, scal.
[[nodiscard]] const CurveModelPtr& fourParameterLogisticCurve();
// A·(1−exp(−k·x))^p; parameters A, k, p.
[[nodiscard]] const CurveModelPtr& chapmanRichardsCurve();

} // namespace plumule::stats::reference
