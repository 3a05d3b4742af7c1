#pragma once

#include "core/review/fairness.h"
#include "core/review/media_pair.h"
#include "core/trial/trial_plan.h"

namespace plumule {

// The chance of telling two media of the trial apart where they differ by the margin.
struct PowerAt
{
    int trays = 2;              // of each medium
    double power = 0;           // as the review will judge: all pairs together, by Tukey's method
    double powerOfOnePair = 0;  // were only this pair asked about, by a t test
    bool operator==(const PowerAt&) const = default;
};

// What a plan can be expected to show, before a seed is sown.
struct PlanOutlook
{
    Margin margin;                 // g per tray
    double mean = 0;               // g per tray to be expected
    double spread = 0;             // sd between trays, g
    SpreadFrom spreadFrom = SpreadFrom::Default;
    bool isOwnSpread = false;      // the grower gave it
    bool isOfVariety = false;      // pooled from trays of this variety alone, not of all
    int spreadTrays = 0;           // trays that it was pooled from
    std::vector<PowerAt> curve;    // from 2 trays of each on
    PowerAt chosen;
    std::optional<PowerAt> enough; // the fewest with a power of 0.8 or more; none up to 500
    std::optional<double> smallestDifference; // that the chosen count sees 4 times in 5, g
};

// Power from the noncentral t with the design's own error degrees of freedom, alpha by pairAlpha().
// Feedings of one medium count together as trays of that medium. The spread is, in this order, the
// plan's own, the variety's (pooled within medium and trial, from 4 degrees of freedom on), the
// room's as a share of the mean, 10 % of the mean. TooFew "plan.mean" where neither a spread nor
// any yield is on record; Invalid margin or spread of 0 or less; TooFew with one medium.
[[nodiscard]] Result<PlanOutlook> outlookOf(const TrialDraft& draft, const SeasonFacts& facts);

// Key "power_curve": power in percent against trays of each medium, the chosen count a point, 80 %
// a mark.
[[nodiscard]] ChartSpec powerChart(const PlanOutlook& outlook);

// The review's own fairness check, made of the trays as planned. `facts` names places, lots and
// media.
[[nodiscard]] std::vector<Finding> fairnessOfPlan(const TrialDraft& draft, const SeasonFacts& facts);

} // namespace plumule
