#pragma once

#include "line.h"
#include "pages_answer.h"
#include "room.h"

namespace plumule::calibration {

enum class AsksOld
{
    Never,
    Last,
    Always
};

// How a room is looked at.
struct Looking
{
    stats::VerdictAsk ask = {};
    bool isPlanned = false;     // once, when all sowings are in; else from the third sowing on
    bool asksVarieties = false; // verdicts by variety count too
    bool asksDiscards = false;  // media whose discards differ get no verdict on their survivors
    bool isAsGrown = false;     // the truth is of the varieties as often as grown, not of all alike
    bool isOfNewVariety = false;  // the truth is of a variety that is never grown
    bool countsSame = false;      // a "same" of media that differ by the margin is false too
    AsksOld old = AsksOld::Never; // at which looks a model with trays for replicates is asked
    // The pair of which the truth shall be found.
    std::optional<std::pair<std::size_t, std::size_t>> sought = {};
    // Pairs whose verdicts count; none: all.
    std::function<bool(std::size_t, std::size_t)> counts = {};
    // Whether there is a look after so many sowings; none: after every one from the third on.
    std::function<bool(std::size_t)> isLookedAt = {};
    // Through the pages' own question instead of the engine's.
    std::optional<PagesAsk> pages = {};
    // The groups of media that are asked as well.
    std::vector<std::vector<std::size_t>> groups = {};
};

// What is sown next, from what is known; nothing: the grower stops.
struct SoFar
{
    Room& room;
    const std::vector<SownTray>& trays;
    const stats::MediaAnswer* answer = nullptr; // of the last look
    Draw& draw;
};
using Grower = std::function<std::optional<SowingPlan>(const SoFar&)>;
// What becomes of a sowing's trays: thrown away (then without a value), lost.
using Harvest = std::function<void(std::vector<SownTray>&, Draw&)>;

[[nodiscard]] Outcome season(const Rules& rules, const Looking& looking, Draw& draw,
                             const Grower& grower = {}, const Harvest& harvest = {});

// One or two sowings, answered once.
[[nodiscard]] Outcome fewSowings(const Rules& rules, const Looking& looking, Draw& draw,
                                 const Grower& grower = {}, const Harvest& harvest = {});

} // namespace plumule::calibration
