#pragma once

#include "core/tray/damaged_trays.h"
#include "core/tray/stage_plan.h"
#include "core/watering/tray_at_round.h"
#include "core/watering/watering.h"

#include <map>

namespace plumule {

// A watering that a round asks for, one that was given in it, or water given since it began.
struct RoundTray
{
    TrayId tray;
    std::string code;
    std::optional<Spot> spot; // none: the tray stands nowhere yet
    std::string variety;
    Medium medium;
    Stage stage = Stage::UnderWeight;
    int day = 1;        // day of growth; the day of sowing is 1
    int harvestDay = 1; // day of growth on which it is due to be cut
    WateringMethod method = WateringMethod::Mist;
    WaterKind water = WaterKind::Plain;
    bool isAsked = true;                // false: shown for the water that it got all the same
    bool isAsNeeded = false;            // to be looked at: watered, or found to need nothing
    std::optional<Volume> amount;       // asked for
    std::optional<Watering> given;      // ticked in this round
    std::optional<WateringLook> looked; // found to need nothing in this round
    std::vector<Watering> between;      // given since the round began, before the next one
    std::optional<Watering> last;       // the one before this round
    std::optional<Drought> drought;     // it stood without water since
    int looksSince = 0;                 // how often it needed nothing since then

    [[nodiscard]] bool isDone() const { return given || looked; }
    // Nothing of the round's own: shown for what it was given between rounds.
    [[nodiscard]] bool isAside() const { return !isAsked && !given && !looked; }
    // Two days without water that was asked for, three where it is given as needed, or a day and
    // never watered at all: our own measure.
    [[nodiscard]] bool isForgotten() const;
    bool operator==(const RoundTray&) const = default;
};

// A tray whose next stage is due: look, then Ready or Not yet.
struct StageDecision
{
    TrayId tray;
    std::string code;
    std::optional<Spot> spot;
    std::string variety;
    Medium medium;
    Stage from = Stage::UnderWeight;
    std::optional<Stage> to; // none: the harvest
    std::string cue;
    Moment due;
    int daysLate = 0;
    int day = 1;

    bool operator==(const StageDecision&) const = default;
};

// What to mix for the trays that are still to water and those done, by kind of water and method.
struct MixLine
{
    WaterKind water = WaterKind::Plain;
    WateringMethod method = WateringMethod::Below;
    Volume total;
    Volume asNeeded; // the part of it that may not be needed
    std::optional<Volume> concentrate;
    std::optional<WaterRecipe> recipe;
    std::optional<WaterReading> lastReading; // newest of the mix at or before this round
    int unmeasured = 0;                      // trays of this line that have no amount

    bool operator==(const MixLine&) const = default;
};

struct Tomorrow
{
    int harvests = 0;
    int intoLight = 0;
    int intoBlackout = 0;
    int toSow = 0;      // soaked seed that is due to be sown
    int freePlaces = 0; // now
    int places = 0;

    bool operator==(const Tomorrow&) const = default;
};

// The watering list of one morning or evening, in walking order.
struct Round
{
    Date date;
    Slot slot = Slot::Morning;
    std::vector<RoundTray> trays;
    std::vector<StageDecision> decisions;
    std::vector<MixLine> mix;
    Tomorrow tomorrow;
    std::vector<DamagedTray> damaged; // what the round does without

    // Of the trays that the round is about.
    [[nodiscard]] int doneCount() const;
    [[nodiscard]] int toDoCount() const; // done ones included
    // Trays that stood without water too long, the worst first.
    [[nodiscard]] std::vector<const RoundTray*> forgotten() const;
};

// Everything a round is worked out from.
struct RoundFacts
{
    RoomLayout layout;
    std::vector<TrayRecord> growing; // all trays still growing at the round, and those ended
                                     // since; each with the place where it stood then
    std::vector<Watering> waterings; // of those trays, from the round's day on
    std::vector<WateringLook> looks; // likewise, and from as long before it as droughts are counted
    std::map<TrayId, Watering> lastWaterings;   // before this round, newest a tray
    std::map<TrayId, std::vector<Moment>> cuts; // of trays that were cut and grow on
    std::vector<WaterRecipe> recipes;
    std::vector<WaterReading> readings; // newest last
    std::optional<Moment> now;          // none: the round is the one that is walked now
};

// Works the round out. A tray is asked for when its stage at the round's minute is watered in that
// slot; once a day means mornings. One that is due to be cut in this round is a decision and is not
// watered; one due to change stage is watered as its present stage asks until "ready" is said.
// A past round is shown as things stood then (but for what "not yet" moved since); one after `now`
// as planned: whatever is due before it is taken as done when due. What is due up to three hours
// after a round's time belongs to it.
[[nodiscard]] Round roundFrom(const RoundFacts& facts, Date date, Slot slot);

} // namespace plumule
