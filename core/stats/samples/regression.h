#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <span>

namespace plumule::stats {

// All functions fail with Invalid (lengths differ, a value is not finite) and with TooFew.

// Least squares y = intercept + slope·x, with t intervals at the level asked for.
struct LineFit
{
    std::size_t n = 0;
    int df = 0;
    double intercept = 0;
    double interceptSe = 0;
    double interceptLower = 0;
    double interceptUpper = 0;
    double slope = 0;
    double slopeSe = 0;
    double slopeT = 0;
    double slopeP = 1;
    double slopeLower = 0;
    double slopeUpper = 0;
    double rss = 0;
    double residualSd = 0;
    double rSquared = 0;
    double f = 0;
    double meanX = 0;
    double sxx = 0;
};
// TooFew under three points; Invalid with subject "line.constant" where all x are alike.
[[nodiscard]] Result<LineFit> fitLine(std::span<const double> x, std::span<const double> y,
                                      double level = 0.95);

// The line at one x with the interval of its mean and of a new reading.
struct LinePoint
{
    double x = 0;
    double fit = 0;
    double se = 0;
    double lower = 0;
    double upper = 0;
    double readingLower = 0;
    double readingUpper = 0;
};
[[nodiscard]] LinePoint lineAt(const LineFit& line, double x, double level = 0.95);

// The median of the slopes of all pairs with unlike x (Theil 1950; Sen 1968, JASA 63:1379). The
// intercept is the median of y − slope·x; the interval of the slope is Sen's, by Kendall's
// statistic, and spans all slopes where the points are too few for the level.
struct TheilSen
{
    double slope = 0;
    double intercept = 0;
    std::size_t slopes = 0;
    double lower = 0;
    double upper = 0;
};
[[nodiscard]] Result<TheilSen> theilSen(std::span<const double> x, std::span<const double> y,
                                        double level = 0.95);

// Pearson's r, Spearman's rho (on midranks) and Kendall's tau-b.
struct Correlations
{
    double pearson = 0;
    // Two-sided, by t on n − 2; 1 for two points.
    double pearsonP = 1;
    double spearman = 0;
    double kendallTauB = 0;
};
// TooFew under two points; Invalid with subject "correlation.constant" where x or y is constant.
[[nodiscard]] Result<Correlations> correlations(std::span<const double> x,
                                                std::span<const double> y);

} // namespace plumule::stats
