#include "core/journal/tray/tray_entries.h"

#include "core/cost/cost_repository.h"
#include "core/harvest/harvest_repository.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/tray/sowing.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_ids.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"
#include "core/variety/variety_repository.h"
#include "core/watering/watering_repository.h"

#include <utility>

namespace plumule {
namespace {

// Where trays stand now, by tray.
std::map<TrayId, Spot> standingSpots(Database& database, const std::set<TrayId>& without = {})
{
    const auto occupied = TrayRepository(database, without).occupied();
    std::map<TrayId, Spot> byTray;
    for (const Spot& spot : RoomRepository(database).layout().spots()) {
        if (const auto found = occupied.find(spot.place); found != occupied.end()) {
            byTray.emplace(found->second, spot);
        }
    }
    return byTray;
}

template <class Value>
std::optional<Value> valueAt(const std::map<TrayId, Value>& byTray, TrayId tray)
{
    const auto found = byTray.find(tray);
    return found == byTray.end() ? std::nullopt : std::optional(found->second);
}

std::vector<TrayListRow> listed(Database& database, std::vector<TrayRecord> records,
                                const std::set<TrayId>& without)
{
    const auto yields = HarvestRepository(database).yieldsOfTrays(idsOf(records));
    const auto spots = standingSpots(database, without);
    std::vector<TrayListRow> rows;
    rows.reserve(records.size());
    for (TrayRecord& record : records) {
        TrayListRow row;
        row.spot = valueAt(spots, record.tray.id);
        row.plan = calendarOf(record);
        row.yield = valueAt(yields, record.tray.id);
        row.record = std::move(record);
        rows.push_back(std::move(row));
    }
    return rows;
}

void addCost(Database& database, TraySheet& sheet)
{
    const TrayFacts facts{&sheet.record, sheet.stays, sheet.waterings, sheet.harvests,
                          sheet.residues};
    const CostFacts costs = CostRepository(database).factsOfLot(sheet.record.tray.seedLot);
    const TrayUse use = useOf(facts, costs.layout);
    sheet.cost = costOf(use, costs);
    sheet.missingPrices = missingPrices(use, costs);
    sheet.seedLacks = seedLacks(use, costs);
    Mass yield;
    for (const Harvest& harvest : sheet.harvests) {
        yield += harvest.net;
    }
    if (yield.count() > 0 && sheet.cost.total() > 0) {
        sheet.costPerGram = sheet.cost.total() / inGrams(yield);
    }
}

// What grows of those that the filter lets through; none where it lets none of them through.
std::optional<TrayFilter> growingOf(TrayFilter filter)
{
    if (filter.state.value_or(TrayState::Growing) != TrayState::Growing) {
        return std::nullopt;
    }
    filter.state = TrayState::Growing;
    return filter;
}

} // namespace

Result<std::vector<TrayListRow>> TrayEntries::list(const TrayFilter& filter)
{
    return m_ledger.ask([&](Database& database) {
        return listed(database, TrayRepository(database).records(filter), {});
    });
}

Result<TrayListing> TrayEntries::listing(const TrayFilter& filter, const TrayPage& page)
{
    return m_ledger.ask([&](Database& database) {
        TrayListing listing;
        listing.rows =
            askWithoutDamaged(database, listing.damaged, [&](const std::set<TrayId>& without) {
                const TrayRepository trays(database, without);
                const std::vector<TrayId> ids = trays.ids(filter, page);
                listing.hasMore = page.rows && std::cmp_equal(ids.size(), *page.rows);
                return listed(database, trays.records(ids), without);
            });
        return listing;
    });
}

Result<TrayCounts> TrayEntries::counts(const TrayFilter& filter)
{
    return m_ledger.ask([&](Database& database) {
        const TrayRepository trays(database);
        TrayCounts counts;
        counts.all = trays.count(filter);
        const auto growing = growingOf(filter);
        counts.growing = growing ? trays.count(*growing) : 0;
        return counts;
    });
}

Result<std::vector<TrayId>> TrayEntries::growingIn(const TrayFilter& filter)
{
    return m_ledger.ask([&](Database& database) -> Result<std::vector<TrayId>> {
        const auto growing = growingOf(filter);
        return growing ? TrayRepository(database).ids(*growing, {}) : std::vector<TrayId>();
    });
}

bool TrayEntries::hasAny(TrayState state)
{
    return m_ledger
        .ask([&](Database& database) -> Result<bool> {
            return TrayRepository(database).hasAny(state);
        })
        .value_or(false);
}

Result<TraySheet> TrayEntries::sheet(TrayId tray)
{
    return m_ledger.ask([&](Database& database) -> Result<TraySheet> {
        const TrayRepository trays(database);
        auto record = trays.record(tray);
        if (!record) {
            return fail(ErrorKind::NotFound, TrayReason::Unknown);
        }
        HarvestRepository harvests(database);
        TraySheet sheet;
        sheet.record = std::move(*record);
        sheet.spot = valueAt(standingSpots(database), tray);
        sheet.plan = calendarOf(sheet.record);
        sheet.stays = trays.stays(tray);
        sheet.waterings = WateringRepository(database).waterings(tray);
        sheet.heights = trays.heights(tray);
        sheet.harvests = harvests.ofTray(tray);
        sheet.residues = harvests.residuesOfTray(tray);
        sheet.notes = trays.notes(tray);
        sheet.photos = trays.photos(tray);
        sheet.currency = RoomRepository(database).room().currency;
        addCost(database, sheet);
        return sheet;
    });
}

Result<TrayId> TrayEntries::find(const std::string& code)
{
    return m_ledger.ask([&](Database& database) -> Result<TrayId> {
        const auto tray = TrayRepository(database).findByCode(code);
        if (!tray) {
            return fail(ErrorKind::NotFound, TrayReason::CodeUnknown, code);
        }
        return tray->id;
    });
}

Result<std::set<HistoryId>> TrayEntries::actsOn(TrayId tray, int count)
{
    return m_ledger.ask([&](Database& database) {
        return History(database).latestAbout("tray", tray.value, count);
    });
}

Result<std::string> TrayEntries::nextCode(VarietyId variety)
{
    return m_ledger.ask([&](Database& database) -> Result<std::string> {
        const auto found = VarietyRepository(database).find(variety);
        if (!found) {
            return fail(ErrorKind::NotFound, TrayReason::VarietyUnknown);
        }
        return nextCodes(database, *found, 1).front();
    });
}

} // namespace plumule
