#pragma once

#include <optional>

namespace plumule::stats {

// Of a against b. For costs "more" means dearer.
enum class Verdict
{
    More,
    Less,
    SameWithinMargin, // the interval lies within the margin either way
    RealButTooSmall,  // so it does, and 0 lies outside the interval
    CantTellYet,
    NotComparable,
    NoVerdict
};

enum class NoVerdictReason
{
    NeverMet,         // not comparable: they grew in no sowing together
    Confounded,       // not comparable: the caller says what differs fully between them
    NothingHarvested, // of one of them no tray gave a number
    FewSowings,       // fewer than three sowings in which both grew
    OneTrayEach,      // one sowing, and of one of them a single tray
    FewDegrees,       // under two degrees of freedom to judge the spread by
    NoSpread,         // all alike: there is nothing to judge a difference by
    SurvivorsOnly,    // the caller says that discards differ: the mean is of the survivors
    PlanRunning,      // a planned series that is not all in
    Filtered,         // the grower's filter: else filters are tried until one speaks
    VarietiesAlike    // by variety: media don't differ otherwise from variety to variety
};

// A difference of logs (or of values on a linear scale) and the half-width of its interval.
struct Interval
{
    double difference = 0;
    double halfWidth = 0;

    [[nodiscard]] double lower() const { return difference - halfWidth; }
    [[nodiscard]] double upper() const { return difference + halfWidth; }
    bool operator==(const Interval&) const = default;
};

// From the interval that is shown and the margin on the same scale.
[[nodiscard]] Verdict verdictOf(const Interval& interval, double margin);

// log(1 + percent/100): margins are symmetric on the log scale.
[[nodiscard]] double logMargin(double percent);
// 100 (exp(x) − 1).
[[nodiscard]] double percentOfLog(double x);

} // namespace plumule::stats
