#include "core/journal/tray/moving.h"

#include "core/base/moment_text.h"
#include "core/journal/tray/sowing.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"

#include <algorithm>

namespace plumule {
namespace {

// A tray on its way, with what it leaves.
struct Mover
{
    Tray tray;
    std::optional<PlaceId> from;
    std::optional<PlaceId> to;
};

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

Result<Mover> moverOf(const TrayRepository& trays, const TrayMove& move, Moment at)
{
    const auto tray = trays.find(move.tray);
    if (!tray) {
        return fail(ErrorKind::NotFound, TrayReason::Unknown);
    }
    if (tray->state != TrayState::Growing) {
        return fail(ErrorKind::Conflict, TrayReason::NotGrowing, tray->code);
    }
    const auto open = trays.openStay(move.tray);
    Mover mover{*tray, open ? std::optional(open->place) : std::nullopt, move.to};
    const auto since = lastMoveOf(trays, move.tray);
    if (mover.from != mover.to && since && at < *since) {
        return fail(ErrorKind::Invalid, TrayReason::MoveBeforeStay, textOf(*since));
    }
    return mover;
}

// Those that change their place.
Result<std::vector<Mover>> moversOf(const TrayRepository& trays, const std::vector<TrayMove>& moves,
                                    Moment at)
{
    std::vector<Mover> movers;
    for (const TrayMove& move : moves) {
        const auto mover = moverOf(trays, move, at);
        if (!mover) {
            return passOn(mover);
        }
        if (mover->from == mover->to) {
            continue;
        }
        const bool isTwice = std::any_of(movers.begin(), movers.end(), [&](const Mover& other) {
            return other.tray.id == move.tray || (move.to && other.to == move.to);
        });
        if (isTwice) {
            return fail(ErrorKind::Conflict, TrayReason::PlaceTwice);
        }
        movers.push_back(*mover);
    }
    return movers;
}

// Shelf and number of each place, as a move is told by; nothing off the racks.
std::vector<std::string> spotDetails(Database& database, const std::vector<Mover>& movers)
{
    const std::vector<Spot> spots = RoomRepository(database).layout().spots();
    std::vector<std::string> details;
    for (const Mover& mover : movers) {
        const auto spot = std::find_if(spots.begin(), spots.end(),
                                       [&](const Spot& each) { return each.place == mover.to; });
        details.push_back(spot == spots.end() ? std::string() : spot->rack + spot->shelf);
        if (spot != spots.end()) {
            details.push_back(std::to_string(spot->number));
        }
    }
    return details;
}

bool changePlaces(const std::vector<Mover>& movers)
{
    return movers.size() == 2 && movers[0].from && movers[1].from &&
           movers[0].from == movers[1].to && movers[1].from == movers[0].to;
}

void tell(Database& database, const std::vector<Mover>& movers, Deed& deed)
{
    std::vector<std::string> codes;
    codes.reserve(movers.size());
    for (const Mover& mover : movers) {
        codes.push_back(mover.tray.code);
    }
    deed.whom = namesOf(codes);
    const bool isAllOff = std::none_of(movers.begin(), movers.end(),
                                       [](const Mover& mover) { return mover.to.has_value(); });
    if (isAllOff) {
        deed.what = movers.size() == 1 ? Intention::MoveTray : Intention::TakeTraysOff;
        deed.with = {std::string()};
    } else if (changePlaces(movers)) {
        deed.what = Intention::SwapTrays;
        deed.with = codes;
    } else {
        deed.what = movers.size() == 1 ? Intention::MoveTray : Intention::MoveTrays;
        deed.with = spotDetails(database, movers);
    }
}

} // namespace

Done moveTrays(Database& database, const std::vector<TrayMove>& moves, Moment at, Deed& deed)
{
    TrayRepository trays(database);
    const auto movers = moversOf(trays, moves, at);
    if (!movers) {
        return passOn(movers);
    }
    if (movers->empty()) {
        return {};
    }
    for (const Mover& mover : *movers) {
        trays.closeStay(mover.tray.id, at);
    }
    for (const Mover& mover : *movers) {
        if (!mover.to) {
            continue;
        }
        if (auto isFree = checkPlaceFree(database, *mover.to, at, mover.tray.id); !isFree) {
            return isFree;
        }
        Stay stay{{}, mover.tray.id, *mover.to, at.date, at.minute, std::nullopt, std::nullopt};
        trays.insert(stay);
    }
    tell(database, *movers, deed);
    return {};
}

} // namespace plumule
