#include "core/journal/week/repeat_sowing.h"

#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_reason.h"
#include "core/trial/trial_plan_repository.h"
#include "core/variety/variety_repository.h"
#include "core/week/week_reason.h"

#include <algorithm>

namespace plumule {
namespace {

// The oldest that reaches, or of which it is not known what is left; else the oldest.
std::optional<SeedLotId> lotFor(Database& database, VarietyId variety, std::optional<Mass> needed)
{
    const auto lots = VarietyRepository(database).stock(variety, Listed::InUse);
    const auto reaches = std::find_if(lots.begin(), lots.end(), [&](const SeedLotStock& stock) {
        return !stock.left || !needed || *needed <= *stock.left;
    });
    if (reaches != lots.end()) {
        return reaches->lot.id;
    }
    return lots.empty() ? std::nullopt : std::optional(lots.front().lot.id);
}

Result<std::vector<PlaceId>> placesFor(Database& database, int trays)
{
    const auto held = TrialPlanRepository(database).heldPlaces(TrialId());
    std::vector<PlaceId> places;
    for (const Spot& spot : RoomRepository(database).freeSpots()) {
        if (!held.contains(spot.place)) {
            places.push_back(spot.place);
        }
    }
    const int free = static_cast<int>(places.size());
    if (free < trays) {
        return fail(ErrorKind::Conflict, WeekReason::PlacesShort, free, trays);
    }
    places.resize(static_cast<std::size_t>(trays));
    return places;
}

Result<std::vector<PieceId>> piecesFor(Database& database, const Medium& medium, int trays)
{
    std::vector<PieceId> clean;
    for (const PieceRecord& record : MediumRepository(database).pieces(medium.id, Listed::InUse)) {
        if (record.isFree()) {
            clean.push_back(record.piece.id);
        }
    }
    const int free = static_cast<int>(clean.size());
    if (free < trays) {
        return fail(ErrorKind::Conflict, WeekReason::PiecesShort, medium.name, free, trays);
    }
    clean.resize(static_cast<std::size_t>(trays));
    return clean;
}

} // namespace

Result<SowingDraft> draftFor(Database& database, const Repeat& repeat, Moment now)
{
    const auto protocol = VarietyRepository(database).protocol(repeat.variety);
    const auto medium = MediumRepository(database).find(repeat.medium);
    if (!protocol || !medium) {
        return fail(ErrorKind::NotFound,
                    protocol ? TrayReason::MediumUnknown : TrayReason::VarietyUnknown);
    }
    SowingDraft draft;
    draft.variety = repeat.variety;
    draft.medium = repeat.medium;
    draft.count = repeat.trays;
    draft.at = now;
    draft.startsWithSoak = soakMinutes(*protocol) > 0;
    const auto seed = protocol->variety.seedPerTray;
    draft.seedLot =
        lotFor(database, repeat.variety, seed ? std::optional(*seed * repeat.trays) : std::nullopt);
    const auto places = placesFor(database, repeat.trays);
    if (!places) {
        return passOn(places);
    }
    draft.places = *places;
    if (medium->isReusable) {
        const auto pieces = piecesFor(database, *medium, repeat.trays);
        if (!pieces) {
            return passOn(pieces);
        }
        draft.pieces = *pieces;
    }
    return draft;
}

} // namespace plumule
