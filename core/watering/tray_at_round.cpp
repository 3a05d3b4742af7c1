#include "core/watering/tray_at_round.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr int kRoundsLookedBack = 2 * 60;

bool isWateredIn(const TrayStage& stage, Slot slot)
{
    if (stage.method == WateringMethod::None) {
        return false;
    }
    return stage.wateringsPerDay >= 2 || (stage.wateringsPerDay == 1 && slot == Slot::Morning);
}

// The stages as they stood when the round was over.
std::vector<TrayStage> stagesAt(const TrayRecord& record, const Room& room, RoundKey round)
{
    std::vector<TrayStage> stages = record.stages;
    for (TrayStage& stage : stages) {
        if (stage.started() && roundOf(room, *stage.started()) > round) {
            stage.startedOn.reset();
            stage.startedMinute.reset();
        }
    }
    return stages;
}

// Takes each stage that is due before the round as begun when due, or now where it is late.
void beginWhatIsDueBefore(std::vector<TrayStage>& stages, const Room& room, RoundKey round,
                          RoundKey walked)
{
    for (StagePlan plan = planOf(stages); *plan.current + 1 < stages.size();
         plan = planOf(stages)) {
        const std::size_t next = *plan.current + 1;
        const Moment due = plan.spans[next].start;
        const RoundKey shown = roundShowing(room, due);
        if (std::max(shown, walked) >= round) {
            return;
        }
        const Moment start = shown < walked ? timeOf(room, walked) : due;
        stages[next].startedOn = start.date;
        stages[next].startedMinute = start.minute;
    }
}

bool hasEndedBy(const Tray& tray, const Room& room, RoundKey round)
{
    return tray.endedOn && roundOf(room, {*tray.endedOn, tray.endedMinute.value_or(0)}) <= round;
}

bool wasCutSince(Moment due, const CutMoments& cuts, const Room& room, RoundKey round)
{
    return std::any_of(cuts.begin(), cuts.end(), [&](Moment cut) {
        return cut.date >= due.date && roundOf(room, cut) <= round;
    });
}

// The stage at the very minute of the round.
const TrayStage* stageAtTime(const TrayRecord& record, Moment time)
{
    const TrayStage* present = nullptr;
    for (const TrayStage& stage : record.stages) {
        if (stage.started() && *stage.started() <= time) {
            present = &stage;
        }
    }
    return present;
}

} // namespace

std::optional<TrayAtRound> trayAtRound(const TrayRecord& record, const CutMoments& cuts,
                                       const Room& room, RoundKey round, std::optional<Moment> now)
{
    if (record.stages.empty() || hasEndedBy(record.tray, room, round)) {
        return std::nullopt;
    }
    TrayAtRound tray;
    tray.stages = stagesAt(record, room, round);
    tray.plan = planOf(tray.stages);
    if (!tray.plan.current) {
        return std::nullopt;
    }
    const RoundKey walked = now ? roundOf(room, *now) : round;
    if (round > walked) {
        beginWhatIsDueBefore(tray.stages, room, round, walked);
        tray.plan = planOf(tray.stages);
    }
    tray.current = *tray.plan.current;
    const RoundKey due = roundShowing(room, tray.nextDue());
    const bool isLast = tray.current + 1 == tray.stages.size();
    const bool isToCut = isLast && !wasCutSince(tray.nextDue(), cuts, room, round);
    if (isToCut && round > walked && std::max(due, walked) < round) {
        return std::nullopt;
    }
    tray.isNextDue = !isLast && due <= round;
    tray.isHarvestDue = isToCut && due <= round;
    const bool isThere = !tray.isHarvestDue && tray.plan.spans.front().start <= timeOf(room, round);
    tray.isAsked = isThere && isWateredIn(tray.present(), round.slot);
    tray.isOffered = isThere && tray.present().isAsNeeded();
    return tray;
}

std::optional<Drought> droughtBefore(const TrayRecord& record, const CutMoments& cuts,
                                     const Room& room, RoundKey round, std::optional<Moment> now,
                                     std::optional<RoundKey> lastWatered)
{
    if (now && round > roundOf(room, *now)) {
        return std::nullopt;
    }
    Drought drought;
    bool isDry = false;
    RoundKey before = round;
    for (int i = 0; i < kRoundsLookedBack; ++i) {
        before = roundBefore(before);
        // A stage begun in the middle of a round asks for nothing that the one before it did not.
        const TrayStage* present = stageAtTime(record, timeOf(room, before));
        if (present == nullptr || (lastWatered && before <= *lastWatered)) {
            break;
        }
        const auto tray = trayAtRound(record, cuts, room, before, std::nullopt);
        const bool isAsked = tray && tray->isAsked && isWateredIn(*present, before.slot);
        if (isAsked || (tray && tray->isOffered && present->isAsNeeded())) {
            isDry = true;
            drought.since = before.date;
        }
        if (isAsked && !drought.missed) {
            drought.missed = before;
        }
    }
    if (!isDry) {
        return std::nullopt;
    }
    drought.isNever = !lastWatered;
    drought.since = lastWatered ? lastWatered->date : drought.since;
    drought.days = round.date - drought.since;
    return drought;
}

} // namespace plumule
