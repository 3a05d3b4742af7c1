#pragma once

#include "core/tray/tray.h"
#include "core/variety/feeding.h"

namespace plumule {

// A stage of a tray as things stand: where it has begun, when; where not, when it is due.
struct StageSpan
{
    Stage stage = Stage::UnderWeight;
    Moment planned; // at sowing
    Moment start;   // actual, or due by the chain from the last actual start
    bool hasStarted = false;
    Moment end; // of this stage: the next one's start, or the harvest
};

// A growing tray's calendar.
struct StagePlan
{
    std::vector<StageSpan> spans;
    std::optional<std::size_t> current; // index into spans; none before the first start
    Moment harvest;                     // due
    Moment harvestPlanned;              // at sowing
};

// Chains planned starts from the last actual one; every "not yet" moves all that follows. A stage's
// actual start may be before or after its plan. `stages` is in order and not empty.
[[nodiscard]] StagePlan planOf(const std::vector<TrayStage>& stages);

// The same of any tray: one that was brought in without stages has only its end, or its sowing.
[[nodiscard]] StagePlan calendarOf(const TrayRecord& record);

enum class FirstStage
{
    Soak,
    AfterSoak, // which is left out
};

// The stages of a new tray: the protocol's, planned one after the other from `sowing.at`, the first
// one started. Water kinds are resolved for the
// medium and the trial's feeding.
[[nodiscard]] std::vector<TrayStage> stagesFor(const Protocol& protocol, const Medium& medium,
                                               Moment at, FirstStage first,
                                               Feeding feeding = Feeding::AsProtocol);

// The kind of water this protocol stage gives on this medium: a nutrient-bearing one gets no
// nutrient unless its protocol says so. Fed whatever the medium, it gets nutrient where the
// protocol has it for an inert one; not fed, pH-set water instead.
[[nodiscard]] WaterKind waterFor(const ProtocolStage& stage, const Medium& medium,
                                 Feeding feeding = Feeding::AsProtocol);

// Minutes from sowing to harvest, and of the soak before it.
[[nodiscard]] int minutesToHarvest(const Protocol& protocol);
[[nodiscard]] int soakMinutes(const Protocol& protocol);

// When to sow, and when to put to soak, for a harvest at that moment.
struct SowingTimes
{
    Moment sow;
    std::optional<Moment> soak;
};
[[nodiscard]] SowingTimes timesForHarvest(const Protocol& protocol, Moment harvest);

// Height above the medium's surface. NotEstimable for a rim reading where the medium's depth below
// the rim is not known.
[[nodiscard]] Result<Length> heightAboveSurface(const Height& height, const Medium& medium);

// The next code of a variety: its prefix and the number after the highest one used, three digits or
// more.
[[nodiscard]] std::string nextCode(const std::string& prefix, const std::vector<std::string>& used);

} // namespace plumule
