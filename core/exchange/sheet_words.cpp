// Part of core/exchange/sheet_notes.h: the words that may stand in a column.
#include "core/exchange/sheet_notes.h"

#include <string>
#include <unordered_map>

namespace plumule {
namespace {

using Words = std::unordered_map<std::string, std::vector<std::string_view>>;

const std::vector<std::string_view> kStages = {"soak", "under_weight", "blackout", "light"};
const std::vector<std::string_view> kMethods = {"none", "mist", "below"};
const std::vector<std::string_view> kWaters = {"plain", "ph_set", "nutrient"};
const std::vector<std::string_view> kSlots = {"morning", "evening"};
const Words kWords = {
    {"room.units", {"metric", "us_customary"}},
    {"protocol_stage.stage", kStages},
    {"protocol_stage.method", kMethods},
    {"protocol_stage.water", kWaters},
    {"protocol_stage.waters_nutrient_bearing", kWaters},
    {"medium.form", {"loose_mix", "mat", "mesh"}},
    {"season.main_metric",
     {"yield", "yield_per_sown", "yield_per_area", "yield_per_seed", "yield_per_day", "cost",
      "height", "days", "residue", "evenness", "work"}},
    {"trial_plan.design", {"completely_random", "randomized_blocks", "latin_square"}},
    {"treatment.feeding", {"as_protocol", "nutrient", "no_nutrient"}},
    {"tray.state", {"growing", "harvested", "discarded"}},
    {"tray_stage.stage", kStages},
    {"tray_stage.method", kMethods},
    {"tray_stage.water", kWaters},
    {"height.read_from", {"surface", "rim"}},
    {"water_recipe.water", kWaters},
    {"watering.slot", kSlots},
    {"watering.method", kMethods},
    {"watering.water", kWaters},
    {"watering_look.slot", kSlots},
    {"water_reading.slot", kSlots},
    {"water_reading.water", kWaters},
    {"price.item",
     {"medium", "concentrate", "water", "electricity", "labour", "packaging", "washing", "waste"}},
    {"price_measure.measure",
     {"unit", "cubic_metre", "cubic_foot", "us_quart", "us_gallon", "thousand_us_gallons",
      "us_fluid_ounce", "pound", "ounce"}},
    {"labour_task.task",
     {"sowing", "watering", "stage_move", "harvesting", "packing", "clearing_out",
      "piece_washing"}},
    {"panel.method", {"hedonic", "ranking", "triangle"}},
    {"climate_logger.light_unit", {"ppfd", "lux"}},
    {"repeat_day.answer", {"sown", "skipped"}},
    {"promised_order.recurs", {"once", "weekly"}},
    {"sanitising_detail.strength_unit", {"percent", "ppm"}},
    {"supply.kind", {"medium", "concentrate", "sanitiser", "packaging", "other"}},
    {"supply.unit", {"millilitre", "piece"}},
    {"supply_count.what", {"counted", "bought"}},
    {"work_time.task",
     {"sowing", "watering", "stage_move", "harvesting", "packing", "clearing_out",
      "piece_washing"}},
};

} // namespace

const std::vector<std::string_view>& wordsOf(std::string_view table, std::string_view column)
{
    static const std::vector<std::string_view> kNone;
    const auto found = kWords.find(std::string(table) + "." + std::string(column));
    return found == kWords.end() ? kNone : found->second;
}

} // namespace plumule
