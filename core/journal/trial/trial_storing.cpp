#include "core/journal/trial/trial_storing.h"

#include "core/base/number_text.h"
#include "core/journal/tray/sowing.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_reason.h"
#include "core/trial/draw.h"
#include "core/trial/trial_plan_repository.h"
#include "core/trial/trial_reason.h"
#include "core/trial/trial_repository.h"
#include "core/trial/trial_rules.h"
#include "core/variety/variety_repository.h"

#include <algorithm>
#include <tuple>

namespace plumule {
namespace {

Done checkStored(Database& database, const Trial& trial)
{
    TrialRepository trials(database);
    if (trial.id.isStored() && !trials.find(trial.id)) {
        return fail(ErrorKind::NotFound, TrialReason::Unknown);
    }
    const auto sameCode = trials.findByCode(trial.code);
    if (sameCode && sameCode->id != trial.id) {
        return fail(ErrorKind::Duplicate, TrialReason::CodeTaken, trial.code);
    }
    if (trial.control && !MediumRepository(database).find(*trial.control)) {
        return fail(ErrorKind::NotFound, TrialReason::ControlUnknown);
    }
    return {};
}

// What the plan names is there.
Done checkNamed(Database& database, const TrialDraft& draft)
{
    if (!VarietyRepository(database).find(draft.plan.variety)) {
        return fail(ErrorKind::NotFound, TrayReason::VarietyUnknown);
    }
    MediumRepository media(database);
    for (const Treatment& treatment : draft.treatments) {
        if (!media.find(treatment.medium)) {
            return fail(ErrorKind::NotFound, TrayReason::MediumUnknown);
        }
    }
    RoomRepository rooms(database);
    for (const PlannedTray& tray : draft.trays) {
        if (tray.place && !rooms.find(*tray.place)) {
            return fail(ErrorKind::NotFound, TrayReason::PlaceUnknown);
        }
    }
    return checkLotAndTrial(database, draft.plan.variety, draft.plan.seedLot, std::nullopt);
}

// A plan may be kept before its places are drawn.
Done checkLayoutIfAny(const TrialDraft& draft)
{
    return draft.trays.empty() ? Done{} : checkLayout(draft);
}

} // namespace

std::string freeTrialCode(Database& database)
{
    std::vector<std::string> used;
    for (const Trial& trial : TrialRepository(database).all()) {
        used.push_back(trial.code);
    }
    return nextTrialCode(used);
}

Done storeTrial(Database& database, Trial& trial)
{
    trial.name = std::string(trimmed(trial.name));
    trial.code = std::string(trimmed(trial.code));
    if (trial.code.empty()) {
        trial.code = freeTrialCode(database);
    }
    const Done checked = checkTrial(trial).and_then([&] { return checkStored(database, trial); });
    if (!checked) {
        return checked;
    }
    TrialRepository trials(database);
    trial.id.isStored() ? trials.update(trial) : trials.insert(trial);
    return {};
}

Done storeDraft(Database& database, TrialDraft& draft)
{
    TrialPlanRepository plans(database);
    if (plans.isSown(draft.trial.id)) {
        return fail(ErrorKind::Conflict, TrialReason::Sown, draft.trial.code);
    }
    const Done checked = checkDraft(draft)
                             .and_then([&] { return checkNamed(database, draft); })
                             .and_then([&] { return checkLayoutIfAny(draft); })
                             .and_then([&] { return storeTrial(database, draft.trial); });
    if (!checked) {
        return checked;
    }
    std::stable_sort(draft.trays.begin(), draft.trays.end(),
                     [](const PlannedTray& a, const PlannedTray& b) {
                         return std::tie(a.block, a.position) < std::tie(b.block, b.position);
                     });
    for (PlannedTray& tray : draft.trays) {
        tray.tray.reset();
    }
    plans.store(draft);
    return {};
}

} // namespace plumule
