#pragma once

#include "core/chart/chart_spec.h"
#include "core/review/facts/pooled_spread.h"
#include "core/review/fairness/fairness.h"
#include "core/trial/trial_plan.h"

namespace plumule {

// The chance of telling two media of the trial apart where they differ by the margin.
struct PowerAt
{
    int trays = 2;             // of each medium
    double power = 0;          // as the verdict will judge: all pairs together
    double powerOfOnePair = 0; // were only this pair asked about, by a t test
    bool operator==(const PowerAt&) const = default;
};

// What a plan can be expected to show, before a seed is sown.
struct PlanOutlook
{
    double margin = 0;            // g per tray
    bool isDefaultMargin = false; // a tenth of the mean, since the trial states none
    double mean = 0;              // g per tray to be expected
    double spread = 0;            // sd between trays, g
    SpreadFrom spreadFrom = SpreadFrom::Default;
    bool isOwnSpread = false;   // the grower gave it
    bool isOfVariety = false;   // pooled from trays of this variety alone, not of all
    int spreadTrays = 0;        // trays that it was pooled from
    std::vector<PowerAt> curve; // from 2 trays of each on
    PowerAt chosen;
    std::optional<PowerAt> enough; // the fewest with a power of 0.8 or more; none up to 500
    std::optional<double> smallestDifference; // that the chosen count sees 4 times in 5, g
};

// Power as the verdict of one trial judges: of two media from the noncentral t, of more with the
// pair's own spread where that is larger (stats::tellingPower). Error degrees of freedom: t(n−1) of
// t treatments with n trays each, in b blocks tn − t − b + 1; a Latin square's rows are its blocks.
// Another count takes more or fewer blocks of the same size. Under two the power is 0. Feedings of
// one medium count together as trays of that medium; of media with unlike numbers of feedings, the
// fewest. The spread is, in this order, the plan's own, the variety's (pooled within medium and
// trial, from 4 degrees of freedom on), the room's as a share of the mean, 10 % of the mean. TooFew
// "plan.mean" where neither a spread nor any yield is on record, or no yield and no margin; Invalid
// Margin or Spread of 0 or less; TooFewMedia with one medium.
[[nodiscard]] Result<PlanOutlook> outlookOf(const TrialDraft& draft, const SeasonFacts& facts);

// Key "power_curve": power in percent against trays of each medium, the chosen count a point, 80 %
// a mark.
[[nodiscard]] ChartSpec powerChart(const PlanOutlook& outlook);

// The review's own fairness check, made of the trays as planned: what is not known before sowing
// (days grown, uses of pieces, who sows) is not among it. `facts` names places, lots and media and
// has the variety's protocol; trays without a place are on no shelf.
[[nodiscard]] std::vector<Finding> fairnessOfPlan(const TrialDraft& draft,
                                                  const SeasonFacts& facts);

// Both at once.
struct PlanAnswer
{
    Result<PlanOutlook> outlook;
    std::vector<Finding> fairness; // empty without a layout
};
[[nodiscard]] PlanAnswer planAnswerOf(const TrialDraft& draft, const SeasonFacts& facts);

} // namespace plumule
