#include "core/trial/trial_places.h"

#include "core/room/room_repository.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_plan_repository.h"

namespace plumule {
namespace {

// Trays that stand in the way at that moment. One brought in without stages has no forecast.
std::set<TrayId> stillGrowingAt(Database& database, Moment at)
{
    std::set<TrayId> growing;
    for (const TrayRecord& record : TrayRepository(database).growing()) {
        if (record.stages.empty() || planOf(record.stages).harvest > at) {
            growing.insert(record.tray.id);
        }
    }
    return growing;
}

std::vector<FreeShelf> shelvesOf(const std::vector<Spot>& spots)
{
    std::vector<FreeShelf> shelves;
    for (const Spot& spot : spots) {
        if (shelves.empty() || shelves.back().shelf != spot.shelfId) {
            shelves.push_back({spot.shelfId, {}});
        }
        shelves.back().places.push_back({spot.place, spot.shelfId, spot.number});
    }
    return shelves;
}

} // namespace

std::vector<Spot> freeSpotsFor(Database& database, const TrialDraft& draft)
{
    const auto growing = stillGrowingAt(database, draft.plan.sowAt());
    std::set<PlaceId> taken = TrialPlanRepository(database).heldPlaces(draft.trial.id);
    for (const auto& [place, tray] : TrayRepository(database).occupied()) {
        if (growing.count(tray) > 0) {
            taken.insert(place);
        }
    }
    std::vector<Spot> spots = RoomRepository(database).layout().spots();
    std::erase_if(spots, [&](const Spot& spot) { return taken.count(spot.place) > 0; });
    return spots;
}

Result<std::vector<PlannedTray>> drawFor(Database& database, const TrialDraft& draft)
{
    return drawLayout(draft, shelvesOf(freeSpotsFor(database, draft)));
}

} // namespace plumule
