#include "core/trial/draft_rules.h"

#include "core/tray/tray_reason.h"
#include "core/trial/draw.h"
#include "core/trial/trial_reason.h"
#include "core/trial/trial_rules.h"

#include <algorithm>
#include <map>
#include <set>

namespace plumule {
namespace {

Done checkTreatments(const TrialDraft& draft)
{
    std::set<std::pair<MediumId, Feeding>> seen;
    for (const Treatment& treatment : draft.treatments) {
        if (!treatment.medium.isStored()) {
            return fail(ErrorKind::Missing, TrialReason::MediumMissing);
        }
        if (!seen.emplace(treatment.medium, treatment.feeding).second) {
            return fail(ErrorKind::Invalid, TrialReason::MediumTwice);
        }
    }
    if (seen.size() < 2) {
        return fail(ErrorKind::TooFew, TrialReason::TooFewMedia);
    }
    const auto& control = draft.trial.control;
    if (control && std::none_of(draft.treatments.begin(), draft.treatments.end(),
                                [&](const Treatment& one) { return one.medium == *control; })) {
        return fail(ErrorKind::Invalid, TrialReason::ControlNotCompared);
    }
    return {};
}

Done checkCounts(const TrialDraft& draft)
{
    const TrialPlan& plan = draft.plan;
    const auto treatments = static_cast<std::int64_t>(draft.treatments.size());
    if (plan.traysEach < 1) {
        return fail(ErrorKind::TooFew, TrialReason::TraysEach);
    }
    if (treatments * plan.traysEach > kMostTraysInATrial) {
        return fail(ErrorKind::Invalid, TrialReason::TooManyTrays, kMostTraysInATrial);
    }
    if (plan.design == Design::RandomizedBlocks &&
        (plan.blocks < 1 || plan.traysEach % plan.blocks != 0)) {
        return fail(ErrorKind::Invalid, TrialReason::BlocksDontDivide, plan.traysEach, plan.blocks);
    }
    if (plan.design == Design::LatinSquare && plan.traysEach != treatments) {
        return fail(ErrorKind::Invalid, TrialReason::SquareCount, treatments);
    }
    return {};
}

} // namespace

Done checkDesign(const TrialDraft& draft)
{
    if (!draft.plan.variety.isStored()) {
        return fail(ErrorKind::Missing, TrialReason::VarietyMissing);
    }
    if (draft.plan.seedPerTray && *draft.plan.seedPerTray <= Mass{}) {
        return fail(ErrorKind::Invalid, TrayReason::Seed);
    }
    if (draft.plan.spread && *draft.plan.spread <= Mass{}) {
        return fail(ErrorKind::Invalid, TrialReason::Spread);
    }
    return checkTreatments(draft).and_then([&] { return checkCounts(draft); });
}

Done checkDraft(const TrialDraft& draft)
{
    return checkTrial(draft.trial).and_then([&] { return checkDesign(draft); });
}

Done checkLayout(const TrialDraft& draft)
{
    if (draft.trays.empty()) {
        return fail(ErrorKind::Missing, TrialReason::LayoutMissing);
    }
    std::map<int, int> counts;
    std::set<PlaceId> places;
    for (const PlannedTray& tray : draft.trays) {
        ++counts[tray.treatment];
        if (tray.place && !places.insert(*tray.place).second) {
            return fail(ErrorKind::Conflict, TrayReason::PlaceTwice);
        }
    }
    for (int position = 0; position < static_cast<int>(draft.treatments.size()); ++position) {
        if (counts[position] != draft.plan.traysEach) {
            return fail(ErrorKind::Invalid, TrialReason::LayoutUneven);
        }
    }
    if (counts.size() != draft.treatments.size()) {
        return fail(ErrorKind::Invalid, TrialReason::LayoutUneven);
    }
    return {};
}

} // namespace plumule
