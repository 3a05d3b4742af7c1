#pragma once

#include "core/tray/stage_plan.h"
#include "core/watering/round_key.h"
#include "core/watering/watering.h"

namespace plumule {

// A growing tray as it stands at one round.
struct TrayAtRound
{
    std::vector<TrayStage> stages; // begun by then only where they had, or are taken to have
    StagePlan plan;
    std::size_t current = 0;
    bool isAsked = false;      // to be watered in this round
    bool isOffered = false;    // to be looked at, and watered if it is dry
    bool isNextDue = false;    // its next stage is due in this round or was before
    bool isHarvestDue = false; // likewise the harvest

    [[nodiscard]] const TrayStage& present() const { return stages[current]; }
    // When what comes next is due: the next stage, or the harvest.
    [[nodiscard]] Moment nextDue() const { return plan.spans[current].end; }
};

// When a tray was cut, and is to be cut again.
using CutMoments = std::vector<Moment>;

// None: not begun, or ended, or (in a round after `now`) due to be cut before it. Without `now` the
// round is taken as the one that is walked. A tray cut on the day its harvest was due, or since, is
// no longer due: it grows on and is watered.
[[nodiscard]] std::optional<TrayAtRound> trayAtRound(const TrayRecord& record,
                                                     const CutMoments& cuts, const Room& room,
                                                     RoundKey round, std::optional<Moment> now);

// How long a tray stood without water before a round. Only rounds that asked for it count, or
// offered it as needed; never watered it is counted from the first of them.
struct Drought
{
    Date since;                     // the day of its last water, or of the first round that asked
    int days = 0;                   // from then to the round's day
    bool isNever = false;           // it was never watered
    std::optional<RoundKey> missed; // the last round before this one that asked in vain

    bool operator==(const Drought&) const = default;
};

// None where it was watered in the round before, where nothing was asked or offered since, and in a
// round that is still ahead. Looks 60 days back.
[[nodiscard]] std::optional<Drought> droughtBefore(const TrayRecord& record, const CutMoments& cuts,
                                                   const Room& room, RoundKey round,
                                                   std::optional<Moment> now,
                                                   std::optional<RoundKey> lastWatered);

} // namespace plumule
