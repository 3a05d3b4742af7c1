// Part of core/journal/tray/tray_entries.h: from stage to stage, and from place to place.
#include "core/journal/tray/tray_entries.h"

#include "core/base/moment_text.h"
#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/tray/sowing.h"
#include "core/room/room_repository.h"
#include "core/tray/sowing_rules.h"
#include "core/tray/stay_rules.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/watering/round_key.h"

#include <algorithm>
#include <limits>

namespace plumule {
namespace {

// A growing tray with its stages, of which it has some.
struct TrayOnItsWay
{
    Tray tray;
    std::vector<TrayStage> stages;
};

Result<TrayOnItsWay> trayOnItsWay(const TrayRepository& trays, TrayId id)
{
    auto tray = trays.find(id);
    if (!tray) {
        return fail(ErrorKind::NotFound, TrayReason::Unknown);
    }
    if (tray->state != TrayState::Growing) {
        return fail(ErrorKind::Conflict, TrayReason::NotGrowing, tray->code);
    }
    auto stages = trays.stages(id);
    if (stages.empty()) {
        return fail(ErrorKind::Conflict, TrayReason::NoStages, tray->code);
    }
    return TrayOnItsWay{std::move(*tray), std::move(stages)};
}

Intention intentionOf(Stage next)
{
    switch (next) {
    case Stage::Soak:
        return Intention::BeginSoak;
    case Stage::UnderWeight:
        return Intention::PutUnderWeight;
    case Stage::Blackout:
        return Intention::PutIntoBlackout;
    case Stage::Light:
        return Intention::PutIntoLight;
    }
    return Intention::MoveTrayOn;
}

// The day of sowing is that of the first stage after the soak, wherever that moves.
void followSowing(TrayRepository& trays, Tray tray, const std::vector<TrayStage>& stages)
{
    const Moment sown = sowingOf(stages);
    if (sown != tray.sownAt()) {
        tray.sownOn = sown.date;
        tray.sownMinute = sown.minute;
        trays.update(tray);
    }
}

void begin(TrayRepository& trays, TrayStage& stage, Moment at)
{
    stage.startedOn = at.date;
    stage.startedMinute = at.minute;
    trays.update(stage);
}

// A tray that stood at its place from its first minute did so from the corrected one, but not
// before the tray that stood there until then had left.
void followFirstStay(TrayRepository& trays, TrayId tray, Moment was, Moment now)
{
    auto stays = trays.stays(tray);
    if (stays.empty() || Moment{stays[0].fromOn, stays[0].fromMinute} != was) {
        return;
    }
    if (stays[0].toOn && Moment{*stays[0].toOn, stays[0].toMinute.value_or(0)} < now) {
        return;
    }
    const auto before = trays.lastToLeaveBy(stays[0].place, tray, was);
    const Moment from = before ? std::max(now, endOf(*before)) : now;
    stays[0].fromOn = from.date;
    stays[0].fromMinute = from.minute;
    trays.update(stays[0]);
}

Result<std::string> moveOneOn(Database& database, TrayId id, Moment at, Deed& deed)
{
    TrayRepository trays(database);
    auto found = trayOnItsWay(trays, id);
    if (!found) {
        return passOn(found);
    }
    const StagePlan plan = planOf(found->stages);
    const std::size_t next = plan.current ? *plan.current + 1 : 0;
    if (next >= found->stages.size()) {
        return fail(ErrorKind::Conflict, TrayReason::OnlyHarvestLeft, found->tray.code);
    }
    if (plan.current && at < plan.spans[*plan.current].start) {
        return fail(ErrorKind::Invalid, TrayReason::StartOutOfOrder, textOf(at));
    }
    // Trays that go into one stage together are told so.
    const Intention into = intentionOf(found->stages[next].stage);
    const bool isAlike = deed.whom.empty() || deed.what == into;
    deed.what = isAlike ? into : Intention::MoveTrayOn;
    begin(trays, found->stages[next], at);
    followSowing(trays, found->tray, found->stages);
    return found->tray.code;
}

// `walked` is when the present round is walked: counted from long ago, "not yet" would leave the
// tray as late as it is.
Result<std::string> putOneOff(Database& database, TrayId id, int minutes, Moment walked)
{
    TrayRepository trays(database);
    auto found = trayOnItsWay(trays, id);
    if (!found) {
        return passOn(found);
    }
    const StagePlan plan = planOf(found->stages);
    if (!plan.current) {
        return fail(ErrorKind::Conflict, TrayReason::NothingBegun, found->tray.code);
    }
    const std::int64_t late = std::max<std::int64_t>(0, walked - plan.spans[*plan.current].end);
    TrayStage& present = found->stages[*plan.current];
    constexpr std::int64_t kMost = std::numeric_limits<int>::max();
    present.delayMinutes =
        static_cast<int>(std::clamp(late + present.delayMinutes + minutes, -kMost, kMost));
    trays.update(present);
    followSowing(trays, found->tray, found->stages);
    return found->tray.code;
}

// Does it to each; the codes go into the deed, or where there are many their number.
template <class Act>
Done toEach(const std::vector<TrayId>& trays, Deed& deed, const Act& act)
{
    constexpr std::size_t kNamed = 4;
    for (const TrayId tray : trays) {
        const Result<std::string> code = act(tray);
        if (!code) {
            return passOn(code);
        }
        deed.whom += (deed.whom.empty() ? "" : ", ") + *code;
    }
    if (trays.size() > kNamed) {
        deed.whom = std::to_string(trays.size());
    }
    return {};
}

} // namespace

Done TrayEntries::moveOn(TrayId tray, Moment at)
{
    return moveOn(std::vector<TrayId>{tray}, at);
}

Done TrayEntries::moveOn(const std::vector<TrayId>& trays, Moment at)
{
    return m_ledger.record(Intention::MoveTrayOn, [&](Database& database, Deed& deed) {
        return toEach(trays, deed,
                      [&](TrayId tray) { return moveOneOn(database, tray, at, deed); });
    });
}

Done TrayEntries::notYet(TrayId tray, int minutes)
{
    return notYet(std::vector<TrayId>{tray}, minutes);
}

Done TrayEntries::notYet(const std::vector<TrayId>& trays, int minutes)
{
    return m_ledger.record(Intention::HoldTrayBack, [&](Database& database, Deed& deed) -> Done {
        if (minutes < 1) {
            return fail(ErrorKind::Invalid, TrayReason::Delay);
        }
        const Room room = RoomRepository(database).room();
        const Moment walked = timeOf(room, roundOf(room, m_ledger.clock().now()));
        return toEach(trays, deed,
                      [&](TrayId tray) { return putOneOff(database, tray, minutes, walked); });
    });
}

Done TrayEntries::correctStart(TrayId id, Stage stage, Moment at)
{
    return m_ledger.record(Intention::CorrectStart, [&](Database& database, Deed& deed) -> Done {
        TrayRepository trays(database);
        const auto tray = trays.find(id);
        if (!tray) {
            return fail(ErrorKind::NotFound, TrayReason::Unknown);
        }
        auto stages = trays.stages(id);
        if (auto checked = checkStart(*tray, stages, stage, at); !checked) {
            return checked;
        }
        deed.whom = tray->code;
        for (TrayStage& one : stages) {
            if (one.stage != stage) {
                continue;
            }
            if (one.position == stages.front().position) {
                followFirstStay(trays, id, *one.started(), at);
            }
            begin(trays, one, at);
        }
        followSowing(trays, *tray, stages);
        return {};
    });
}

Done TrayEntries::discard(TrayId id, const std::string& reason, Moment at)
{
    return m_ledger.record(Intention::DiscardTray, [&](Database& database, Deed& deed) -> Done {
        if (trimmed(reason).empty()) {
            return fail(ErrorKind::Missing, TrayReason::DiscardReasonMissing);
        }
        TrayRepository trays(database);
        auto tray = trays.find(id);
        if (!tray) {
            return fail(ErrorKind::NotFound, TrayReason::Unknown);
        }
        if (tray->state != TrayState::Growing) {
            return fail(ErrorKind::Conflict, TrayReason::NotGrowing, tray->code);
        }
        if (Done allowed = checkEnd(trays.openStay(id), at); !allowed) {
            return allowed;
        }
        deed.whom = tray->code;
        tray->discardReason = std::string(trimmed(reason));
        deed.with = {*tray->discardReason};
        trays.end(*tray, TrayState::Discarded, at);
        return {};
    });
}

Done TrayEntries::setAside(TrayId id, std::optional<std::string> reason)
{
    return m_ledger.record(reason ? Intention::SetTrayAside : Intention::CountTrayAgain,
                           [&](Database& database, Deed& deed) -> Done {
                               if (reason && trimmed(*reason).empty()) {
                                   return fail(ErrorKind::Missing,
                                               TrayReason::SetAsideReasonMissing);
                               }
                               TrayRepository trays(database);
                               auto tray = trays.find(id);
                               if (!tray) {
                                   return fail(ErrorKind::NotFound, TrayReason::Unknown);
                               }
                               deed.whom = tray->code;
                               tray->setAsideReason = reason;
                               if (reason) {
                                   deed.with = {*reason};
                               }
                               trays.update(*tray);
                               return {};
                           });
}

} // namespace plumule
