#pragma once

#include "core/stats/samples/oneway.h"

#include <optional>
#include <string>
#include <vector>

// All pairs of the groups of a one-way layout, and all groups against a control.
namespace plumule::stats {

// Welch's t test of a pair with its own spreads; Games and Howell 1976, J. Educ. Stat. 1:113, for
// the whole family.
struct WelchPair
{
    TEstimate test;
    double pGamesHowell = 1;
    double lowerGamesHowell = 0;
    double upperGamesHowell = 0;
    double pHolm = 1;
};

// mean(j) - mean(i), i < j, on the spread pooled over all groups.
struct GroupPair
{
    std::size_t i = 0;
    std::size_t j = 0;
    TEstimate test;
    double pTukey = 1; // Tukey-Kramer (Kramer 1956, Biometrics 12:307)
    double lowerTukey = 0;
    double upperTukey = 0;
    double pHolm = 1;
    double pBonferroni = 1;
    double pBenjaminiHochberg = 1;
    // Difference over the two groups' own pooled sd, and that freed of its bias (Hedges 1981, exact
    // factor); missing when the two groups have no spread.
    std::optional<double> cohensD;
    std::optional<double> hedgesG;
    // Missing when a group has one value only or when both have no spread.
    std::optional<WelchPair> welch;
};

struct GroupPairs
{
    double criticalQ = 0; // of the studentized range at the level asked for
    std::vector<GroupPair> pairs;
};

// Errors as oneWayAnova; Invalid "level" outside 0 to 1.
[[nodiscard]] Result<GroupPairs> allGroupPairs(Groups groups, double level = 0.95);

// mean(group) - mean(control) on the pooled spread, Dunnett 1955 for unequal counts.
struct GroupAgainstControl
{
    std::size_t group = 0;
    TEstimate test;
    double pDunnett = 1;
    double pDunnettGreater = 1; // one-sided: the group lies above the control
    double lower = 0;           // simultaneous, two-sided
    double upper = 0;
};

struct GroupsAgainstControl
{
    double criticalTwoSided = 0;
    double criticalOneSided = 0;
    std::vector<GroupAgainstControl> comparisons;
};

// Errors as oneWayAnova; Invalid "control" or "level" out of range.
[[nodiscard]] Result<GroupsAgainstControl> groupsAgainstControl(Groups groups, std::size_t control,
                                                                double level = 0.95);

// Letters for the groups: two share one exactly when their Tukey p is at least alpha; "a" is with
// the highest mean.
[[nodiscard]] std::vector<std::string> tukeyLetters(Groups groups, const GroupPairs& pairs,
                                                    double alpha = 0.05);

[[nodiscard]] std::vector<double> bonferroniAdjusted(const std::vector<double>& p);
// Benjamini and Hochberg 1995, JRSS B 57:289.
[[nodiscard]] std::vector<double> benjaminiHochbergAdjusted(const std::vector<double>& p);
// Gamma(df/2) / (sqrt(df/2) Gamma((df-1)/2)): Hedges' factor for an unbiased standardized
// difference.
[[nodiscard]] double hedgesFactor(double df);

} // namespace plumule::stats
