#include "core/sample/sample_trays.h"

#include "core/harvest/harvest_repository.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_repository.h"
#include "core/watering/watering_repository.h"

namespace plumule {
namespace {

constexpr int kMinutesPerHour = 60;

struct SampleTray
{
    Tray tray;
    std::vector<TrayStage> stages;
};

using SampleTraysByCode = std::map<std::string, SampleTray>;

Tray trayFromSample(const SampleRow& row, const SampleStock& stock)
{
    Tray tray;
    tray.code = row.text("code");
    tray.variety = row.found(stock.protocols, "variety").variety.id;
    tray.seedLot =
        row.foundAs(stock.lots, row.text("variety") + "/" + row.text("seed_lot"), "seed_lot");
    tray.medium = row.found(stock.media, "medium").id;
    if (row.has("piece")) {
        tray.piece =
            row.foundAs(stock.pieces, row.text("medium") + "/" + row.text("piece"), "piece");
    }
    tray.seed = row.maybeGrams("seed_g");
    const Moment sown = row.planned("sown_day", "sown_time");
    tray.sownOn = sown.date;
    tray.sownMinute = sown.minute;
    if (row.has("trial")) {
        tray.trial = row.found(stock.trials, "trial");
    }
    tray.block = row.maybeWhole("block");
    tray.state = row.named<TrayState>("state");
    if (row.has("ended_day")) {
        const Moment ended = row.moment("ended_day", "ended_time");
        tray.endedOn = ended.date;
        tray.endedMinute = ended.minute;
    }
    tray.discardReason = row.maybeText("discard_reason");
    tray.setAsideReason = row.maybeText("set_aside_reason");
    tray.sownBy = row.maybeText("sown_by");
    return tray;
}

std::vector<TrayStage> stagesFromSample(const SampleRow& row, const SampleStock& stock,
                                        const Tray& tray)
{
    const Protocol protocol = row.found(stock.protocols, "variety");
    const Medium medium = row.found(stock.media, "medium");
    const bool isSoaked = row.isYes("starts_with_soak");
    const int soak = isSoaked ? soakMinutes(protocol) : 0;
    return stagesFor(protocol, medium, tray.sownAt() + -std::int64_t{soak},
                     isSoaked ? FirstStage::Soak : FirstStage::AfterSoak);
}

void readStay(const SampleRow& row, const SampleStock& stock, const Tray& tray,
              TrayRepository& trays)
{
    if (!row.has("rack")) {
        return;
    }
    Stay stay;
    stay.tray = tray.id;
    stay.place =
        row.foundAs(stock.places,
                    row.text("rack") + "/" + row.text("shelf") + "/" + row.text("place"), "place");
    stay.fromOn = tray.sownOn;
    stay.fromMinute = tray.sownMinute;
    stay.toOn = tray.endedOn;
    stay.toMinute = tray.endedMinute;
    if (stay.place.isStored()) {
        trays.insert(stay);
    }
}

SampleTraysByCode readTrays(SampleTables& tables, const SampleStock& stock, TrayRepository& trays)
{
    SampleTraysByCode byCode;
    tables.forEach("trays", [&](const SampleRow& row) {
        SampleTray sample;
        sample.tray = trayFromSample(row, stock);
        if (tables.isFaulty()) {
            return;
        }
        trays.insert(sample.tray);
        sample.stages = stagesFromSample(row, stock, sample.tray);
        readStay(row, stock, sample.tray, trays);
        byCode.emplace(sample.tray.code, std::move(sample));
    });
    return byCode;
}

void readStages(SampleTables& tables, SampleTraysByCode& byCode)
{
    tables.forEach("stages", [&](const SampleRow& row) {
        const auto tray = byCode.find(row.text("code"));
        if (tray == byCode.end()) {
            row.refuse("code");
            return;
        }
        const Stage named = row.named<Stage>("stage");
        for (TrayStage& stage : tray->second.stages) {
            if (stage.stage != named) {
                continue;
            }
            if (row.has("started_day")) {
                const Moment started = row.moment("started_day", "started_time");
                stage.startedOn = started.date;
                stage.startedMinute = started.minute;
            }
            stage.delayMinutes = row.maybeWhole("delay_h").value_or(0) * kMinutesPerHour;
            if (row.has("water")) {
                stage.water = row.named<WaterKind>("water");
            }
        }
    });
}

std::map<std::string, TrayId> idsByCode(const SampleTraysByCode& byCode)
{
    std::map<std::string, TrayId> ids;
    for (const auto& [code, sample] : byCode) {
        ids.emplace(code, sample.tray.id);
    }
    return ids;
}

void readHarvests(Database& database, SampleTables& tables,
                  const std::map<std::string, TrayId>& trays)
{
    HarvestRepository harvests(database);
    std::map<std::pair<TrayId, int>, Harvest> cuts;
    tables.forEach("harvests", [&](const SampleRow& row) {
        const TrayId tray = row.found(trays, "code");
        if (tables.isFaulty()) {
            return;
        }
        const auto [entry, isNew] = cuts.emplace(std::pair(tray, row.whole("cut")), Harvest{});
        Harvest& harvest = entry->second;
        if (isNew) {
            const Moment at = row.moment("day", "time");
            harvest = {{},        tray, row.whole("cut"),     at.date,
                       at.minute, {},   row.isYes("is_last"), row.text("note")};
            harvests.insert(harvest);
        }
        Bowl bowl{{}, harvest.id, grams(row.number("gross_g")), grams(row.number("tare_g"))};
        harvests.insert(bowl);
        harvest.net += bowl.net();
    });
    for (const auto& [key, harvest] : cuts) {
        harvests.update(harvest);
    }
    tables.forEach("residues", [&](const SampleRow& row) {
        const Moment at = row.moment("day", "time");
        Residue residue{{}, row.found(trays, "code"), at.date, at.minute, {}, {}, {}};
        residue.gross = row.maybeGrams("gross_g");
        residue.tare = row.maybeGrams("tare_g");
        residue.net = residue.gross.value_or(Mass{}) - residue.tare.value_or(Mass{});
        if (!tables.isFaulty()) {
            harvests.insert(residue);
        }
    });
}

void readDiary(SampleTables& tables, const std::map<std::string, TrayId>& ids,
               TrayRepository& trays)
{
    tables.forEach("heights", [&](const SampleRow& row) {
        const Moment at = row.moment("day", "time");
        Height height{{},
                      row.found(ids, "code"),
                      at.date,
                      at.minute,
                      millimetres(row.number("reading_mm")),
                      row.named<ReadFrom>("read_from")};
        if (!tables.isFaulty()) {
            trays.insert(height);
        }
    });
    tables.forEach("notes", [&](const SampleRow& row) {
        const Moment at = row.moment("day", "time");
        TrayNote note{{}, row.found(ids, "code"), at.date, at.minute, row.text("text")};
        if (!tables.isFaulty()) {
            trays.insert(note);
        }
    });
}

void readWaterReadings(Database& database, SampleTables& tables,
                       const std::map<std::string, TrayId>& ids)
{
    WateringRepository waters(database);
    tables.forEach("water_readings", [&](const SampleRow& row) {
        const Moment at = row.moment("day", "time");
        WaterReading reading;
        reading.on = at.date;
        reading.slot = row.named<Slot>("slot");
        reading.minute = at.minute;
        reading.water = row.named<WaterKind>("water");
        if (row.has("code")) {
            reading.tray = row.found(ids, "code");
        }
        reading.ph = row.maybeNumber("ph");
        reading.ec = row.maybeNumber("ec_us_cm");
        if (!tables.isFaulty()) {
            waters.insert(reading);
        }
    });
}

} // namespace

void storeSampleTrays(Database& database, SampleTables& tables, const SampleStock& stock)
{
    TrayRepository trays(database);
    SampleTraysByCode byCode = readTrays(tables, stock, trays);
    readStages(tables, byCode);
    for (auto& [code, sample] : byCode) {
        for (TrayStage& stage : sample.stages) {
            stage.tray = sample.tray.id;
            trays.insert(stage);
        }
    }
    const std::map<std::string, TrayId> ids = idsByCode(byCode);
    readHarvests(database, tables, ids);
    readDiary(tables, ids, trays);
    readWaterReadings(database, tables, ids);
}

} // namespace plumule
