#include "core/journal/harvest/weigh_in.h"

#include "core/harvest/harvest_repository.h"
#include "core/harvest/weighing_rules.h"
#include "core/room/room_repository.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_ids.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_repository.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr int kResidueDaysBack = 14;

std::map<PlaceId, Spot> spotsForScale(Database& database)
{
    std::map<PlaceId, Spot> spots;
    for (const Spot& spot : RoomRepository(database).layout().spots()) {
        spots.emplace(spot.place, spot);
    }
    return spots;
}

std::optional<Spot> spotAtScale(const TrayRecord& record, const std::map<PlaceId, Spot>& spots)
{
    const auto found = record.place ? spots.find(*record.place) : spots.end();
    return found == spots.end() ? std::nullopt : std::optional(found->second);
}

DueRow dueRowOf(const TrayRecord& record, const std::map<PlaceId, Spot>& spots, Moment due)
{
    return {record.tray.id, record.tray.code, spotAtScale(record, spots),
            record.medium,  record.variety,   due};
}

// Trays that stand nowhere come last.
bool comesFirst(const DueRow& a, const DueRow& b)
{
    if (a.spot.has_value() != b.spot.has_value()) {
        return a.spot.has_value();
    }
    if (a.spot && a.spot->rank != b.spot->rank) {
        return a.spot->rank < b.spot->rank;
    }
    return a.code < b.code;
}

std::vector<DueRow> cutsDue(Database& database, Date date)
{
    const std::vector<TrayRecord> growing = TrayRepository(database).growing();
    const auto cuts = HarvestRepository(database).ofTrays(idsOf(growing));
    const auto spots = spotsForScale(database);
    const auto standing = TrayRepository(database).occupied();
    std::vector<DueRow> due;
    for (TrayRecord record : growing) {
        if (record.stages.empty()) {
            continue;
        }
        const Moment harvest = planOf(record.stages).harvest;
        const auto ofTray = cuts.find(record.tray.id);
        const bool isDue =
            isCutDue(harvest, ofTray == cuts.end() ? std::vector<Harvest>{} : ofTray->second, date);
        if (isDue) {
            // A growing tray that was taken off the racks has a last place, but stands nowhere.
            const auto here = record.place ? standing.find(*record.place) : standing.end();
            if (here == standing.end() || here->second != record.tray.id) {
                record.place.reset();
            }
            due.push_back(dueRowOf(record, spots, harvest));
        }
    }
    std::sort(due.begin(), due.end(), comesFirst);
    return due;
}

std::vector<WeighedRow> weighedOn(Database& database, Date date)
{
    std::vector<Harvest> harvests = HarvestRepository(database).between(date, date);
    std::reverse(harvests.begin(), harvests.end());
    std::vector<TrayId> trays;
    trays.reserve(harvests.size());
    for (const Harvest& harvest : harvests) {
        trays.push_back(harvest.tray);
    }
    std::map<TrayId, TrayRecord> records;
    for (TrayRecord& record : TrayRepository(database).records(trays)) {
        const TrayId tray = record.tray.id;
        records.emplace(tray, std::move(record));
    }
    std::vector<WeighedRow> rows;
    for (const Harvest& harvest : harvests) {
        const TrayRecord& record = pointedAt(records, harvest.tray, "harvest", harvest.id);
        rows.push_back(
            {harvest, record.tray.code, record.medium, record.variety, record.tray.seed});
    }
    return rows;
}

TrialSoFar::Dot dotOf(const TrayRecord& record, const std::map<TrayId, Mass>& yields)
{
    TrialSoFar::Dot dot{record.tray.id, record.tray.code, record.medium, std::nullopt,
                        record.tray.block};
    const auto found = yields.find(record.tray.id);
    if (record.tray.state == TrayState::Harvested && found != yields.end()) {
        dot.yield = found->second;
    }
    return dot;
}

} // namespace

WeighIn weighInOn(Database& database, Date date)
{
    WeighIn answer;
    answer.date = date;
    answer.due = cutsDue(database, date);
    answer.done = weighedOn(database, date);
    return answer;
}

std::vector<DueRow> residuesDueOn(Database& database, Date date)
{
    const std::vector<TrayId> trays =
        HarvestRepository(database).traysWithoutResidue(date - kResidueDaysBack, date);
    const auto spots = spotsForScale(database);
    std::map<TrayId, DueRow> rows;
    for (const TrayRecord& record : TrayRepository(database).records(trays)) {
        const Tray& tray = record.tray;
        if (tray.state == TrayState::Harvested) {
            const Moment ended{tray.endedOn.value_or(date), tray.endedMinute.value_or(0)};
            rows.emplace(tray.id, dueRowOf(record, spots, ended));
        }
    }
    std::vector<DueRow> due;
    for (const TrayId tray : trays) {
        if (const auto found = rows.find(tray); found != rows.end()) {
            due.push_back(found->second);
        }
    }
    return due;
}

std::optional<TrialSoFar> trialSoFarOf(Database& database, const Tray& tray)
{
    TrayRepository trays(database);
    const auto trial = tray.trial ? TrialRepository(database).find(*tray.trial) : std::nullopt;
    if (!trial) {
        return std::nullopt;
    }
    TrayFilter filter;
    filter.trial = trial->id;
    std::vector<TrayRecord> records = trays.records(filter);
    std::sort(records.begin(), records.end(),
              [](const TrayRecord& a, const TrayRecord& b) { return a.tray.code < b.tray.code; });
    const auto yields = HarvestRepository(database).yieldsOfTrays(idsOf(records));
    TrialSoFar answer{*trial, {}};
    for (const TrayRecord& record : records) {
        if (record.tray.state != TrayState::Discarded && !record.tray.setAsideReason) {
            answer.dots.push_back(dotOf(record, yields));
        }
    }
    return answer;
}

} // namespace plumule
