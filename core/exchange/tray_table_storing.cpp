// Part of core/exchange/tray_table.h: the way in, once a table is read.
#include "core/exchange/tray_table.h"

#include "core/base/work_reason.h"
#include "core/exchange/code_prefix.h"
#include "core/exchange/row_fault.h"
#include "core/harvest/harvest_repository.h"
#include "core/medium/medium_repository.h"
#include "core/medium/medium_rules.h"
#include "core/room/room_repository.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_repository.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"

#include <algorithm>

namespace plumule {
namespace {

constexpr int kRowsBetweenReports = 200;

std::string placeKey(const std::string& rack, const std::string& shelf, int number)
{
    return nameKey(rack + "/" + shelf + "/" + std::to_string(number));
}

// What a variety is given that only a table has named.
std::vector<ProtocolStage> plainStages()
{
    ProtocolStage weight;
    weight.stage = Stage::UnderWeight;
    weight.lengthMinutes = 3 * kMinutesPerDay;
    weight.wateringsPerDay = 2;
    weight.method = WateringMethod::Mist;
    ProtocolStage light;
    light.position = 1;
    light.stage = Stage::Light;
    light.lengthMinutes = 7 * kMinutesPerDay;
    light.wateringsPerDay = 2;
    light.method = WateringMethod::Below;
    return {weight, light};
}

// Brings rows in, one after the other, and makes what they name.
class TrayStore
{
public:
    explicit TrayStore(Database& database)
        : m_trays(database)
        , m_harvests(database)
        , m_rooms(database)
        , m_varieties(database)
        , m_media(database)
        , m_trials(database)
        , m_room(m_rooms.room())
    {
        for (const Spot& spot : m_rooms.layout().spots()) {
            m_places.emplace(placeKey(spot.rack, spot.shelf, spot.number), spot.place);
        }
        learnNames();
    }

    void store(const ImportedTray& row)
    {
        const Protocol& protocol = varietyOf(row.variety);
        const Medium& medium = mediumOf(row.medium);
        Tray tray;
        tray.code = row.code;
        tray.variety = protocol.variety.id;
        tray.medium = medium.id;
        tray.seed = row.seed;
        tray.sownOn = row.sown;
        tray.sownMinute = m_room.morningMinute;
        tray.block = row.block;
        if (row.trial) {
            tray.trial = trialOf(*row.trial);
        }
        if (row.seedLot) {
            tray.seedLot = lotOf(protocol.variety.id, *row.seedLot);
        }
        if (row.harvested) {
            tray.state = TrayState::Harvested;
            tray.endedOn = row.harvested;
            tray.endedMinute = m_room.morningMinute;
        }
        m_trays.insert(tray);
        storeStages(tray, protocol, medium);
        storeStay(tray, row);
        storeResults(tray, row);
        ++m_outcome.trays;
    }

    [[nodiscard]] const ImportOutcome& outcome() const { return m_outcome; }

private:
    // All that rows may name, once: a question a row would be asked of tables that grow with it.
    void learnNames()
    {
        for (const auto& [id, variety] : m_varieties.byId()) {
            m_knownVarieties.emplace(nameKey(variety.name),
                                     Protocol{variety, m_varieties.stages(id)});
            m_prefixes.insert(upperCase(variety.codePrefix));
        }
        for (const auto& [id, lot] : m_varieties.lotsById()) {
            m_knownLots.emplace(std::pair(lot.variety, nameKey(lot.lotNumber)), id);
        }
        for (const auto& [id, medium] : m_media.byId()) {
            m_knownMedia.emplace(nameKey(medium.name), medium);
            m_markers.push_back(medium.marker);
        }
        for (const auto& [id, trial] : m_trials.byId()) {
            m_knownTrials.emplace(nameKey(trial.code), id);
        }
        for (const Rack& rack : m_rooms.racks()) {
            m_racks.emplace(nameKey(rack.name), rack.id);
            for (const Shelf& shelf : m_rooms.shelves(rack.id)) {
                m_shelves.emplace(std::pair(rack.id, nameKey(shelf.name)), shelf.id);
            }
        }
    }

    const Protocol& varietyOf(const std::string& name)
    {
        const auto known = m_knownVarieties.find(nameKey(name));
        return known != m_knownVarieties.end()
                   ? known->second
                   : m_knownVarieties.emplace(nameKey(name), newVariety(name)).first->second;
    }

    Protocol newVariety(const std::string& name)
    {
        Protocol protocol{{}, plainStages()};
        protocol.variety.name = name;
        protocol.variety.codePrefix = freePrefix(m_prefixes, name);
        m_prefixes.insert(protocol.variety.codePrefix);
        m_varieties.insert(protocol.variety);
        m_varieties.storeStages(protocol.variety.id, protocol.stages);
        ++m_outcome.varieties;
        return protocol;
    }

    const Medium& mediumOf(const std::string& name)
    {
        const auto known = m_knownMedia.find(nameKey(name));
        if (known != m_knownMedia.end()) {
            return known->second;
        }
        Medium medium;
        medium.name = name;
        medium.marker = nextMarker(m_markers);
        m_markers.push_back(medium.marker);
        m_media.insert(medium);
        ++m_outcome.media;
        return m_knownMedia.emplace(nameKey(name), std::move(medium)).first->second;
    }

    TrialId trialOf(const std::string& code)
    {
        const auto [known, isNew] = m_knownTrials.emplace(nameKey(code), TrialId{});
        if (isNew) {
            Trial made;
            made.code = code;
            made.name = code;
            m_trials.insert(made);
            known->second = made.id;
            ++m_outcome.trials;
        }
        return known->second;
    }

    SeedLotId lotOf(VarietyId variety, const std::string& number)
    {
        const auto [known, isNew] =
            m_knownLots.emplace(std::pair(variety, nameKey(number)), SeedLotId{});
        if (isNew) {
            SeedLot made;
            made.variety = variety;
            made.lotNumber = number;
            m_varieties.insert(made);
            known->second = made.id;
        }
        return known->second;
    }

    RackId rackOf(const std::string& name)
    {
        const auto [known, isNew] = m_racks.emplace(nameKey(name), RackId{});
        if (isNew) {
            known->second = m_rooms.addRack(name, 0, 0).id;
        }
        return known->second;
    }

    ShelfId shelfOf(RackId rack, const std::string& name)
    {
        const auto [known, isNew] = m_shelves.emplace(std::pair(rack, nameKey(name)), ShelfId{});
        if (isNew) {
            known->second = m_rooms.addShelf(rack, name, 0).id;
        }
        return known->second;
    }

    PlaceId placeOf(const std::string& rack, const std::string& shelf, int number)
    {
        const auto known = m_places.find(placeKey(rack, shelf, number));
        if (known != m_places.end()) {
            return known->second;
        }
        const ShelfId shelfId = shelfOf(rackOf(rack), shelf);
        for (int made = 1; made <= number; ++made) {
            const std::string key = placeKey(rack, shelf, made);
            if (!m_places.contains(key)) {
                Place place{{}, shelfId, made};
                m_rooms.insert(place);
                m_places.emplace(key, place.id);
            }
        }
        return m_places.at(placeKey(rack, shelf, number));
    }

    void storeStages(const Tray& tray, const Protocol& protocol, const Medium& medium)
    {
        const bool hasProtocol = !protocol.stages.empty();
        const Protocol plain{protocol.variety, plainStages()};
        for (TrayStage& stage : stagesFor(hasProtocol ? protocol : plain, medium, tray.sownAt(),
                                          FirstStage::AfterSoak)) {
            stage.tray = tray.id;
            m_trays.insert(stage);
        }
    }

    void storeStay(const Tray& tray, const ImportedTray& row)
    {
        if (!row.rack || !row.shelf || !row.place) {
            return;
        }
        Stay stay;
        stay.tray = tray.id;
        stay.place = placeOf(*row.rack, *row.shelf, *row.place);
        stay.fromOn = tray.sownOn;
        stay.fromMinute = tray.sownMinute;
        stay.toOn = tray.endedOn;
        stay.toMinute = tray.endedMinute;
        m_trays.insert(stay);
    }

    void storeResults(const Tray& tray, const ImportedTray& row)
    {
        const Date on = row.harvested.value_or(row.sown);
        const int minute = m_room.morningMinute;
        if (row.harvested && row.net) {
            Harvest harvest;
            harvest.tray = tray.id;
            harvest.on = on;
            harvest.minute = minute;
            harvest.net = *row.net;
            m_harvests.insert(harvest);
        }
        if (row.residue) {
            Residue residue{{}, tray.id, on, minute, std::nullopt, std::nullopt, *row.residue};
            m_harvests.insert(residue);
        }
        if (row.height) {
            Height height{{}, tray.id, on, minute, *row.height, ReadFrom::Surface};
            m_trays.insert(height);
        }
        if (!row.note.empty()) {
            TrayNote note{{}, tray.id, on, minute, row.note};
            m_trays.insert(note);
        }
    }

    TrayRepository m_trays;
    HarvestRepository m_harvests;
    RoomRepository m_rooms;
    VarietyRepository m_varieties;
    MediumRepository m_media;
    TrialRepository m_trials;
    Room m_room;
    std::set<std::string> m_prefixes;
    std::vector<int> m_markers;
    std::map<std::string, RackId> m_racks;
    std::map<std::pair<RackId, std::string>, ShelfId> m_shelves;
    std::map<std::string, Protocol> m_knownVarieties;
    std::map<std::string, Medium> m_knownMedia;
    std::map<std::string, TrialId> m_knownTrials;
    std::map<std::pair<VarietyId, std::string>, SeedLotId> m_knownLots;
    std::map<std::string, PlaceId> m_places;
    ImportOutcome m_outcome;
};

// The journal may have changed between the preview and the import.
Done checkStillFree(Database& database, const ImportPreview& preview)
{
    const KnownNames known = knownNamesIn(database);
    const auto keysOf = [](const std::set<std::string>& names) {
        std::set<std::string> keys;
        for (const std::string& name : names) {
            keys.insert(nameKey(name));
        }
        return keys;
    };
    const std::set<std::string> codes = keysOf(known.codes);
    const std::set<std::string> taken = keysOf(known.taken);
    for (const ImportedTray& row : preview.trays) {
        if (codes.contains(nameKey(row.code))) {
            return faultAt("", row.line, ErrorKind::Duplicate, ExchangeReason::CodeTaken, row.code);
        }
        const bool stands = !row.harvested && row.rack && row.shelf && row.place;
        if (stands && taken.contains(placeKey(*row.rack, *row.shelf, *row.place))) {
            return faultAt("", row.line, ErrorKind::Conflict, ExchangeReason::PlaceTaken,
                           *row.rack + "/" + *row.shelf + "/" + std::to_string(*row.place));
        }
    }
    return {};
}

} // namespace

KnownNames knownNamesIn(Database& database)
{
    TrayRepository trays(database);
    VarietyRepository varieties(database);
    KnownNames known;
    for (const std::string& code : trays.codes()) {
        known.codes.insert(code);
    }
    const auto byId = varieties.byId();
    for (const auto& [id, variety] : byId) {
        known.varieties.insert(variety.name);
    }
    for (const auto& [id, lot] : varieties.lotsById()) {
        const Variety& variety = pointedAt(byId, lot.variety, "seed_lot", id);
        known.seedLots.insert(variety.name + "/" + lot.lotNumber);
    }
    for (const Medium& medium : MediumRepository(database).all(Listed::All)) {
        known.media.insert(medium.name);
    }
    for (const Trial& trial : TrialRepository(database).all()) {
        known.trials.insert(trial.code);
    }
    const auto occupied = trays.occupied();
    for (const Spot& spot : RoomRepository(database).layout().spots()) {
        const std::string name = spot.rack + "/" + spot.shelf + "/" + std::to_string(spot.number);
        known.places.insert(name);
        if (occupied.contains(spot.place)) {
            known.taken.insert(name);
        }
    }
    return known;
}

Result<ImportOutcome> storeTrays(Database& database, const ImportPreview& preview,
                                 const Progress& progress)
{
    if (Done free = checkStillFree(database, preview); !free) {
        return passOn(free);
    }
    TrayStore store(database);
    int row = 0;
    for (const ImportedTray& tray : preview.trays) {
        if (row++ % kRowsBetweenReports == 0) {
            progress.report(static_cast<double>(row) / static_cast<double>(preview.trays.size()));
            if (progress.isStopped()) {
                return fail(ErrorKind::Cancelled, WorkReason::Stopped);
            }
        }
        store.store(tray);
    }
    return store.outcome();
}

} // namespace plumule
