#include "core/journal/rack/rack_entries.h"

#include "core/climate/climate_repository.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/tray/moving.h"
#include "core/journal/watering/ticking.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_plan_repository.h"
#include "core/variety/variety_repository.h"
#include "core/watering/round_key.h"

#include <algorithm>

namespace plumule {
namespace {

// The trials that are planned and not sown yet. Other sowings that are planned go in beside them.
std::vector<PlannedSowing> plannedSowings(Database& database, const Room& room)
{
    VarietyRepository varieties(database);
    std::vector<PlannedSowing> planned;
    for (const TrialDraft& draft : TrialPlanRepository(database).all()) {
        if (draft.isSown()) {
            continue;
        }
        const auto protocol = varieties.protocol(draft.plan.variety);
        if (auto sowing = protocol ? plannedSowingOf(draft, *protocol, room) : std::nullopt) {
            planned.push_back(std::move(*sowing));
        }
    }
    return planned;
}

// With the place where each stands now: a tray that was taken off still knows its last one.
std::vector<TrayRecord> standingTrays(Database& database, const std::set<TrayId>& without)
{
    const TrayRepository trays(database, without);
    std::vector<TrayRecord> growing = trays.growing();
    const auto occupied = trays.occupied();
    for (TrayRecord& record : growing) {
        const auto found = record.place ? occupied.find(*record.place) : occupied.end();
        if (found == occupied.end() || found->second != record.tray.id) {
            record.place.reset();
        }
    }
    return growing;
}

} // namespace

Result<RoomRacks> RackEntries::racks()
{
    return m_ledger.ask([&](Database& database) {
        const Moment now = m_ledger.clock().now();
        RackFacts facts;
        facts.layout = RoomRepository(database).layout();
        facts.today = now.date;
        facts.round = wholeRound(database, roundOf(facts.layout.room, now), now);
        facts.planned = plannedSowings(database, facts.layout.room);
        for (const ShelfPpfd& ppfd : ClimateRepository(database).ppfds()) {
            facts.ppfds[ppfd.shelf] = static_cast<double>(ppfd.milli) / kMilli;
        }
        std::vector<DamagedTray> aside;
        facts.growing = askWithoutDamaged(database, aside, [&](const std::set<TrayId>& without) {
            return standingTrays(database, without);
        });
        RoomRacks room = racksFrom(facts);
        room.damaged = std::move(aside);
        return room;
    });
}

Done RackEntries::move(const std::vector<TrayMove>& moves, Moment at)
{
    return m_ledger.record(Intention::MoveTrays, [&](Database& database, Deed& deed) {
        return moveTrays(database, moves, at, deed);
    });
}

} // namespace plumule
