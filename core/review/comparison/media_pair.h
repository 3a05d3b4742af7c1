#pragma once

#include "core/medium/medium.h"

namespace plumule {

// a against b, from the interval of a − b and the margin. For costs "more" means dearer.
enum class PairVerdict
{
    More, // the interval is clear of 0
    Less,
    SameWithinMargin, // two one-sided tests against the margin
    RealButTooSmall,  // both: clear of 0, and within the margin
    CantTellYet,
    NotComparable, // the data cannot tell the media from varieties or trials
    NoVerdict
};

enum class WhyNoVerdict
{
    OneTray,    // of a or of b
    NoSpread,   // all trays of a medium alike: there is nothing to judge a difference by
    TooFewTrays // no tray is left over to judge the spread by
};

enum class SpreadFrom
{
    TheseTrays, // what the model leaves over
    Room,       // pooled over the room's trays of like medium, variety and trial, as a share
    Default     // 10 % of the mean: nothing in the room is replicated
};

enum class MarginFrom
{
    Asked,
    Trials, // the smallest of the trials' margins
    Default // 10 % of the grand mean
};

struct Margin
{
    double value = 0; // in the response's unit; 0 where there is no tray
    MarginFrom from = MarginFrom::Default;
    bool operator==(const Margin&) const = default;
};

// Trays that would tell a and b apart by the margin, 4 times in 5.
struct TraysNeeded
{
    int each = 0; // in all
    int moreOfA = 0;
    int moreOfB = 0;
    double spread = 0; // the sd it was worked out from
    SpreadFrom from = SpreadFrom::TheseTrays;
    bool operator==(const TraysNeeded&) const = default;
};

// Adjusted for whatever else is in the model. The numbers are missing where the data do not give
// them; without a model the mean is the plain one.
struct AdjustedMean
{
    Medium medium;
    int n = 0;
    bool isEstimable = false;
    std::optional<double> mean;
    std::optional<double> se;
    std::optional<double> df;
    std::optional<double> lower; // 95 %
    std::optional<double> upper;
};

// a and b number the means; the later medium is a.
struct MediaPair
{
    std::size_t a = 0;
    std::size_t b = 0;
    int nA = 0;
    int nB = 0;
    std::optional<double> difference; // a − b
    std::optional<double> se;
    std::optional<double> df;
    std::optional<double> lower; // Tukey's, 95 % for all pairs together (costs: by Bonferroni)
    std::optional<double> upper;
    std::optional<double> p; // Tukey's; none for costs
    std::optional<double> pWithinMargin;
    std::optional<double> lowerWithin; // the 90 % interval that goes with it
    std::optional<double> upperWithin;
    PairVerdict verdict = PairVerdict::NoVerdict;
    std::optional<WhyNoVerdict> why;
    std::optional<TraysNeeded> needed; // with CantTellYet and NoVerdict
};

struct SpreadOfTrays
{
    double sd = 0; // between trays, in the response's unit
    std::optional<double> df;
    SpreadFrom from = SpreadFrom::Default;
    // The difference of two media that this design sees 4 times in 5.
    std::optional<double> smallestDifference;
};

} // namespace plumule
