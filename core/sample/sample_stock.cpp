#include "core/sample/sample_stock.h"

#include "core/climate/climate_repository.h"
#include "core/cost/cost_repository.h"
#include "core/cost/work_time_repository.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/stock/stock_repository.h"
#include "core/trial/trial_repository.h"
#include "core/variety/variety_repository.h"
#include "core/watering/watering_repository.h"

#include <cmath>

namespace plumule {
namespace {

constexpr int kStockMinutesPerHour = 60;

void clearStarter(Database& database)
{
    CostRepository costs(database);
    for (const Price& price : costs.prices()) {
        costs.remove(price.id);
    }
    VarietyRepository varieties(database);
    for (const Variety& variety : varieties.all(Listed::All)) {
        varieties.remove(variety.id);
    }
    MediumRepository media(database);
    for (const Medium& medium : media.all(Listed::All)) {
        media.remove(medium.id);
    }
    RoomRepository rooms(database);
    for (const Rack& rack : rooms.racks()) {
        rooms.remove(rack.id);
    }
}

void storeSampleLayout(Database& database, SampleTables& tables, SampleStock& stock)
{
    RoomRepository rooms(database);
    stock.room = rooms.room();
    tables.forEach("room", [&](const SampleRow& row) {
        stock.room.name = row.text("name");
        stock.room.units = row.named<UnitSystem>("units");
        stock.room.currency = row.text("currency");
        stock.room.morningMinute = row.minute("morning");
        stock.room.eveningMinute = row.minute("evening");
        stock.room.trayLength = millimetres(row.number("tray_length_mm"));
        stock.room.trayWidth = millimetres(row.number("tray_width_mm"));
    });
    rooms.update(stock.room);
    std::map<std::string, RackId> racks;
    tables.forEach("shelves", [&](const SampleRow& row) {
        const std::string rack = row.text("rack");
        if (!racks.contains(rack)) {
            racks.emplace(rack, rooms.addRack(rack, 0, 0).id);
        }
        Shelf shelf = rooms.addShelf(racks.at(rack), row.text("shelf"), row.whole("places"));
        shelf.lightMilliwatts = std::llround(row.number("light_w") * 1000);
        shelf.lightMinutes = row.whole("light_h") * kStockMinutesPerHour;
        rooms.update(shelf);
        if (const auto ppfd = row.maybeNumber("ppfd")) {
            ClimateRepository(database).setPpfd(shelf.id, std::llround(*ppfd * kMilli));
        }
        for (const Place& place : rooms.places(shelf.id)) {
            stock.places.emplace(rack + "/" + shelf.name + "/" + std::to_string(place.number),
                                 place.id);
        }
    });
}

ProtocolStage stageFrom(const SampleRow& row)
{
    ProtocolStage stage;
    stage.stage = row.named<Stage>("stage");
    stage.lengthMinutes = row.whole("hours") * kStockMinutesPerHour;
    stage.cue = row.text("cue");
    stage.wateringsPerDay = row.whole("waterings_per_day");
    stage.method = row.named<WateringMethod>("method");
    stage.amount = row.maybeMillilitres("amount_ml");
    stage.water = row.named<WaterKind>("water");
    return stage;
}

SeedLot lotFrom(const SampleRow& row, const SampleStock& stock)
{
    SeedLot lot;
    lot.variety = row.found(stock.protocols, "variety").variety.id;
    lot.lotNumber = row.text("lot");
    lot.supplier = row.text("supplier");
    lot.boughtOn = row.maybeDay("bought_day");
    lot.bought = row.maybeGrams("bought_g");
    lot.price = money(row.number("price"));
    lot.germinationPercent = row.maybeNumber("germination_percent");
    lot.note = row.text("note");
    lot.isUsedUp = row.isYes("used_up");
    return lot;
}

void storeSampleVarieties(Database& database, SampleTables& tables, SampleStock& stock)
{
    VarietyRepository varieties(database);
    tables.forEach("varieties", [&](const SampleRow& row) {
        Variety variety;
        variety.name = row.text("name");
        variety.codePrefix = row.text("prefix");
        variety.seedPerTray = row.maybeGrams("seed_g");
        variety.source = row.text("source");
        variety.note = row.text("note");
        varieties.insert(variety);
        stock.protocols.emplace(variety.name, Protocol{variety, {}});
    });
    tables.forEach("protocols", [&](const SampleRow& row) {
        if (const auto known = stock.protocols.find(row.text("variety"));
            known != stock.protocols.end()) {
            known->second.stages.push_back(stageFrom(row));
        } else {
            row.refuse("variety");
        }
    });
    for (auto& [name, protocol] : stock.protocols) {
        varieties.storeStages(protocol.variety.id, protocol.stages);
    }
    tables.forEach("seed_lots", [&](const SampleRow& row) {
        SeedLot lot = lotFrom(row, stock);
        if (!tables.isFaulty()) {
            varieties.insert(lot);
        }
        stock.lots.emplace(row.text("variety") + "/" + lot.lotNumber, lot.id);
    });
}

Medium mediumFromSample(const SampleRow& row)
{
    Medium medium;
    medium.name = row.text("name");
    medium.form = row.named<MediumForm>("form");
    medium.isNutrientBearing = row.isYes("nutrient_bearing");
    medium.isReusable = row.isYes("reusable");
    medium.plannedUses = row.maybeWhole("planned_uses");
    if (const auto depth = row.maybeNumber("below_rim_mm")) {
        medium.surfaceBelowRim = millimetres(*depth);
    }
    medium.amountPerTray = row.maybeMillilitres("amount_ml");
    medium.marker = row.whole("marker");
    medium.note = row.text("note");
    return medium;
}

void storeSampleMedia(Database& database, SampleTables& tables, SampleStock& stock)
{
    MediumRepository media(database);
    tables.forEach("media", [&](const SampleRow& row) {
        Medium medium = mediumFromSample(row);
        media.insert(medium);
        stock.media.emplace(medium.name, medium);
    });
    tables.forEach("pieces", [&](const SampleRow& row) {
        Piece piece;
        piece.medium = row.found(stock.media, "medium").id;
        piece.number = row.whole("number");
        piece.boughtOn = row.maybeDay("bought_day");
        piece.retiredOn = row.maybeDay("retired_day");
        piece.note = row.text("note");
        if (!tables.isFaulty()) {
            media.insert(piece);
        }
        stock.pieces.emplace(row.text("medium") + "/" + row.text("number"), piece.id);
    });
    tables.forEach("sanitisings", [&](const SampleRow& row) {
        const Moment at = row.moment("day", "time");
        const std::string piece = row.text("medium") + "/" + row.text("piece");
        SanitisingDraft how;
        how.method = row.text("method");
        how.strength = row.maybeNumber("strength_percent");
        how.contactMinutes = row.maybeWhole("contact_min");
        how.by = row.text("by");
        Sanitising sanitising{
            {}, row.foundAs(stock.pieces, piece, "piece"), at.date, at.minute, how};
        if (!tables.isFaulty()) {
            media.insert(sanitising);
        }
    });
}

void storeSampleTrials(Database& database, SampleTables& tables, SampleStock& stock)
{
    TrialRepository trials(database);
    tables.forEach("trials", [&](const SampleRow& row) {
        Trial trial;
        trial.code = row.text("code");
        trial.name = row.text("name");
        trial.question = row.text("question");
        trial.margin = row.maybeGrams("margin_g");
        if (row.has("control")) {
            trial.control = row.found(stock.media, "control").id;
        }
        trial.startedOn = row.maybeDay("started_day");
        trial.note = row.text("note");
        if (!tables.isFaulty()) {
            trials.insert(trial);
        }
        stock.trials.emplace(trial.code, trial.id);
    });
}

void storeSampleRecipes(Database& database, SampleTables& tables)
{
    WateringRepository waters(database);
    const std::vector<WaterRecipe> known = waters.recipes();
    tables.forEach("water_recipes", [&](const SampleRow& row) {
        WaterRecipe recipe;
        recipe.water = row.named<WaterKind>("water");
        recipe.concentrate = row.text("concentrate");
        recipe.dosePerLitre = row.maybeMillilitres("dose_ml_per_l");
        recipe.phLow = row.maybeNumber("ph_low");
        recipe.phHigh = row.maybeNumber("ph_high");
        recipe.ecLow = row.maybeNumber("ec_low_us_cm");
        recipe.ecHigh = row.maybeNumber("ec_high_us_cm");
        for (const WaterRecipe& starter : known) {
            recipe.id = starter.water == recipe.water ? starter.id : recipe.id;
        }
        recipe.id.isStored() ? waters.update(recipe) : waters.insert(recipe);
    });
}

StockAmount amountIn(StockUnit unit, double amount)
{
    return unit == StockUnit::Piece ? pieces(std::llround(amount)) : asStock(millilitres(amount));
}

void storeSampleSupplies(Database& database, SampleTables& tables, const SampleStock& stock)
{
    StockRepository shelf(database);
    std::map<std::string, StockItem> items;
    tables.forEach("supplies", [&](const SampleRow& row) {
        StockItem item;
        item.name = row.text("name");
        item.kind = row.named<StockKind>("kind");
        item.unit = row.named<StockUnit>("unit");
        if (row.has("medium")) {
            item.medium = row.found(stock.media, "medium").id;
        }
        if (const auto share = row.maybeNumber("each_use")) {
            item.eachUse = amountIn(item.unit, *share);
        }
        item.lowDays = row.maybeWhole("low_days");
        if (const auto low = row.maybeNumber("low_amount")) {
            item.lowAmount = amountIn(item.unit, *low);
        }
        if (!tables.isFaulty()) {
            shelf.insert(item);
        }
        items.emplace(item.name, item);
    });
    tables.forEach("supply_counts", [&](const SampleRow& row) {
        const StockItem item = row.found(items, "name");
        const Moment at = row.moment("day", "time");
        StockCount count{{},
                         item.id,
                         at.date,
                         at.minute,
                         row.named<StockEvent>("what"),
                         amountIn(item.unit, row.number("amount")),
                         row.text("note")};
        if (!tables.isFaulty()) {
            shelf.insert(count);
        }
    });
}

void storeSampleCosts(Database& database, SampleTables& tables, const SampleStock& stock)
{
    CostRepository costs(database);
    tables.forEach("prices", [&](const SampleRow& row) {
        Price price;
        price.item = row.named<PriceItem>("item");
        if (row.has("medium")) {
            price.medium = row.found(stock.media, "medium").id;
        }
        price.from = row.day("from_day");
        price.amount = money(row.number("amount"));
        if (!tables.isFaulty()) {
            costs.insert(price);
        }
    });
    const std::vector<LabourTask> known = costs.labour();
    tables.forEach("labour", [&](const SampleRow& row) {
        LabourTask task;
        task.kind = row.named<LabourKind>("task");
        task.seconds = row.whole("seconds");
        for (const LabourTask& starter : known) {
            task.id = starter.kind == task.kind ? starter.id : task.id;
        }
        task.id.isStored() ? costs.update(task) : costs.insert(task);
    });
    WorkTimeRepository times(database);
    tables.forEach("work_times", [&](const SampleRow& row) {
        WorkTime work;
        work.task = row.named<LabourKind>("task");
        const Moment begun = row.moment("day", "time");
        work.on = begun.date;
        work.minute = begun.minute;
        work.seconds = row.whole("seconds");
        work.times = row.whole("times");
        if (!tables.isFaulty()) {
            times.insert(work);
        }
    });
}

} // namespace

SampleStock storeSampleStock(Database& database, SampleTables& tables)
{
    SampleStock stock;
    clearStarter(database);
    storeSampleLayout(database, tables, stock);
    storeSampleVarieties(database, tables, stock);
    storeSampleMedia(database, tables, stock);
    storeSampleTrials(database, tables, stock);
    storeSampleRecipes(database, tables);
    storeSampleSupplies(database, tables, stock);
    storeSampleCosts(database, tables, stock);
    return stock;
}

} // namespace plumule
