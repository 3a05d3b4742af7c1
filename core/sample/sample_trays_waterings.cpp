// Part of core/sample/sample_trays.h: the rounds that were walked.
#include "core/sample/sample_trays.h"

#include "core/harvest/harvest_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/tray_ids.h"
#include "core/tray/tray_repository.h"
#include "core/watering/tray_at_round.h"
#include "core/watering/watering_repository.h"

#include <algorithm>
#include <limits>
#include <set>

namespace plumule {
namespace {

using MissedRounds = std::set<std::tuple<std::string, Date, Slot>>;

constexpr int kMinutesBeforeFirstTray = 3;
constexpr int kTraysPerMinute = 3;

// What one walk through the tables' rounds needs.
struct SampleWalk
{
    const Room& room;
    std::map<PlaceId, Spot> spots;
    MissedRounds misses;
    Moment now;
    RoundKey present;
    std::map<TrayId, CutMoments> cuts;

    [[nodiscard]] CutMoments cutsOf(const TrayRecord& record) const
    {
        const auto found = cuts.find(record.tray.id);
        return found == cuts.end() ? CutMoments{} : found->second;
    }
    [[nodiscard]] int rankOf(const TrayRecord& record) const
    {
        const auto found = record.place ? spots.find(*record.place) : spots.end();
        return found == spots.end() ? std::numeric_limits<int>::max() : found->second.rank;
    }
};

Watering sampleWatering(const SampleWalk& walk, const TrayRecord& record, RoundKey round,
                        const TrayStage& stage)
{
    const int rank = walk.rankOf(record);
    const int minutes = rank == std::numeric_limits<int>::max() ? 0 : rank / kTraysPerMinute;
    const Moment at =
        std::min(timeOf(walk.room, round) + (kMinutesBeforeFirstTray + minutes), walk.now);
    Watering watering;
    watering.tray = record.tray.id;
    watering.on = round.date;
    watering.slot = round.slot;
    watering.minute = at.minute;
    watering.method = stage.method;
    watering.water = stage.water;
    watering.amount = stage.amount;
    return watering;
}

void waterPastRounds(const SampleWalk& walk, const TrayRecord& record, WateringRepository& waters)
{
    const CutMoments cuts = walk.cutsOf(record);
    for (RoundKey round{record.tray.sownOn, Slot::Morning}; round < walk.present;
         round = roundAfter(round)) {
        if (record.tray.endedOn && round.date > *record.tray.endedOn) {
            return;
        }
        const auto tray = trayAtRound(record, cuts, walk.room, round, std::nullopt);
        if (tray && tray->isAsked &&
            !walk.misses.contains({record.tray.code, round.date, round.slot})) {
            Watering watering = sampleWatering(walk, record, round, tray->present());
            waters.insert(watering);
        }
    }
}

std::optional<ShelfId> shelfOf(const SampleWalk& walk, const TrayRecord& record)
{
    const auto found = record.place ? walk.spots.find(*record.place) : walk.spots.end();
    return found == walk.spots.end() ? std::nullopt : std::optional(found->second.shelfId);
}

void waterFirstShelf(const SampleWalk& walk, const std::vector<TrayRecord>& records,
                     WateringRepository& waters)
{
    std::map<int, std::pair<const TrayRecord*, TrayAtRound>> asked;
    for (const TrayRecord& record : records) {
        const auto tray =
            trayAtRound(record, walk.cutsOf(record), walk.room, walk.present, walk.now);
        if (tray && tray->isAsked && shelfOf(walk, record)) {
            asked.emplace(walk.rankOf(record), std::pair(&record, *tray));
        }
    }
    for (const auto& [rank, entry] : asked) {
        if (shelfOf(walk, *entry.first) == shelfOf(walk, *asked.begin()->second.first)) {
            Watering watering =
                sampleWatering(walk, *entry.first, walk.present, entry.second.present());
            waters.insert(watering);
        }
    }
}

} // namespace

void storeSampleWaterings(Database& database, SampleTables& tables, const SampleStock& stock,
                          const Progress& progress)
{
    SampleWalk walk{stock.room, {}, {}, tables.now(), roundOf(stock.room, tables.now()), {}};
    for (const Spot& spot : RoomRepository(database).layout().spots()) {
        walk.spots.emplace(spot.place, spot);
    }
    tables.forEach("misses", [&](const SampleRow& row) {
        walk.misses.emplace(row.text("code"), row.day("day"), row.named<Slot>("slot"));
    });
    WateringRepository waters(database);
    const std::vector<TrayRecord> records = TrayRepository(database).records();
    for (const auto& [tray, cuts] : HarvestRepository(database).ofTrays(idsOf(records))) {
        for (const Harvest& cut : cuts) {
            walk.cuts[tray].push_back({cut.on, cut.minute});
        }
    }
    for (std::size_t i = 0; i < records.size() && !tables.isFaulty(); ++i) {
        if (progress.isStopped()) {
            return;
        }
        progress.report(static_cast<double>(i) / static_cast<double>(records.size()));
        waterPastRounds(walk, records[i], waters);
    }
    waterFirstShelf(walk, records, waters);
}

} // namespace plumule
