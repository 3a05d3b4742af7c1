#pragma once

#include "core/forecast/forecast.h"

namespace plumule {

// Trays of one model that are summed over, sown on one day or to be sown then.
struct SumPart
{
    YieldModel model;
    int trays = 0;
    Date sownOn;
};

// What the sum of trays comes to, those that are thrown away counted as nothing. Trays of one
// variety that were sown on one day share the luck of their sowing, and all of a variety the error
// of their means, on one medium or several: the media were grown side by side, so that what was off
// on one was off on all. Varieties share nothing. The survivors of each variety on a medium are
// beta-binomial; given them, the sum is taken as lognormal with its first two moments (Fenton 1960,
// from memory) and Student's t for the error of the variances. Nothing to sum: 0.
class ForecastTotal
{
public:
    // The sum's first two moments in grams, given how many trays of each kind survive.
    struct Moments
    {
        double chance = 0;
        double mean = 0;
        double variance = 0;
    };

    explicit ForecastTotal(const std::vector<SumPart>& parts);

    // That the sum is that much or more, 0 to 1.
    [[nodiscard]] double chanceOf(Mass atLeast) const;
    // What it stays below with that chance, 0 < p < 1.
    [[nodiscard]] Mass quantile(double p) const;
    // The mean of the sum.
    [[nodiscard]] Mass mean() const;

private:
    [[nodiscard]] double below(double grams) const;

    std::vector<Moments> m_outcomes;
    double m_degreesOfFreedom = 0;
    double m_meanGrams = 0;
};

} // namespace plumule
