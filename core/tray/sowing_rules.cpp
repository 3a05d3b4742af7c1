#include "core/tray/sowing_rules.h"

#include "core/base/moment_text.h"
#include "core/base/number_text.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_reason.h"

#include <algorithm>

namespace plumule {
namespace {

template <class Key>
bool hasDoubles(std::vector<Key> keys)
{
    std::sort(keys.begin(), keys.end());
    return std::adjacent_find(keys.begin(), keys.end()) != keys.end();
}

} // namespace

Done checkSowing(const SowingDraft& draft, const Medium& medium)
{
    if (draft.count < 1 || draft.count > kMostTraysAtOnce) {
        return fail(ErrorKind::Invalid, TrayReason::Count, kMostTraysAtOnce);
    }
    const auto count = static_cast<std::size_t>(draft.count);
    if (draft.pieces.size() != (medium.isReusable ? count : 0)) {
        return fail(ErrorKind::Invalid, TrayReason::PieceCount, count, draft.pieces.size());
    }
    if (draft.places.size() > count) {
        return fail(ErrorKind::Invalid, TrayReason::PlaceCount, count, draft.places.size());
    }
    if (hasDoubles(draft.pieces)) {
        return fail(ErrorKind::Conflict, TrayReason::PieceTwice);
    }
    if (hasDoubles(draft.places)) {
        return fail(ErrorKind::Conflict, TrayReason::PlaceTwice);
    }
    if (draft.code && (draft.count != 1 || trimmed(*draft.code).empty())) {
        return fail(ErrorKind::Invalid,
                    draft.count == 1 ? TrayReason::CodeMissing : TrayReason::CodeOfMany);
    }
    if (draft.seedPerTray && draft.seedPerTray->count() <= 0) {
        return fail(ErrorKind::Invalid, TrayReason::Seed);
    }
    if (draft.block && *draft.block < 1) {
        return fail(ErrorKind::Invalid, TrayReason::Block);
    }
    return {};
}

Done checkHeight(const Height& height, const Medium& medium)
{
    const Length above = heightAboveSurface(height, medium).value_or(height.reading);
    if (above < Length{} || above > millimetres(1000)) {
        return fail(ErrorKind::Invalid, TrayReason::HeightRange);
    }
    return {};
}

Done checkStart(const Tray& tray, const std::vector<TrayStage>& stages, Stage stage, Moment at)
{
    const auto found = std::find_if(stages.begin(), stages.end(), [&](const TrayStage& one) {
        return one.stage == stage && one.started();
    });
    if (found == stages.end()) {
        return fail(ErrorKind::Conflict, TrayReason::StageNotBegun, toText(stage));
    }
    const bool isBeforeEarlier = std::any_of(stages.begin(), found, [&](const TrayStage& earlier) {
        return earlier.started() && at < *earlier.started();
    });
    const bool isAfterLater = std::any_of(found + 1, stages.end(), [&](const TrayStage& later) {
        return later.started() && at > *later.started();
    });
    const bool isAfterEnd =
        tray.endedOn && at > Moment{*tray.endedOn, tray.endedMinute.value_or(0)};
    if (isBeforeEarlier || isAfterLater || isAfterEnd) {
        return fail(ErrorKind::Invalid, TrayReason::StartOutOfOrder, textOf(at));
    }
    return {};
}

Moment sowingOf(const std::vector<TrayStage>& stages)
{
    const StagePlan plan = planOf(stages);
    for (const StageSpan& span : plan.spans) {
        if (span.stage != Stage::Soak) {
            return span.start;
        }
    }
    return plan.harvest;
}

} // namespace plumule
