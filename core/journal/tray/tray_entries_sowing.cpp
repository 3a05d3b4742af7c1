// Part of core/journal/tray/tray_entries.h: sowing.
#include "core/journal/tray/tray_entries.h"

#include "core/base/moment_text.h"
#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/tray/sowing.h"
#include "core/room/room_repository.h"
#include "core/tray/sowing_rules.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"

namespace plumule {
namespace {

// The codes of the new trays, in order.
Result<std::vector<std::string>> codesFor(Database& database, const SowingDraft& draft,
                                          const Variety& variety)
{
    if (!draft.code) {
        return nextCodes(database, variety, draft.count);
    }
    const std::string code(trimmed(*draft.code));
    if (TrayRepository(database).findByCode(code)) {
        return fail(ErrorKind::Duplicate, TrayReason::CodeTaken, code);
    }
    return std::vector{code};
}

// Shelf and number of a place, as a move is told by.
std::vector<std::string> spotDetails(Database& database, std::optional<PlaceId> place)
{
    for (const Spot& spot : RoomRepository(database).layout().spots()) {
        if (spot.place == place) {
            return {spot.rack + spot.shelf, std::to_string(spot.number)};
        }
    }
    return {std::string()};
}

SownTray trayAt(const SowingDraft& draft, std::size_t index, const std::string& code)
{
    SownTray tray;
    tray.code = code;
    if (index < draft.pieces.size()) {
        tray.piece = draft.pieces[index];
    }
    if (index < draft.places.size()) {
        tray.place = draft.places[index];
    }
    tray.block = draft.block;
    return tray;
}

// When the tray came to its place, or left its last one.
std::optional<Moment> lastMoveOf(const TrayRepository& trays, TrayId tray)
{
    const std::vector<Stay> stays = trays.stays(tray);
    if (stays.empty()) {
        return std::nullopt;
    }
    const Stay& last = stays.back();
    return last.toOn ? Moment{*last.toOn, last.toMinute.value_or(0)}
                     : Moment{last.fromOn, last.fromMinute};
}

// Few are named, many are counted.
std::string namesOf(const std::vector<std::string>& codes)
{
    if (codes.size() > 4) {
        return std::to_string(codes.size());
    }
    std::string names;
    for (const std::string& code : codes) {
        names += (names.empty() ? "" : ", ") + code;
    }
    return names;
}

} // namespace

Result<std::vector<TrayId>> TrayEntries::sow(const SowingDraft& draft)
{
    return m_ledger.record(
        Intention::SowTrays, [&](Database& database, Deed& deed) -> Result<std::vector<TrayId>> {
            const auto ground = groundOf(database, draft);
            if (!ground) {
                return passOn(ground);
            }
            const auto codes = codesFor(database, draft, ground->protocol.variety);
            if (!codes) {
                return passOn(codes);
            }
            std::vector<TrayId> sown;
            for (std::size_t i = 0; i < codes->size(); ++i) {
                sown.push_back(storeSown(database, draft, *ground, trayAt(draft, i, (*codes)[i])));
            }
            deed.whom = namesOf(*codes);
            return sown;
        });
}

Done TrayEntries::moveTo(TrayId id, std::optional<PlaceId> place, Moment at)
{
    return m_ledger.record(Intention::MoveTray, [&](Database& database, Deed& deed) -> Done {
        TrayRepository trays(database);
        const auto tray = trays.find(id);
        if (!tray) {
            return fail(ErrorKind::NotFound, TrayReason::Unknown);
        }
        if (tray->state != TrayState::Growing) {
            return fail(ErrorKind::Conflict, TrayReason::NotGrowing, tray->code);
        }
        const auto open = trays.openStay(id);
        if (place == (open ? std::optional(open->place) : std::nullopt)) {
            return {};
        }
        if (const auto since = lastMoveOf(trays, id); since && at < *since) {
            return fail(ErrorKind::Invalid, TrayReason::MoveBeforeStay, textOf(*since));
        }
        if (place) {
            if (auto isFree = checkPlaceFree(database, *place, at, id); !isFree) {
                return isFree;
            }
        }
        deed.whom = tray->code;
        deed.with = spotDetails(database, place);
        trays.closeStay(id, at);
        if (place) {
            Stay stay{{}, id, *place, at.date, at.minute, std::nullopt, std::nullopt};
            trays.insert(stay);
        }
        return {};
    });
}

} // namespace plumule
