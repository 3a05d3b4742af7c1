#pragma once

#include <cstddef>

namespace plumule::stats {

// One trial of three media or more, as answerOfSowings() judges it: pooled spread, or the pair's
// own where that is larger.
struct TellingPlan
{
    std::size_t media = 3;
    double df = 0;    // of the pooled spread
    double ownDf = 0; // of the pair's own, part of it
};

// The chance that the interval of a pair is clear of 0 at 5 % for all pairs together, where the
// true difference is `shift` standard errors. By quadrature over both spreads, to about 0.003. 0
// under two degrees of freedom. media from 3.
[[nodiscard]] double tellingPower(const TellingPlan& plan, double shift);

// The shift that is told apart with that power, between 0 and 1; 0 under two degrees of freedom.
[[nodiscard]] double tellingShift(const TellingPlan& plan, double power);

} // namespace plumule::stats
