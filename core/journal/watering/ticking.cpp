#include "core/journal/watering/ticking.h"

#include "core/harvest/harvest_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_ids.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/watering/round_key.h"
#include "core/watering/watering_reason.h"
#include "core/watering/watering_repository.h"

namespace plumule {
namespace {

constexpr int kDaysOfReadings = 30; // an older reading says nothing of today's mix
constexpr int kDaysOfLooks = 60;    // as far as a drought is counted

// What these trays' part in a round is worked out from. Where the layout has no places, it is told
// of no tray where it stands.
RoundFacts factsOf(Database& database, std::vector<TrayRecord> trays, RoomLayout layout,
                   RoundKey round, Moment now)
{
    const WateringRepository waterings(database);
    const std::vector<TrayId> ids = idsOf(trays);
    RoundFacts facts;
    facts.layout = std::move(layout);
    facts.growing = std::move(trays);
    facts.waterings = waterings.wateringsSince(ids, round.date);
    facts.looks = waterings.looksSince(ids, round.date - kDaysOfLooks);
    for (const auto& [tray, cuts] : HarvestRepository(database).ofTrays(ids)) {
        for (const Harvest& cut : cuts) {
            facts.cuts[tray].push_back({cut.on, cut.minute});
        }
    }
    facts.now = now;
    return facts;
}

// When each was watered before, which a round tells.
void addLastWaterings(Database& database, RoundFacts& facts, RoundKey round)
{
    facts.lastWaterings =
        WateringRepository(database).lastBefore(idsOf(facts.growing), round.date, round.slot);
}

Round roundWithout(Database& database, RoundKey key, Moment now, const std::set<TrayId>& without)
{
    // Where a tray stood when the round gave way to the next one.
    RoomLayout layout = RoomRepository(database).layout();
    const Moment closed = timeOf(layout.room, roundAfter(key)) + -1;
    const WateringRepository waterings(database);
    RoundFacts facts = factsOf(database, TrayRepository(database, without).growingAt(closed),
                               std::move(layout), key, now);
    addLastWaterings(database, facts, key);
    facts.recipes = waterings.recipes();
    facts.readings = waterings.readings(key.date - kDaysOfReadings, key.date);
    return roundFrom(facts, key.date, key.slot);
}

} // namespace

Round wholeRound(Database& database, RoundKey key, Moment now)
{
    std::vector<DamagedTray> aside;
    Round round = askWithoutDamaged(database, aside, [&](const std::set<TrayId>& without) {
        return roundWithout(database, key, now, without);
    });
    round.damaged = std::move(aside);
    return round;
}

Round roundOfTrays(Database& database, const std::vector<TrayId>& trays, RoundKey key, Moment now)
{
    RoundFacts facts = factsOf(database, TrayRepository(database).records(trays),
                               RoomRepository(database).layout(), key, now);
    addLastWaterings(database, facts, key);
    return roundFrom(facts, key.date, key.slot);
}

int minuteOfTick(Database& database, RoundKey round, Moment now)
{
    return round.date == now.date ? now.minute
                                  : timeOf(RoomRepository(database).room(), round).minute;
}

Done checkNotAhead(RoundKey round, Moment now)
{
    if (round.date > now.date) {
        return fail(ErrorKind::Conflict, WateringReason::RoundAhead, toIso(round.date));
    }
    return {};
}

Watering storeTick(Database& database, const RoundTray& asked, RoundKey round, int minute)
{
    Watering watering;
    watering.tray = asked.tray;
    watering.on = round.date;
    watering.slot = round.slot;
    watering.minute = minute;
    watering.method = asked.method;
    watering.water = asked.water;
    watering.amount = asked.amount;
    WateringRepository(database).insert(watering);
    return watering;
}

Result<RoundTray> openTick(Database& database, TrayId tray, RoundKey round, Moment now)
{
    auto known = TrayRepository(database).records(std::vector{tray});
    if (known.empty()) {
        return fail(ErrorKind::NotFound, TrayReason::Unknown);
    }
    const std::string code = known.front().tray.code;
    const RoomLayout withoutPlaces{RoomRepository(database).room(), {}, {}, {}};
    const Round asked = roundFrom(factsOf(database, std::move(known), withoutPlaces, round, now),
                                  round.date, round.slot);
    if (asked.trays.empty() || asked.trays.front().isAside()) {
        return fail(ErrorKind::Conflict, WateringReason::NotAsked, code);
    }
    if (asked.trays.front().isDone()) {
        return fail(ErrorKind::Conflict, WateringReason::TickedAlready, code);
    }
    return asked.trays.front();
}

} // namespace plumule
