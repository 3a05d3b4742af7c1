#pragma once

#include "core/cost/cost.h"

namespace plumule {

// How long a tray stood in its light stage on one shelf.
struct LitTime
{
    ShelfId shelf;
    std::int64_t minutes = 0; // of the clock; how long the lamps burn a day is the shelf's
    bool operator==(const LitTime&) const = default;
};

// What one tray used up, in amounts. None: not known, which is not the same as nothing.
struct TrayUse
{
    Date sownOn;
    const Medium* medium = nullptr; // not owned
    std::optional<SeedLotId> seedLot;
    std::optional<Mass> seed;
    bool isHarvested = false;
    bool hasEnded = false;
    std::optional<int> waterings;   // none: it ended without one on record
    std::optional<Volume> water;    // of every kind
    std::optional<Volume> nutrient; // of the mixed nutrient water
    std::optional<std::vector<LitTime>> light;
    int stageMoves = 0; // to a next stage; the first stage's start is none
    int cuts = 0;
    std::optional<Mass> residue;
};

// What is on record of a tray's light stage.
struct LightStage
{
    bool hasStages = false; // any stage at all is on record
    bool isPlanned = false; // the tray's protocol has a light stage
    std::optional<Moment> start;
};

// Time in light by shelf, up to `until`. None where a harvested tray has no start of its light on
// record, or no place while it was lit.
[[nodiscard]] std::optional<std::vector<LitTime>> litTimes(TrayState state, const LightStage& light,
                                                           const std::vector<Stay>& stays,
                                                           Moment until,
                                                           const std::vector<Place>& places);

// A growing tray's use so far: its light is counted up to what was last written down of it.
[[nodiscard]] TrayUse useOf(const TrayFacts& tray, const RoomLayout& layout);

// Minutes of the tasks done for the tray: sowing to clearing out, without the washing of its piece.
// None where a task that was done has no minutes, or how often it was done is not known.
[[nodiscard]] std::optional<double> tendingMinutes(const TrayUse& use,
                                                   const std::vector<LabourTask>& labour);
// Of one washing of its piece; 0 for a single-use medium.
[[nodiscard]] std::optional<double> washingMinutes(const Medium& medium,
                                                   const std::vector<LabourTask>& labour);
// Both together.
[[nodiscard]] std::optional<double> workMinutes(const TrayUse& use,
                                                const std::vector<LabourTask>& labour);

// Seed + medium + nutrient and water + light (W × hours × share of the shelf × price) + labour +
// packaging + waste, at the prices of the day of sowing. Washing of a single-use medium, and what
// was not used at all, are 0.
[[nodiscard]] TrayCost costOf(const TrayUse& use, const CostFacts& facts);

} // namespace plumule
