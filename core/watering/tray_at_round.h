#pragma once

#include "core/tray/stage_plan.h"
#include "core/watering/round_key.h"
#include "core/watering/watering.h"

#include <functional>

namespace plumule {

// A growing tray as it stands at one round.
struct TrayAtRound
{
    std::vector<TrayStage> stages; // begun by then only where they had, or are taken to have
    StagePlan plan;
    std::size_t current = 0;
    bool isAsked = false;      // to be watered in this round
    bool isNextDue = false;    // its next stage is due in this round or was before
    bool isHarvestDue = false; // likewise the harvest

    [[nodiscard]] const TrayStage& present() const { return stages[current]; }
    // When what comes next is due: the next stage, or the harvest.
    [[nodiscard]] Moment nextDue() const { return plan.spans[current].end; }
};

// When a tray was cut, and is to be cut again.
using Cuts = std::vector<Moment>;

// None: not begun, or ended, or (in a round after `now`) due to be cut before it. Without `now` the
// round is taken as the one that is walked. A tray cut on the day its harvest was due, or since, is
// no longer due: it grows on and is watered.
[[nodiscard]] std::optional<TrayAtRound> trayAtRound(const TrayRecord& record, const Cuts& cuts,
                                                     const Room& room, RoundKey round,
                                                     std::optional<Moment> now);

using WasWatered = std::function<bool(RoundKey)>;

// The last round before this one in which the tray was to be watered, if it was not and has not
// been since; looks two days back, and never before the tray was there to be watered.
[[nodiscard]] std::optional<RoundKey> missedBefore(const TrayRecord& record, const Cuts& cuts,
                                                   const Room& room, RoundKey round,
                                                   std::optional<Moment> now,
                                                   const WasWatered& wasWatered);

} // namespace plumule
