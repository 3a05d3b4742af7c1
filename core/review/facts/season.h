#pragma once

#include "core/cost/cost.h"

namespace plumule {

// Which trays are reviewed together: harvested from `from` to `to`.
struct SeasonFilter
{
    Date from;
    Date to;
    std::vector<VarietyId> varieties; // empty: all
    std::vector<ShelfId> shelves;     // where a tray was longest in its light; empty: all
    std::vector<TrialId> trials;      // empty: all, and those outside any
    // Only sowings of these days; a trial is sown on its first. None: all.
    std::optional<Date> sownFrom;
    std::optional<Date> sownUntil;
    bool operator==(const SeasonFilter&) const = default;
};

// A mean with its 95 % t interval; sd and interval only from two values on.
struct MeanInterval
{
    int n = 0;
    double mean = 0;
    std::optional<double> sd;
    std::optional<double> lower;
    std::optional<double> upper;
};
[[nodiscard]] MeanInterval meanInterval(const std::vector<double>& values, double level = 0.95);

struct SeasonTray
{
    TrayId tray;
    std::string code;
    std::string variety;
    std::optional<std::string> trial;
    double yieldGrams = 0;
    std::optional<double> cost; // in currency units
    std::optional<double> gramsPerSeedGram;
    int days = 0; // day of growth of the last cut
    std::optional<double> residueGrams;
    Date harvestedOn;
};

struct HeightMean
{
    int day = 1;
    MeanInterval height; // mm above the medium's surface; one value a tray: its mean that day
};

// What one medium gave in the season.
struct MediumSeason
{
    Medium medium;
    std::vector<SeasonTray> trays;
    int failed = 0;     // thrown away
    MeanInterval yield; // g per tray
    std::vector<HeightMean> heights;
    std::optional<double> costPerGram; // sum of costs over sum of grams
    TrayCost meanCost;                 // per tray, by parts
    std::vector<CostPoint> costCurve;  // over the uses of one piece; flat for a single-use medium
    std::optional<int> paysBackAt;     // use, against the cheapest single-use medium of the season
};

// Why trays of the span are not counted.
enum class LeftOut
{
    Discarded,
    StillGrowing,
    CutAgainLater,
    SetAside,
    Damaged // a row of it can't be read
};

struct LeftOutTray
{
    TrayId tray;
    std::string code;
    std::string medium;
    LeftOut why = LeftOut::Discarded;
    std::string reason; // the grower's words
};

// The season's answer, first form: what the trays gave, and whether anything can be told apart.
struct SeasonReview
{
    SeasonFilter filter;
    std::vector<MediumSeason> media; // by medium id
    std::vector<LeftOutTray> leftOut;
    int trays = 0;
    int varieties = 0;
    int trials = 0;
    std::string currency;
    // Media with fewer than two trays: nothing can be told apart from them.
    std::vector<std::string> tooFew;
};

} // namespace plumule
