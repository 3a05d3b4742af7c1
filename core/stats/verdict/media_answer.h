#pragma once

#include "core/stats/verdict/cells.h"
#include "core/stats/verdict/verdict.h"

#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace plumule::stats {

enum class Series
{
    Open,        // looked at after each sowing: level 4 %/sowings
    PlanRunning, // sowings named beforehand, not all in: no interval, no verdict
    PlanDone     // once, at 5 %
};

struct VerdictAsk
{
    CellScale scale = CellScale::Log;
    double margin = 0.09531017980432493; // log 1.1; in the metric's unit where the scale is linear
    Series series = Series::Open;
    int sideMetrics = 0;     // so many metrics share the level besides the main one; 0: this is it
    bool isFiltered = false; // by the grower: intervals, no verdict
    std::vector<std::pair<std::size_t, std::size_t>> confounded; // pairs of media, in any order
    std::vector<std::size_t> survivors; // media whose discards differ, where the metric skips them
};

struct MediumMean
{
    std::size_t medium = 0;
    int trays = 0; // with a value
    int sowings = 0;
    std::optional<double> onScale; // log or linear; over the sowings of its connected part
    std::optional<double> value;   // in the metric's unit: exp(onScale) on a log scale
};

// a over b, a numbered before b. The numbers are given wherever the data have them, whatever the
// verdict; without a verdict there is a reason.
struct PairAnswer
{
    std::size_t a = 0;
    std::size_t b = 0;
    int sowingsShared = 0;
    std::optional<double> difference; // on the scale
    std::optional<double> se;
    std::optional<double> df;
    std::optional<double> level; // after halving, where spread is unlike
    std::optional<double> critical;
    std::optional<double> halfWidth;
    Verdict verdict = Verdict::NoVerdict;
    std::optional<NoVerdictReason> why;

    [[nodiscard]] std::optional<Interval> interval() const;
    bool operator==(const PairAnswer&) const = default;
};
// b over a.
[[nodiscard]] PairAnswer reversed(PairAnswer pair);

struct UnlikeSpread
{
    bool isUnlike = false;
    std::optional<double> brownForsytheP;
    std::optional<double> largestToSmallest; // of the pairs' own variances
    std::optional<double> limit;             // for that ratio
};

enum class AnswerScope
{
    TheseSowings, // gave: one or two sowings, trays as replicates
    NextSowing    // gives: three sowings or more as replicates
};

struct VarietyAnswer
{
    std::size_t variety = 0;
    int sowings = 0; // with two media or more
    std::vector<PairAnswer> pairs;
};

// Whether media differ otherwise from variety to variety: F of medium × variety.
struct VarietyGate
{
    double f = 0;
    double df1 = 0;
    double df2 = 0;
    double p = 1;
    double level = 0;
    double variance = 0; // within varieties
    bool isOpen = false; // then there are verdicts by variety
};

struct MediaAnswer
{
    AnswerScope scope = AnswerScope::NextSowing;
    CellScale scale = CellScale::Log;
    int trays = 0; // with a value
    int sowings = 0;
    std::optional<double> level; // before halving
    // Next sowing: of the cells (medium × sowing). These sowings: of the trays.
    std::optional<double> variance;
    double df = 0;
    UnlikeSpread spread;
    std::optional<double> trayVariance;  // blocks and media taken off within sowings
    std::optional<double> trialVariance; // medium × sowing, at least 0; none where it can't be told
    double harmonicTrays = 0;            // of the cells in the fit
    std::vector<MediumMean> means;       // by medium
    std::vector<PairAnswer> pairs;       // of all media, (0,1), (0,2) … (1,2) …
    std::vector<EmptyCell> empty;
    std::optional<VarietyGate> gate;      // next sowing only, from two varieties on
    std::vector<VarietyAnswer> byVariety; // pairs without verdict where the gate is shut
};

// "Gives": the verdict that holds in the next sowing, on the varieties grown, as often as grown.
// Trays of sowings that are all harvested or discarded. Valid looked at after every sowing: any
// false verdict in one series of twenty at most (by simulation: tests/calibration).
// Least squares on the cells, Tukey–Kramer intervals, pairs' own variances where spread is unlike.
[[nodiscard]] MediaAnswer answerOfSeries(std::span<const SownTray> trays, const VerdictAsk& ask);

// "Gave": within one or two sowings, trays as replicates, once, at 5 %, when all planned trays are
// in. `ask.series` PlanRunning gives no interval; Open and PlanDone are the same here.
[[nodiscard]] MediaAnswer answerOfSowings(std::span<const SownTray> trays, const VerdictAsk& ask);

} // namespace plumule::stats
