// Part of core/exchange/tray_table.h: the way out.
#include "core/exchange/stored_rows.h"
#include "core/exchange/tray_table.h"

#include "core/harvest/harvest_repository.h"
#include "core/room/room_repository.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_ids.h"
#include "core/tray/tray_repository.h"

#include <algorithm>
#include <fmt/format.h>

namespace plumule {
namespace {

// Everything that the rows are written from.
struct ExportFacts
{
    std::map<PlaceId, Spot> spots;
    std::map<PlaceId, TrayId> standing;
    std::map<TrayId, Mass> yields;
    std::map<TrayId, std::vector<Residue>> residues;
    std::map<TrayId, std::vector<Height>> heights;
    std::map<TrayId, std::vector<TrayNote>> notes;
};

ExportFacts exportFacts(Database& database, const std::vector<TrayRecord>& records)
{
    const std::vector<TrayId> ids = idsOf(records);
    TrayRepository trays(database);
    HarvestRepository harvests(database);
    ExportFacts facts;
    for (const Spot& spot : RoomRepository(database).layout().spots()) {
        facts.spots.emplace(spot.place, spot);
    }
    facts.standing = trays.occupied();
    facts.yields = harvests.yieldsOfTrays(ids);
    facts.residues = harvests.residuesOfTrays(ids);
    facts.heights = trays.heights(ids);
    facts.notes = trays.notes(ids);
    return facts;
}

std::string gramsText(std::optional<Mass> mass)
{
    return mass ? fmt::format("{}", inGrams(*mass)) : "";
}

template <class Row>
const std::vector<Row>& rowsOf(const std::map<TrayId, std::vector<Row>>& rows, TrayId tray)
{
    static const std::vector<Row> kNone;
    const auto found = rows.find(tray);
    return found == rows.end() ? kNone : found->second;
}

std::string residueText(const std::vector<Residue>& residues)
{
    Mass sum;
    for (const Residue& residue : residues) {
        sum += residue.net;
    }
    return residues.empty() ? "" : gramsText(sum);
}

std::string heightText(const TrayRecord& record, const std::vector<Height>& heights)
{
    std::int64_t sum = 0;
    std::int64_t count = 0;
    for (const Height& height : heights) {
        const auto above = heightAboveSurface(height, record.medium);
        if (height.on == record.tray.endedOn && above) {
            sum += above->count();
            ++count;
        }
    }
    return count == 0 ? "" : fmt::format("{}", inMillimetres(micrometres(sum / count)));
}

std::string noteText(const std::vector<TrayNote>& notes)
{
    std::string text;
    for (const TrayNote& note : notes) {
        text += (text.empty() ? "" : "\n") + note.text;
    }
    return text;
}

// Where it stands, or where it stood when it was cut.
std::optional<Spot> exportedSpot(const TrayRecord& record, const ExportFacts& facts)
{
    const auto spot = record.place ? facts.spots.find(*record.place) : facts.spots.end();
    if (spot == facts.spots.end()) {
        return std::nullopt;
    }
    const auto standing = facts.standing.find(spot->first);
    const bool isHere = standing != facts.standing.end() && standing->second == record.tray.id;
    const bool hasEnded = record.tray.state != TrayState::Growing;
    return isHere || hasEnded ? std::optional(spot->second) : std::nullopt;
}

std::vector<std::string> exportedRow(const TrayRecord& record, const ExportFacts& facts)
{
    const Tray& tray = record.tray;
    const bool isHarvested = tray.state == TrayState::Harvested && tray.endedOn;
    const auto yield = facts.yields.find(tray.id);
    const auto spot = exportedSpot(record, facts);
    return {
        tray.code,
        record.variety,
        record.medium.name,
        toIso(tray.sownOn),
        gramsText(tray.seed),
        isHarvested ? toIso(*tray.endedOn) : "",
        isHarvested && yield != facts.yields.end() ? gramsText(yield->second) : "",
        record.trialCode.value_or(""),
        tray.block ? std::to_string(*tray.block) : "",
        spot ? spot->rack : "",
        spot ? spot->shelf : "",
        spot ? std::to_string(spot->number) : "",
        record.seedLot.value_or(""),
        isHarvested ? residueText(rowsOf(facts.residues, tray.id)) : "",
        isHarvested ? heightText(record, rowsOf(facts.heights, tray.id)) : "",
        noteText(rowsOf(facts.notes, tray.id)),
    };
}

} // namespace

WrittenTrays writtenTrays(Database& database)
{
    std::map<std::string, TrayId> ids;
    eachStoredRow(database, "tray", [&ids](const StoredRow& row) {
        ids.emplace(nameKey(row.get<std::string>("code")), row.get<TrayId>("id"));
    });
    return [&database, ids = std::move(ids)](const std::vector<std::string>& codes) {
        std::vector<TrayId> wanted;
        for (const std::string& code : codes) {
            if (const auto id = ids.find(nameKey(code)); id != ids.end()) {
                wanted.push_back(id->second);
            }
        }
        const std::vector<TrayRecord> records = TrayRepository(database).records(wanted);
        const ExportFacts facts = exportFacts(database, records);
        std::map<std::string, std::string> written;
        for (const TrayRecord& record : records) {
            if (record.tray.state != TrayState::Discarded) {
                written.emplace(nameKey(record.tray.code), rowKey(exportedRow(record, facts)));
            }
        }
        return written;
    };
}

std::string csvOfTrays(Database& database)
{
    std::vector<TrayRecord> records = TrayRepository(database).records();
    std::sort(records.begin(), records.end(), [](const TrayRecord& a, const TrayRecord& b) {
        return std::tie(a.tray.sownOn, a.tray.code) < std::tie(b.tray.sownOn, b.tray.code);
    });
    const ExportFacts facts = exportFacts(database, records);
    std::string text = csvLine(trayColumns());
    for (const TrayRecord& record : records) {
        if (record.tray.state != TrayState::Discarded) {
            text += csvLine(exportedRow(record, facts));
        }
    }
    return text;
}

} // namespace plumule
