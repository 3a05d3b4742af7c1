#pragma once

#include "core/tasting/tasting.h"

namespace plumule {

// Serving orders of 2 or more samples, numbered from 0: each sample comes equally often at each
// turn and follows each other equally often. k rows for even k, 2k for odd k (Williams 1949, Aust.
// J. Sci. Res. A 2:149).
[[nodiscard]] std::vector<std::vector<int>> williamsSquare(int samples);

// The orders of a triangle of samples 0 and 1: AAB ABA BAA BBA BAB ABB.
[[nodiscard]] std::vector<std::vector<int>> triangleOrders();

// Tasters who make the orders balanced, or any multiple of them.
[[nodiscard]] int balancedTasters(TastingMethod method, int samples);

struct DrawnServing
{
    int taster = 0; // from 0
    int turn = 1;
    int sample = 0; // position
    std::string code;
};
// By taster, then turn; alike for the same number on every machine (stats::SteadyDraw). Each taster
// gets one row of the square, rows and sample labels in random order; tasters beyond the rows go
// through all rows again, drawn anew. Codes are drawn by lot from 100 to 999, no two alike, and
// those of one taster begin with different digits, so that they aren't mixed up. 2 to 9 samples, at
// most 900 servings.
[[nodiscard]] std::vector<DrawnServing> drawServings(TastingMethod method, int samples, int tasters,
                                                     std::int64_t drawNumber);

} // namespace plumule
