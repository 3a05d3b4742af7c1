#pragma once

#include "core/base/result.h"

namespace plumule::stats {

// Two one-sided tests (Schuirmann 1987, J. Pharmacokinet. Biopharm. 15:657) of a difference against
// a margin: both small means the difference lies within the margin.
struct Equivalence
{
    double pAboveLower = 1; // that the true difference is not above the lower margin
    double pBelowUpper = 1; // that it is not below the upper margin
    double p = 1;           // the larger of the two
    // The interval that matches: level 1 - 2 alpha.
    double lower = 0;
    double upper = 0;
    bool isWithin = false; // p < alpha
};

// difference with its standard error and degrees of freedom (may be infinite). Errors: Invalid
// "margin" unless lower < upper, Invalid "alpha" outside 0 to 0.5, NotEstimable "spread" when se is
// not above 0, TooFew "df".
[[nodiscard]] Result<Equivalence> equivalence(double difference, double se, double df,
                                              double lowerMargin, double upperMargin,
                                              double alpha = 0.05);

} // namespace plumule::stats
