#include "core/journal/trial/trial_reading.h"

#include "core/harvest/harvest_repository.h"
#include "core/harvest/weighing_rules.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_ids.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_plan_repository.h"
#include "core/trial/trial_reason.h"
#include "core/trial/trial_repository.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace plumule {
namespace {

bool isBeforeByCode(const TrayRecord& a, const TrayRecord& b)
{
    return std::tie(a.tray.code, a.tray.id) < std::tie(b.tray.code, b.tray.id);
}

std::vector<TrayRecord> traysOf(Database& database, TrialId trial)
{
    TrayFilter filter;
    filter.trial = trial;
    std::vector<TrayRecord> records = TrayRepository(database).records(filter);
    std::sort(records.begin(), records.end(), isBeforeByCode);
    return records;
}

std::map<PlaceId, Spot> spotsOfRoom(Database& database)
{
    std::map<PlaceId, Spot> spots;
    for (const Spot& spot : RoomRepository(database).layout().spots()) {
        spots.emplace(spot.place, spot);
    }
    return spots;
}

Mass sumOf(const std::vector<Residue>& residues)
{
    Mass sum;
    for (const Residue& residue : residues) {
        sum += residue.net;
    }
    return sum;
}

// Where the layout puts the tray, and how it is fed.
void placeByPlan(TrialTray& tray, const TrialDraft& draft)
{
    for (const PlannedTray& planned : draft.trays) {
        if (planned.tray == tray.record.tray.id) {
            tray.block = tray.record.tray.block.value_or(planned.block);
            tray.position = planned.position;
            tray.feeding = draft.treatments[static_cast<std::size_t>(planned.treatment)].feeding;
        }
    }
}

template <class Map>
std::optional<typename Map::mapped_type> valueAt(const Map& map, const typename Map::key_type& key)
{
    const auto found = map.find(key);
    return found == map.end() ? std::nullopt : std::optional(found->second);
}

std::vector<TrialTray> trialTrays(Database& database, TrialId trial,
                                  const std::optional<TrialDraft>& draft)
{
    std::vector<TrayRecord> records = traysOf(database, trial);
    const std::vector<TrayId> ids = idsOf(records);
    HarvestRepository harvests(database);
    const auto yields = harvests.yieldsOfTrays(ids);
    const auto residues = harvests.residuesOfTrays(ids);
    const auto spots = spotsOfRoom(database);
    std::map<int, int> inBlock;
    std::vector<TrialTray> trays;
    for (TrayRecord& record : records) {
        TrialTray tray;
        tray.record = std::move(record);
        const Tray& sown = tray.record.tray;
        tray.plan = calendarOf(tray.record);
        if (tray.record.place) {
            tray.spot = valueAt(spots, *tray.record.place);
        }
        tray.block = sown.block.value_or(1);
        tray.position = ++inBlock[tray.block];
        if (draft) {
            placeByPlan(tray, *draft);
        }
        tray.yield = valueAt(yields, sown.id);
        if (const auto left = valueAt(residues, sown.id)) {
            tray.residue = sumOf(*left);
        }
        trays.push_back(std::move(tray));
    }
    std::stable_sort(trays.begin(), trays.end(), [](const TrialTray& a, const TrialTray& b) {
        return std::tie(a.block, a.position) < std::tie(b.block, b.position);
    });
    return trays;
}

TrialState stateOf(const std::vector<TrialTray>& trays)
{
    if (trays.empty()) {
        return TrialState::Planned;
    }
    const bool isGrowing = std::any_of(trays.begin(), trays.end(), [](const TrialTray& tray) {
        return tray.record.tray.state == TrayState::Growing;
    });
    return isGrowing ? TrialState::Growing : TrialState::Ended;
}

// Could it have been read on that day? On the day of its harvest it could.
bool grewOn(const Tray& tray, Date day)
{
    if (day < tray.sownOn) {
        return false;
    }
    return !tray.endedOn || day < *tray.endedOn ||
           (day == *tray.endedOn && tray.state == TrayState::Harvested);
}

void addHeightLacks(const TrayRepository::ByTray<Height>& heights,
                    const std::vector<TrialTray>& trays, std::vector<TrialLack>& lacks)
{
    std::map<Date, std::set<TrayId>> readOn;
    for (const auto& [tray, readings] : heights) {
        for (const Height& height : readings) {
            readOn[height.on].insert(tray);
        }
    }
    for (const auto& [day, read] : readOn) {
        std::vector<TrialLack> missing;
        std::size_t grew = 0;
        for (const TrialTray& each : trays) {
            const Tray& tray = each.record.tray;
            grew += grewOn(tray, day) ? 1 : 0;
            if (grewOn(tray, day) && read.count(tray.id) == 0) {
                missing.push_back({TrialGap::NoHeight, tray.id, tray.code, day});
            }
        }
        if (2 * (grew - missing.size()) >= grew) {
            lacks.insert(lacks.end(), missing.begin(), missing.end());
        }
    }
}

void addWeightLacks(const std::map<TrayId, std::vector<Harvest>>& cuts, Date today,
                    const std::vector<TrialTray>& trays, std::vector<TrialLack>& lacks)
{
    for (const TrialTray& each : trays) {
        const Tray& tray = each.record.tray;
        if (tray.state != TrayState::Growing || each.record.stages.empty()) {
            continue;
        }
        const auto ofTray = cuts.find(tray.id);
        const Moment due = each.plan.harvest;
        if (isCutDue(due, ofTray == cuts.end() ? std::vector<Harvest>() : ofTray->second,
                     today - 1)) {
            lacks.push_back({TrialGap::NotWeighed, tray.id, tray.code, due.date});
        }
    }
}

std::vector<TrialLack> lacksOf(Database& database, Date today, const std::vector<TrialTray>& trays)
{
    std::vector<TrayId> ids;
    ids.reserve(trays.size());
    for (const TrialTray& tray : trays) {
        ids.push_back(tray.record.tray.id);
    }
    std::vector<TrialLack> lacks;
    addHeightLacks(TrayRepository(database).heights(ids), trays, lacks);
    addWeightLacks(HarvestRepository(database).ofTrays(ids), today, trays, lacks);
    std::stable_sort(lacks.begin(), lacks.end(), [](const TrialLack& a, const TrialLack& b) {
        return std::tie(a.on, a.code) < std::tie(b.on, b.code);
    });
    return lacks;
}

using DiaryByDay = std::map<Date, std::map<MediumId, TrialDayOfMedium>>;

// `records` are by code, so that what is written of a day is too.
DiaryByDay entriesByDay(Database& database, const std::vector<TrayRecord>& records)
{
    const std::vector<TrayId> ids = idsOf(records);
    const TrayRepository trays(database);
    const auto notes = trays.notes(ids);
    const auto photos = trays.photos(ids);
    DiaryByDay days;
    for (const TrayRecord& record : records) {
        const auto entryOn = [&](Date day) -> TrialDayOfMedium& {
            TrialDayOfMedium& entry = days[day][record.medium.id];
            entry.medium = record.medium;
            return entry;
        };
        if (const auto found = notes.find(record.tray.id); found != notes.end()) {
            for (const TrayNote& note : found->second) {
                entryOn(note.on).notes.emplace_back(record.tray.code, note);
            }
        }
        if (const auto found = photos.find(record.tray.id); found != photos.end()) {
            for (const Photo& photo : found->second) {
                entryOn(photo.on).photos.emplace_back(record.tray.code, photo);
            }
        }
    }
    return days;
}

} // namespace

Result<TrialProgress> progressOf(Database& database, TrialId trial, Date today)
{
    auto found = TrialRepository(database).find(trial);
    if (!found) {
        return fail(ErrorKind::NotFound, TrialReason::Unknown);
    }
    TrialProgress progress;
    progress.trial = std::move(*found);
    progress.draft = TrialPlanRepository(database).find(trial);
    progress.trays = trialTrays(database, trial, progress.draft);
    progress.state = stateOf(progress.trays);
    progress.lacks = lacksOf(database, today, progress.trays);
    return progress;
}

std::vector<TrialDay> diaryOf(Database& database, const TrialProgress& progress)
{
    std::vector<TrayRecord> records;
    for (const TrialTray& tray : progress.trays) {
        records.push_back(tray.record);
    }
    std::sort(records.begin(), records.end(), isBeforeByCode);
    std::vector<TrialDay> days;
    for (auto& [on, media] : entriesByDay(database, records)) {
        TrialDay day;
        day.on = on;
        for (auto& [id, entry] : media) {
            day.media.push_back(std::move(entry));
        }
        days.push_back(std::move(day));
    }
    return days;
}

} // namespace plumule
