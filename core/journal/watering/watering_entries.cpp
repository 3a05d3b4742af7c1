#include "core/journal/watering/watering_entries.h"

#include "core/journal/ledger/ledger.h"
#include "core/journal/watering/ticking.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/watering/round_key.h"
#include "core/watering/watering_reason.h"
#include "core/watering/watering_repository.h"
#include "core/watering/watering_rules.h"

namespace plumule {
namespace {

template <class Row>
std::string codesOf(const std::vector<Row>& rows)
{
    const auto codeIn = [](const auto& row) {
        if constexpr (requires { row.code; }) {
            return row.code;
        } else {
            return row.tray.code;
        }
    };
    if (rows.size() > 4) {
        return std::to_string(rows.size());
    }
    std::string codes;
    for (const Row& row : rows) {
        codes += (codes.empty() ? "" : ", ") + codeIn(row);
    }
    return codes;
}

std::string codeOf(Database& database, TrayId tray)
{
    const auto found = TrayRepository(database).find(tray);
    return found ? found->code : std::string();
}

} // namespace

Result<Round> WateringEntries::round(Date date, Slot slot)
{
    return m_ledger.ask([&](Database& database) {
        return wholeRound(database, {date, slot}, m_ledger.clock().now());
    });
}

Result<Round> WateringEntries::roundNow()
{
    return m_ledger.ask([&](Database& database) {
        const Moment now = m_ledger.clock().now();
        return wholeRound(database, roundOf(RoomRepository(database).room(), now), now);
    });
}

Result<std::optional<RoundTray>> WateringEntries::inRound(TrayId tray, Date date, Slot slot)
{
    return m_ledger.ask([&](Database& database) -> Result<std::optional<RoundTray>> {
        const Round part = roundOfTrays(database, {tray}, {date, slot}, m_ledger.clock().now());
        return part.trays.empty() ? std::nullopt : std::optional(part.trays.front());
    });
}

Result<Watering> WateringEntries::tick(TrayId tray, Date date, Slot slot)
{
    const RoundKey round{date, slot};
    const Moment now = m_ledger.clock().now();
    return m_ledger.record(
        Intention::TickWatering, [&](Database& database, Deed& deed) -> Result<Watering> {
            if (auto checked = checkNotAhead(round, now); !checked) {
                return passOn(checked);
            }
            const auto asked = openTick(database, tray, round, now);
            if (!asked) {
                return passOn(asked);
            }
            deed.whom = asked->code;
            return storeTick(database, *asked, round, minuteOfTick(database, round, now));
        });
}

Result<std::vector<Watering>> WateringEntries::tickAll(const std::vector<TrayId>& trays, Date date,
                                                       Slot slot)
{
    const RoundKey key{date, slot};
    const Moment now = m_ledger.clock().now();
    return m_ledger.record(Intention::TickAllWaterings,
                           [&](Database& database, Deed& deed) -> Result<std::vector<Watering>> {
                               if (auto checked = checkNotAhead(key, now); !checked) {
                                   return passOn(checked);
                               }
                               Round asked = roundOfTrays(database, trays, key, now);
                               std::erase_if(asked.trays, [](const RoundTray& tray) {
                                   return tray.isDone() || tray.isAside() || tray.isAsNeeded;
                               });
                               const int minute = minuteOfTick(database, key, now);
                               std::vector<Watering> given;
                               for (const RoundTray& tray : asked.trays) {
                                   given.push_back(storeTick(database, tray, key, minute));
                               }
                               deed.whom = codesOf(asked.trays);
                               return given;
                           });
}

Done WateringEntries::untick(TrayId tray, Date date, Slot slot)
{
    return m_ledger.record(Intention::UntickWatering, [&](Database& database, Deed& deed) -> Done {
        WateringRepository waterings(database);
        const auto given = waterings.find(tray, date, slot);
        const auto looked = waterings.findLook(tray, date, slot);
        if (!given && !looked) {
            return fail(ErrorKind::NotFound, WateringReason::NotTicked, codeOf(database, tray));
        }
        deed.whom = codeOf(database, tray);
        if (given) {
            waterings.remove(given->id);
        } else {
            waterings.remove(looked->id);
        }
        return {};
    });
}

Result<std::vector<WateringLook>> WateringEntries::needNothing(const std::vector<TrayId>& trays,
                                                               Date date, Slot slot)
{
    const RoundKey key{date, slot};
    const Moment now = m_ledger.clock().now();
    return m_ledger.record(
        Intention::FindNoNeed,
        [&](Database& database, Deed& deed) -> Result<std::vector<WateringLook>> {
            if (auto checked = checkNotAhead(key, now); !checked) {
                return passOn(checked);
            }
            Round asked = roundOfTrays(database, trays, key, now);
            std::erase_if(asked.trays,
                          [](const RoundTray& tray) { return tray.isDone() || !tray.isAsNeeded; });
            const int minute = minuteOfTick(database, key, now);
            std::vector<WateringLook> looks;
            for (const RoundTray& tray : asked.trays) {
                looks.push_back({{}, tray.tray, key.date, key.slot, minute});
                WateringRepository(database).insert(looks.back());
            }
            deed.whom = codesOf(asked.trays);
            return looks;
        });
}

Result<std::vector<Watering>> WateringEntries::giveBetween(const BetweenDraft& draft)
{
    return m_ledger.record(
        Intention::WaterAsNeeded,
        [&](Database& database, Deed& deed) -> Result<std::vector<Watering>> {
            auto records = TrayRepository(database).records(draft.trays);
            if (auto checked = checkBetween(draft, records, m_ledger.clock().now()); !checked) {
                return passOn(checked);
            }
            const RoundKey round = roundOf(RoomRepository(database).room(), draft.at);
            std::vector<Watering> given;
            for (const TrayRecord& record : records) {
                given.push_back({{},
                                 record.tray.id,
                                 round.date,
                                 round.slot,
                                 draft.at.minute,
                                 draft.method,
                                 draft.water,
                                 draft.amount,
                                 true});
                WateringRepository(database).insert(given.back());
            }
            deed.whom = codesOf(records);
            return given;
        });
}

Done WateringEntries::remove(WateringId id)
{
    return m_ledger.record(Intention::RemoveWatering, [&](Database& database, Deed& deed) -> Done {
        WateringRepository waterings(database);
        const auto given = waterings.find(id);
        if (!given) {
            return fail(ErrorKind::NotFound, WateringReason::Unknown);
        }
        deed.whom = codeOf(database, given->tray);
        waterings.remove(id);
        return {};
    });
}

Result<WaterReading> WateringEntries::noteReading(const WaterReading& reading)
{
    return m_ledger.record(
        Intention::NoteReading, [&](Database& database, Deed& deed) -> Result<WaterReading> {
            if (auto checked = checkReading(reading); !checked) {
                return passOn(checked);
            }
            if (reading.tray && !TrayRepository(database).find(*reading.tray)) {
                return fail(ErrorKind::NotFound, TrayReason::Unknown);
            }
            deed.whom = reading.tray ? codeOf(database, *reading.tray) : toText(reading.water);
            WaterReading stored = reading;
            stored.id = {};
            WateringRepository(database).insert(stored);
            return stored;
        });
}

Result<std::vector<WaterRecipe>> WateringEntries::recipes()
{
    return m_ledger.ask([](Database& database) { return WateringRepository(database).recipes(); });
}

Result<WaterRecipe> WateringEntries::changeRecipe(const WaterRecipe& recipe)
{
    return m_ledger.record(Intention::ChangeRecipe,
                           [&](Database& database, Deed& deed) -> Result<WaterRecipe> {
                               if (auto checked = checkRecipe(recipe); !checked) {
                                   return passOn(checked);
                               }
                               WateringRepository waterings(database);
                               WaterRecipe stored = recipe;
                               // There is one recipe a kind: whichever stands is the one that is
                               // changed.
                               for (const WaterRecipe& present : waterings.recipes()) {
                                   if (present.water == recipe.water) {
                                       stored.id = present.id;
                                   }
                               }
                               deed.whom = toText(recipe.water);
                               if (waterings.find(stored.id)) {
                                   waterings.update(stored);
                               } else {
                                   stored.id = {};
                                   waterings.insert(stored);
                               }
                               return stored;
                           });
}

} // namespace plumule
