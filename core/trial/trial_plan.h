#pragma once

#include "core/trial/trial.h"
#include "core/variety/feeding.h"

#include <string_view>
#include <vector>

namespace plumule {

struct TrialPlanTag;
struct TreatmentTag;
struct PlannedTrayTag;
using TrialPlanId = Id<TrialPlanTag>;
using TreatmentId = Id<TreatmentTag>;
using PlannedTrayId = Id<PlannedTrayTag>;

// How chance places the trays.
enum class Design
{
    CompletelyRandom, // any treatment at any place
    RandomizedBlocks, // every treatment equally often within each block, a block on one shelf
    LatinSquare       // every treatment once on each shelf and once at each place along the shelves
};
[[nodiscard]] const char* toText(Design design); // completely_random, randomized_blocks, …
bool fromText(std::string_view text, Design& design);

// What is compared. Its position, from 0, is how planned trays name it.
struct Treatment
{
    TreatmentId id;
    TrialId trial;
    int position = 0;
    MediumId medium;
    Feeding feeding = Feeding::AsProtocol;
    bool operator==(const Treatment&) const = default;
};

// One tray of the layout.
struct PlannedTray
{
    PlannedTrayId id;
    TrialId trial;
    int treatment = 0;
    int block = 1;    // from 1; always 1 in a completely random layout; the row of a Latin square
    int position = 1; // within the block, from 1; the column of a Latin square
    std::optional<PlaceId> place;
    bool isMoved = false;       // by hand, after the draw
    std::optional<TrayId> tray; // once sown
    bool operator==(const PlannedTray&) const = default;
};

struct TrialPlan
{
    TrialPlanId id;
    TrialId trial;
    Design design = Design::RandomizedBlocks;
    VarietyId variety;
    std::optional<SeedLotId> seedLot;
    std::optional<Mass> seedPerTray; // none: the variety's
    Date sowOn;
    int sowMinute = 0;
    bool startsWithSoak = false;
    int blocks = 4;              // of randomized blocks; the other designs do not ask
    int traysEach = 4;           // of each treatment, in all; in blocks a multiple of their count
    std::optional<Mass> spread;  // the grower's own figure; none: the room's
    std::int64_t drawNumber = 0; // draws the same layout again while the same places are free
    bool operator==(const TrialPlan&) const = default;

    [[nodiscard]] Moment sowAt() const { return {sowOn, sowMinute}; }
};

// Everything of a trial that is planned, kept or not.
struct TrialDraft
{
    Trial trial;
    TrialPlan plan;
    std::vector<Treatment> treatments; // by position
    std::vector<PlannedTray> trays;    // by block, then position
    bool operator==(const TrialDraft&) const = default;

    [[nodiscard]] bool isSown() const;
    // Trays in all: treatments × trays of each.
    [[nodiscard]] int count() const;
};

} // namespace plumule
