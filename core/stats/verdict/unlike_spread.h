#pragma once

#include "core/stats/verdict/cell_fit.h"
#include "core/stats/verdict/media_answer.h"
#include "core/stats/verdict/tray_residuals.h"

namespace plumule::stats {

// Half the sample variance of y_ta − y_tb over the sowings in which both grew; none under two.
[[nodiscard]] std::optional<double> pairVariance(const CellFit& fit, std::size_t a, std::size_t b);

// From three media on: Brown–Forsythe by medium on the trays' residuals (p < 0.05), or the largest
// over the smallest pair variance beyond F(1 − 0.10/pairs; n − 1, n − 1), of pairs that grew
// together in three sowings at least, n the fewest of these.
[[nodiscard]] UnlikeSpread unlikeSpreadOf(const CellFit& fit, const TrayResiduals& residuals);

} // namespace plumule::stats
