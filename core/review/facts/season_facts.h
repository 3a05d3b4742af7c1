#pragma once

#include "core/base/progress.h"
#include "core/climate/climate_days.h"
#include "core/cost/tray_use.h"
#include "core/review/facts/season.h"
#include "core/tray/damaged_trays.h"
#include "core/trial/trial_plan.h"

#include <map>

namespace plumule {

// A tray that was cut or has failed, as the season needs it: its record, and what it used and gave.
struct SeasonRecord
{
    Tray tray;
    std::optional<Date> trialSownOn; // the first sowing of its trial
    Mass yield;                      // of all its cuts
    std::vector<Date> cutOn;         // each cut's day
    std::optional<Date> lastCut;     // none: it is cut again later, or was discarded
    TrayUse use;                     // `medium` points into SeasonFacts
    TrayCost cost;                   // as priceTrays() worked it out
    std::vector<Height> heights;
    int nutrientWaterings = 0;
    bool hasStages = false;       // any stage at all is on record
    bool plansNutrient = false;   // one of them
    std::optional<ShelfId> shelf; // where it was longest in its light, else where it stood last
    std::optional<int> pieceUse;  // the tray was the n-th on its piece
    std::optional<int> column;    // its place along the shelf, in a Latin square
    GrowthClimate climate;        // from sowing to its last cut, where loggers know it
};

// A tray that was discarded or grows.
struct UnfinishedRecord
{
    Tray tray;
    bool isCut = false;              // at least once
    std::optional<ShelfId> shelf;    // where it stands or stood last
    std::optional<Date> trialSownOn; // the first sowing of its trial
};

// How many of a trial's trays there are, whenever they are cut.
struct TrialStanding
{
    std::optional<Date> firstSownOn;
    int sown = 0;
    int unsown = 0; // planned and not sown yet
};

// What a tray gave that is not among those reviewed, for the room's own spread.
struct PastYield
{
    MediumId medium;
    VarietyId variety;
    std::optional<TrialId> trial;
    Date sownOn;
    Mass yield;
};

// Everything a season is worked out from, read once. Records point to the media: facts are moved
// and never copied.
struct SeasonFacts
{
    SeasonFacts() = default;
    SeasonFacts(SeasonFacts&&) = default;
    SeasonFacts& operator=(SeasonFacts&&) = default;
    SeasonFacts(const SeasonFacts&) = delete;
    SeasonFacts& operator=(const SeasonFacts&) = delete;
    // What is named, priced and planned, but no tray.
    [[nodiscard]] SeasonFacts withoutTrays() const;

    CostFacts cost;
    std::map<MediumId, Medium> media;
    std::map<MediumId, std::string> mediumGroups; // the grower's own
    std::map<VarietyId, std::string> varieties;
    std::map<VarietyId, std::vector<ProtocolStage>> protocols; // only what a plan is made for
    std::map<TrialId, std::string> trials;                     // code
    std::map<TrialId, Mass> margins;                           // of trials that state one
    std::map<TrialId, Design> designs;                         // of trials that were planned
    std::map<TrialId, TrialStanding> standings;
    std::vector<SeasonRecord> trays; // by tray id; any cut within the span, or discarded within it
    std::vector<UnfinishedRecord> unfinished; // discarded within it, or growing now
    std::vector<PastYield> past;      // only where few trays are reviewed: of two years before
    std::vector<DamagedTray> damaged; // of the span, in none of the lists above
};

// Works every tray's cost out, once, from the prices and uses that the facts hold. Cut short where
// it is stopped.
void priceTrays(SeasonFacts& facts, const Progress& progress = {});

// The filter's days and trays: one that was cut in the span, discarded in it, or sown before its
// end and still growing; of the varieties, shelves and trials chosen, sown in the days asked for.
[[nodiscard]] bool isOfSpan(const SeasonRecord& record, const SeasonFilter& filter);
[[nodiscard]] bool isOfSpan(const UnfinishedRecord& record, const SeasonFilter& filter);
// Whether the tray is harvested, cut for the last time in the span, chosen, and not set aside.
[[nodiscard]] bool isCounted(const SeasonRecord& record, const SeasonFilter& filter);
// Whether it was thrown away within the span, is chosen, and not set aside.
[[nodiscard]] bool hasFailed(const SeasonRecord& record, const SeasonFilter& filter);

// Its mean height in mm of each day of growth it was read on; readings that can't be brought to the
// medium's surface are left out.
[[nodiscard]] std::map<int, double> dailyHeights(const SeasonRecord& record);

// The sums: which trays count, and what each medium gave. The facts may be of a wider span.
[[nodiscard]] SeasonReview reviewOf(const SeasonFacts& facts, const SeasonFilter& filter);

// Curves and payback of all media, once their trays are in. A reusable one's curve is
// (price + (washing + other costs)·n) / (grams·n); it pays back where it crosses the line of the
// single-use medium with the lowest cost per gram. A piece costs what it costs on `day`. No curve
// without that price or without the washing's.
void addCostCurves(std::vector<MediumSeason>& media, const std::vector<Price>& prices, Date day);

} // namespace plumule
