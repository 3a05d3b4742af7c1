#include "core/starter/starter_library.h"

#include "core/cost/cost_repository.h"
#include "core/medium/medium_repository.h"
#include "core/room/room_repository.h"
#include "core/room/room_rules.h"
#include "core/starter/starter_varieties.h"
#include "core/starter/starter_yields.h"
#include "core/variety/variety_repository.h"
#include "core/watering/watering_repository.h"

namespace plumule {
namespace {

struct StarterMedium
{
    const char* name;
    MediumForm form;
    bool isNutrientBearing;
    int plannedUses; // 0: used once
    double surfaceBelowRimMm;
    double litresPerTray; // 0: not a loose mix
    const char* source;
};

constexpr const char* kCoirSource =
    "Amount, 2 US quarts of moist coir a tray: Utah State University Extension, Grow Your Own "
    "Microgreens. Depth: from memory.";

// In the order of their markers.
constexpr StarterMedium kMedia[] = {
    {"Coir mix", MediumForm::LooseMix, false, 0, 20, 1.892706, kCoirSource},
    {"Wood-fibre mat", MediumForm::Mat, false, 0, 45, 0, kFromMemory},
    {"Steel mesh", MediumForm::Mesh, false, 200, 40, 0, kFromMemory},
    {"Hemp mat", MediumForm::Mat, false, 0, 48, 0, kFromMemory},
    {"Peat mix", MediumForm::LooseMix, true, 0, 20, 2.0, kFromMemory},
    {"Compost mix", MediumForm::LooseMix, true, 0, 20, 2.0, kFromMemory},
    {"Felt mat", MediumForm::Mat, false, 12, 50, 0, kFromMemory},
    {"Plastic mesh", MediumForm::Mesh, false, 60, 40, 0, kFromMemory},
};

Medium mediumFrom(const StarterMedium& row, int marker)
{
    Medium medium;
    medium.name = row.name;
    medium.form = row.form;
    medium.isNutrientBearing = row.isNutrientBearing;
    medium.isReusable = row.plannedUses > 0;
    if (medium.isReusable) {
        medium.plannedUses = row.plannedUses;
    }
    medium.surfaceBelowRim = millimetres(row.surfaceBelowRimMm);
    if (row.litresPerTray > 0) {
        medium.amountPerTray = litres(row.litresPerTray);
    }
    medium.marker = marker;
    medium.source = row.source;
    return medium;
}

void storeRoom(Database& database, const RoomPlan& plan)
{
    RoomRepository rooms(database);
    Room room = plan.room;
    rooms.insert(room);
    for (int position = 0; position < plan.racks; ++position) {
        rooms.addRack(rackNameAt(position), plan.shelvesPerRack, plan.placesPerShelf);
    }
}

void storeVarieties(Database& database)
{
    VarietyRepository varieties(database);
    for (Protocol& protocol : starterVarieties()) {
        varieties.insert(protocol.variety);
        varieties.storeStages(protocol.variety.id, protocol.stages);
    }
}

void storeMedia(Database& database)
{
    MediumRepository media(database);
    int marker = 0;
    for (const StarterMedium& row : kMedia) {
        Medium medium = mediumFrom(row, marker++);
        media.insert(medium);
    }
}

// Dose and pH band: common practice, no source (1.5 US fl oz per US gallon). EC band: Moraru, Rusu,
// Mintas 2022, Foods 11:1327, Table 1.
void storeRecipes(Database& database)
{
    WateringRepository watering(database);
    WaterRecipe plain;
    plain.water = WaterKind::Plain;
    watering.insert(plain);

    WaterRecipe phSet;
    phSet.water = WaterKind::PhSet;
    phSet.phLow = 5.5;
    phSet.phHigh = 6.0;
    watering.insert(phSet);

    WaterRecipe nutrient = phSet;
    nutrient.id = {};
    nutrient.water = WaterKind::Nutrient;
    nutrient.concentrate = "Nutrient concentrate";
    nutrient.dosePerLitre = millilitres(11.72);
    nutrient.ecLow = 1200;
    nutrient.ecHigh = 1800;
    watering.insert(nutrient);
}

// From memory: 10 to 25 minutes a tray in all, of which filling and sowing 3 to 5, watering 2 to 4,
// cutting 4 to 8, packing 3 to 6, clearing out 2 to 4. Watering is divided over 24 rounds.
void storeLabour(Database& database)
{
    constexpr std::pair<LabourKind, int> kSeconds[] = {
        {LabourKind::Sowing, 240},       {LabourKind::Watering, 8},  {LabourKind::StageMove, 30},
        {LabourKind::Harvesting, 360},   {LabourKind::Packing, 270}, {LabourKind::ClearingOut, 180},
        {LabourKind::PieceWashing, 180},
    };
    CostRepository costs(database);
    for (const auto& [kind, seconds] : kSeconds) {
        LabourTask task{{}, kind, seconds};
        costs.insert(task);
    }
}

} // namespace

void storeStarterLibrary(Database& database, const RoomPlan& plan)
{
    storeRoom(database, plan);
    storeVarieties(database);
    storeMedia(database);
    storeRecipes(database);
    storeLabour(database);
}

} // namespace plumule
