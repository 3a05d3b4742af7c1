#include "core/rack/rack.h"

#include "core/climate/climate_sums.h"
#include "core/watering/round_key.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace plumule {
namespace {

constexpr double kMilliwattsAWatt = 1000;
constexpr double kLampMinutesAnHour = 60;

// What the present round says of trays, to be looked up.
struct RoundSays
{
    std::set<TrayId> thirsty;
    std::set<TrayId> ready;
    std::set<TrayId> due;
};

RoundSays saidIn(const Round& round)
{
    RoundSays says;
    for (const RoundTray& tray : round.trays) {
        const bool isOpen = tray.isAsked && !tray.isDone() && tray.between.empty();
        const bool isMissed = tray.drought && tray.drought->missed;
        if (isOpen && (isMissed || tray.isForgotten())) {
            says.thirsty.insert(tray.tray);
        }
    }
    for (const StageDecision& decision : round.decisions) {
        (decision.to ? says.ready : says.due).insert(decision.tray);
    }
    return says;
}

// A tray whose harvest has gone by and is no longer asked for was cut, and grows on.
std::optional<Date> cutDayOf(const StagePlan& plan, const RackFacts& facts, bool isDue)
{
    if (plan.spans.empty()) {
        return std::nullopt;
    }
    const RoundKey shown = roundShowing(facts.layout.room, plan.harvest);
    const bool isPast = shown <= RoundKey{facts.round.date, facts.round.slot};
    return isPast && !isDue ? std::nullopt : std::optional(shown.date);
}

StandingTray standingOf(const TrayRecord& record, const RackFacts& facts, const RoundSays& says)
{
    StandingTray tray;
    tray.tray = record.tray.id;
    tray.code = record.tray.code;
    tray.variety = record.variety;
    tray.medium = record.medium;
    tray.trial = record.trialCode;
    tray.plan = calendarOf(record);
    if (tray.plan.current) {
        tray.stage = tray.plan.spans[*tray.plan.current].stage;
    }
    tray.day = dayCount(record.tray.sownOn, facts.today);
    tray.isThirsty = says.thirsty.contains(tray.tray);
    tray.isReady = says.ready.contains(tray.tray);
    tray.isDue = says.due.contains(tray.tray);
    tray.cutOn = cutDayOf(tray.plan, facts, tray.isDue);
    return tray;
}

ShelfLight lightOf(const Shelf& shelf, const std::map<ShelfId, double>& ppfds)
{
    ShelfLight light;
    if (shelf.lightMilliwatts) {
        light.watts = static_cast<double>(*shelf.lightMilliwatts) / kMilliwattsAWatt;
    }
    if (shelf.lightMinutes) {
        light.hours = *shelf.lightMinutes / kLampMinutesAnHour;
    }
    if (const auto found = ppfds.find(shelf.id); found != ppfds.end()) {
        light.ppfd = found->second;
    }
    return light;
}

void hold(StandingPlace& place, const std::vector<PlannedSowing>& planned)
{
    for (const PlannedSowing& sowing : planned) {
        const auto& held = sowing.places;
        const bool isHeld = std::find(held.begin(), held.end(), place.spot.place) != held.end();
        if (isHeld && (!place.heldFor || sowing.from < place.heldFrom)) {
            place.heldFor = sowing.whose;
            place.heldFrom = sowing.from;
        }
    }
}

// The racks without their trays.
std::vector<StandingRack> emptyRacks(const RackFacts& facts)
{
    std::vector<StandingRack> racks;
    const std::vector<Spot> spots = facts.layout.spots();
    for (const Rack& rack : facts.layout.racks) {
        racks.push_back({rack, {}});
        for (const Shelf& shelf : facts.layout.shelves) {
            if (shelf.rack != rack.id) {
                continue;
            }
            StandingShelf standing{shelf, lightOf(shelf, facts.ppfds), {}};
            for (const Spot& spot : spots) {
                if (spot.shelfId == shelf.id) {
                    standing.places.push_back({spot, std::nullopt, std::nullopt, {}});
                    hold(standing.places.back(), facts.planned);
                }
            }
            racks.back().shelves.push_back(std::move(standing));
        }
    }
    return racks;
}

} // namespace

std::optional<double> ShelfLight::dli() const
{
    return ppfd && hours ? std::optional(dailyLight(*ppfd, *hours)) : std::nullopt;
}

int StandingRack::places() const
{
    return std::accumulate(shelves.begin(), shelves.end(), 0,
                           [](int sum, const StandingShelf& shelf) {
                               return sum + static_cast<int>(shelf.places.size());
                           });
}

int StandingRack::taken() const
{
    int sum = 0;
    for (const StandingShelf& shelf : shelves) {
        sum += static_cast<int>(
            std::count_if(shelf.places.begin(), shelf.places.end(),
                          [](const StandingPlace& place) { return place.tray.has_value(); }));
    }
    return sum;
}

int RoomRacks::places() const
{
    return std::accumulate(racks.begin(), racks.end(), 0,
                           [](int sum, const StandingRack& rack) { return sum + rack.places(); });
}

int RoomRacks::taken() const
{
    return std::accumulate(racks.begin(), racks.end(), 0,
                           [](int sum, const StandingRack& rack) { return sum + rack.taken(); });
}

std::vector<const StandingPlace*> RoomRacks::walk() const
{
    std::vector<const StandingPlace*> all;
    for (const StandingRack& rack : racks) {
        for (const StandingShelf& shelf : rack.shelves) {
            for (const StandingPlace& place : shelf.places) {
                all.push_back(&place);
            }
        }
    }
    return all;
}

const StandingPlace* RoomRacks::placeOf(TrayId tray) const
{
    const auto all = walk();
    const auto found = std::find_if(all.begin(), all.end(), [&](const StandingPlace* place) {
        return place->tray && place->tray->tray == tray;
    });
    return found == all.end() ? nullptr : *found;
}

const StandingShelf* RoomRacks::shelfOf(PlaceId place) const
{
    for (const StandingRack& rack : racks) {
        for (const StandingShelf& shelf : rack.shelves) {
            for (const StandingPlace& each : shelf.places) {
                if (each.spot.place == place) {
                    return &shelf;
                }
            }
        }
    }
    return nullptr;
}

const StandingTray* RoomRacks::find(TrayId tray) const
{
    if (const StandingPlace* place = placeOf(tray)) {
        return &*place->tray;
    }
    const auto found = std::find_if(offRacks.begin(), offRacks.end(),
                                    [&](const StandingTray& each) { return each.tray == tray; });
    return found == offRacks.end() ? nullptr : &*found;
}

RoomRacks racksFrom(const RackFacts& facts)
{
    RoomRacks room;
    room.today = facts.today;
    room.racks = emptyRacks(facts);
    const RoundSays says = saidIn(facts.round);
    std::map<PlaceId, StandingTray> byPlace;
    for (const TrayRecord& record : facts.growing) {
        StandingTray tray = standingOf(record, facts, says);
        if (record.place) {
            byPlace.emplace(*record.place, std::move(tray));
        } else {
            room.offRacks.push_back(std::move(tray));
        }
    }
    std::vector<std::optional<Date>> cuts;
    for (StandingRack& rack : room.racks) {
        for (StandingShelf& shelf : rack.shelves) {
            for (StandingPlace& place : shelf.places) {
                if (const auto found = byPlace.find(place.spot.place); found != byPlace.end()) {
                    cuts.push_back(found->second.cutOn);
                    place.tray = std::move(found->second);
                }
            }
        }
    }
    std::sort(room.offRacks.begin(), room.offRacks.end(),
              [](const StandingTray& a, const StandingTray& b) { return a.code < b.code; });
    room.evenings = freeEvenings(room.places(), cuts, facts.planned, facts.today);
    return room;
}

std::optional<PlannedSowing> plannedSowingOf(const TrialDraft& draft, const Protocol& protocol,
                                             const Room& room)
{
    const int growing = minutesToHarvest(protocol);
    if (draft.isSown() || draft.trays.empty() || growing <= 0) {
        return std::nullopt;
    }
    const int soaking = draft.plan.startsWithSoak ? soakMinutes(protocol) : 0;
    PlannedSowing sowing;
    sowing.whose = draft.trial.code;
    sowing.from = draft.plan.sowOn;
    sowing.until = roundShowing(room, draft.plan.sowAt() + soaking + growing).date;
    sowing.trays = static_cast<int>(draft.trays.size());
    for (const PlannedTray& tray : draft.trays) {
        if (tray.place) {
            sowing.places.push_back(*tray.place);
        }
    }
    return sowing;
}

} // namespace plumule
