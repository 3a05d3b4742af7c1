#pragma once

#include "core/base/money.h"
#include "core/tray/stage_plan.h"
#include "core/trial/trial_plan.h"

#include <map>
#include <vector>

namespace plumule {

class Ledger;

enum class TrialState
{
    Planned, // no tray of it is sown
    Growing, // a tray of it grows
    Ended    // all its trays are harvested or discarded
};

// A trial in the list of all.
struct TrialRow
{
    Trial trial;
    TrialState state = TrialState::Planned;
    std::vector<Medium> media; // of its trays, or planned; by id
    std::string variety;       // the only one; empty where there are several
    int trays = 0;             // sown, or planned
    int growing = 0;
    int harvested = 0;
    std::optional<Date> lastHarvest;
};

// What a growing trial lacks.
enum class TrialGap
{
    NoHeight,  // others of the trial were read on that day, this one was not
    NotWeighed // its harvest was due before today
};

struct TrialLack
{
    TrialGap gap = TrialGap::NoHeight;
    TrayId tray;
    std::string code;
    Date on;
};

struct TrialTray
{
    TrayRecord record;
    std::optional<Spot> spot; // where it stands or last stood
    StagePlan plan;
    int block = 1;
    int position = 1; // in the block
    Feeding feeding = Feeding::AsProtocol;
    std::optional<Mass> yield;
    std::optional<Mass> residue;
};

// A trial that is under way or done, by block, then position.
struct TrialProgress
{
    Trial trial;
    TrialState state = TrialState::Planned;
    std::optional<TrialDraft> draft; // what was planned; none for trials only named
    std::vector<TrialTray> trays;
    std::vector<TrialLack> lacks; // by day, then code
};

// What was written and photographed of one medium's trays on one day.
struct TrialDayOfMedium
{
    Medium medium;
    std::vector<std::pair<std::string, TrayNote>> notes; // tray code and note
    std::vector<std::pair<std::string, Photo>> photos;
};
struct TrialDay
{
    Date on;
    std::vector<TrialDayOfMedium> media;
};

// One thing to have at hand before sowing.
enum class SupplyKind
{
    Seed,        // g, of the lot or the variety
    LooseMix,    // L; its stock is not kept
    Pieces,      // clean and free, or single-use mats (whose stock is not kept)
    Concentrate, // mL over the whole trial; its stock is not kept
    Water        // L over the whole trial
};
struct Supply
{
    SupplyKind kind = SupplyKind::Seed;
    std::string name;              // of the medium, the concentrate; of seed the variety and lot
    double needed = 0;             // g, L, pieces or mL by kind
    std::optional<double> inStock; // none: not kept, or not known
    // Of what is needed, in currency units; of a reusable piece one use. None: no price.
    std::optional<double> cost;

    [[nodiscard]] bool isShort() const { return inStock && *inStock < needed; }
};
struct Preparation
{
    std::vector<Supply> supplies;
    int trays = 0;
    int placesFree = 0; // on the day of sowing
    double cost = 0;    // of all with a price
    std::string currency;
};

// Questions asked of several trays: planned, sown, followed.
class TrialEntries
{
public:
    explicit TrialEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Newest first.
    [[nodiscard]] Result<std::vector<Trial>> all();
    [[nodiscard]] Result<std::vector<TrialRow>> list();
    // A new trial where its id is not stored; without a code it gets the next free one. Missing
    // name; Duplicate code.
    Result<Trial> save(const Trial& trial);
    // With its plan. InUse when trays or tastings belong to it.
    Done remove(TrialId trial);

    // A plan to begin with, still without a name: the variety sown last with its protocol and its
    // fullest lot, the media used of late (two to four, the control the one sown most), four
    // blocks, a number for the draw from the clock, and the first morning's round within three
    // weeks by which enough places are free; without one no places are drawn.
    [[nodiscard]] Result<TrialDraft> newDraft();
    // A kept plan; NotFound where the trial has none.
    [[nodiscard]] Result<TrialDraft> draft(TrialId trial);
    // The layout that the plan's number draws among the places free at the time of sowing: those
    // no tray stands on, or whose tray is due for harvest before, and that no other unsown plan
    // holds. Errors as drawLayout().
    [[nodiscard]] Result<std::vector<PlannedTray>> draw(const TrialDraft& draft);
    // Places free at that moment, in walking order.
    [[nodiscard]] Result<std::vector<Spot>> freePlaces(const TrialDraft& draft);
    // Keeps trial, plan and layout as one intention; a layout may still be missing. Conflict once
    // sown; errors as checkDraft() and checkLayout(); NotFound where it names what is not stored.
    Result<TrialDraft> savePlan(const TrialDraft& draft);
    // Seed, media, pieces and nutrient for these trays, against what is there.
    [[nodiscard]] Result<Preparation> preparation(const TrialDraft& draft);
    // Sows the draft's trays (kept first if it is not), as one intention: trays in the order of
    // blocks and positions, each at its place, on clean free pieces of the fewest uses. Conflict as
    // TrayEntries::sow(), and TooFewPieces with the medium's name where too few are clean;
    // Sown the second time; Invalid FeedingWithoutNutrient where the protocol feeds in no stage.
    Result<std::vector<TrayId>> sow(const TrialDraft& draft, Moment at,
                                    const std::optional<std::string>& sownBy = std::nullopt);

    [[nodiscard]] Result<TrialProgress> progress(TrialId trial);
    // Days with notes or photos, oldest first.
    [[nodiscard]] Result<std::vector<TrialDay>> diary(TrialId trial);

private:
    Ledger& m_ledger;
};

} // namespace plumule
