#pragma once

#include "core/review/comparison/media_pair.h"
#include "core/review/model/tray_model.h"
#include "core/stats/verdict/discards.h"
#include "core/stats/verdict/media_answer.h"

namespace plumule {

// What is looked at, and so how often it may be.
enum class SeriesKind
{
    Season, // declared: looked at after every sowing, or planned and looked at once
    Span,   // any days, asked for once: it counts as a series of its own
    Trial,  // one trial by itself
    ByHand  // the grower's choice of days, trials or shelves: no verdict, else choices are tried
            // until one speaks
};

struct Series
{
    SeriesKind kind = SeriesKind::Span;
    std::string name;
    std::optional<int> plannedTrials;
    Response mainMetric = Response::YieldPerTray;
    bool operator==(const Series&) const = default;
};

// How many metrics share the level of the side results. Yield per area says what yield says.
inline constexpr int kSideMetrics = 9;
[[nodiscard]] bool isMainMetric(Response response, Response main);

// Trays that are sown together: a trial, or outside trials all trays of one day.
struct Sowing
{
    std::optional<TrialId> trial;
    std::string code; // of the trial
    Date sownOn;      // its first
    std::vector<std::string> varieties;
    int trays = 0; // of all media, planned ones too
    int in = 0;    // harvested or discarded
    bool operator==(const Sowing&) const = default;

    [[nodiscard]] bool isAllIn() const { return in == trays; }
};

struct ComparedMedium
{
    Medium medium;
    int trays = 0; // with a value
    int trials = 0;
    std::optional<double> mean; // in the response's unit, adjusted for trials and varieties
};

struct ComparedValue
{
    TrayId tray;
    std::string code;
    std::size_t medium = 0;
    double value = 0;
    std::size_t sowing = 0; // index into SeasonComparison::sowings
    VarietyId variety;
    bool isIn = false;                    // its sowing is all in, and counts
    std::optional<double> percentOfTrial; // of the mean over the media of its sowing and variety
};

// The pairs within one sowing.
struct TrialPart
{
    std::size_t sowing = 0;
    std::vector<int> trays; // by medium
    std::vector<MediaPair> pairs;
};

struct VarietyPart
{
    VarietyId id;
    std::string variety;
    int trials = 0; // with two media or more
    std::vector<MediaPair> pairs;
};

struct DiscardsOfMedium
{
    std::size_t medium = 0;
    int sown = 0;
    int discarded = 0;
    double p = 1;
    bool differs = false;      // from the others', beyond chance
    bool isInOneTrial = false; // all of them
    bool operator==(const DiscardsOfMedium&) const = default;
};

struct GroupOfMedia
{
    // The grower's word, or a key: loose_mix, mat, mesh; inert, nutrient_bearing; reusable,
    // single_use.
    std::string name;
    std::vector<std::size_t> members; // media
    std::optional<double> mean;
    std::optional<double> widestPercent; // between two members
    bool areToldApart = false;           // some two of them
};

struct SeasonComparison
{
    ComparisonAsk ask;
    Series series;
    bool isSideMetric = false;
    std::optional<int> day; // of the heights
    std::string currency;
    std::optional<VarietyId> variety; // whose own answer out of the series this is
    std::string varietyName;

    stats::AnswerScope scope = stats::AnswerScope::NextSowing;
    stats::CellScale scale = stats::CellScale::Log;
    int n = 0; // trays that count
    int withoutValue = 0;
    double grandMean = 0; // of all values
    int trials = 0;       // sowings with two media or more that are all in
    std::optional<double> level;
    bool isWaiting = false; // for the last of the trays or trials that were planned
    int trialsIn = 0;       // of the planned ones
    stats::UnlikeSpread unlike;
    std::optional<double> spreadPercent;      // tray to tray
    std::optional<double> trialSpreadPercent; // medium × trial; none where it can't be told
    Margin margin;
    std::vector<Sowing> sowings;                // oldest first
    std::map<VarietyId, std::string> varieties; // that were grown
    std::vector<ComparedMedium> means;
    std::vector<MediaPair> pairs;
    std::vector<TrialPart> byTrial; // oldest first
    std::vector<VarietyPart> byVariety;
    std::optional<stats::VarietyGate> gate;
    std::vector<GroupOfMedia> groups;
    std::vector<MediaPair> groupPairs; // a and b number the groups
    std::vector<DiscardsOfMedium> discards;
    std::vector<Finding> fairness;
    std::vector<ComparedValue> trays;
    TrayModel model; // for the sums and odd trays; its media are the first of `means`
};

// The answer to one question about a series of sowings, from the trays that count. A choice of
// shelves, of trials or of several varieties is by hand; one variety has its own answer out of the
// whole series. Grows with the trays; where it is stopped it is cut short, and of no use.
[[nodiscard]] SeasonComparison comparisonOf(const SeasonFacts& facts, const SeasonFilter& filter,
                                            const Series& series, const ComparisonAsk& ask,
                                            const Progress& progress = {});

} // namespace plumule
