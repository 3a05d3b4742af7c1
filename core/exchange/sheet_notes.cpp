#include "core/exchange/sheet_notes.h"

#include <algorithm>
#include <string>
#include <unordered_map>

namespace plumule {
namespace {

using Notes = std::unordered_map<std::string, std::string_view>;

const Notes& tableNotes()
{
    static const Notes kNotes = {
        {"room", "the grow room and how it is run; one row"},
        {"rack", "racks"},
        {"shelf", "shelves of racks, with the lamps over them"},
        {"place", "places of shelves; a tray stands on one"},
        {"variety", "what is sown"},
        {"protocol_stage", "what a variety's trays pass through"},
        {"seed_lot", "purchases of seed"},
        {"stock_correction", "seed found or lost when a lot was counted"},
        {"medium", "what the roots grow in"},
        {"medium_as_run", "media that are compared as one with their own feeding"},
        {"medium_group", "which media are answered for together"},
        {"piece", "single reusable mats and meshes"},
        {"sanitising", "when a piece was sanitised"},
        {"season", "declared seasons"},
        {"trial", "trials"},
        {"trial_plan", "how a trial was planned here"},
        {"treatment", "what a planned trial compares"},
        {"planned_tray", "the places of a planned trial and the trays sown there"},
        {"tray", "trays with their seed: what is watered, moved, weighed and compared"},
        {"tray_stage", "a tray's own copy of its protocol, and when each stage began"},
        {"stay", "where a tray stood, and from when to when"},
        {"height", "heights of a tray, several a day perhaps"},
        {"tray_note", "what was written down about a tray"},
        {"photo", "photographs of a tray; the files lie in the folder photos"},
        {"water_recipe", "how each kind of water is made"},
        {"watering", "what a tray was given"},
        {"watering_between", "waterings that were no round's, given as needed"},
        {"watering_look", "looks that found no need of water"},
        {"water_reading", "pH and EC of a water or of one tray's"},
        {"harvest", "cuts; a tray's yield is the sum of its cuts"},
        {"bowl", "the bowls that a cut was weighed in"},
        {"residue", "what was left in a tray after cutting, weighed wet"},
        {"price", "prices, each from its day on"},
        {"price_measure", "what a price was given for, where that is not the item's own unit"},
        {"labour_task", "how long a task takes"},
        {"panel", "tastings"},
        {"panel_sample", "the media of a tasting"},
        {"panel_attribute", "what a tasting asks for"},
        {"taster", "who tasted"},
        {"serving", "what was put before a taster, in which turn, under which code"},
        {"score", "what a taster said of a serving"},
        {"climate_logger", "climate loggers, each where it hung"},
        {"climate_hour", "hours of a logger: mean, least, greatest and count of its readings"},
        {"shelf_ppfd", "light that was measured under a shelf's lamps"},
        {"brought_copy", "when a copy that was taken along came back"},
        {"brought_undone", "acts of a copy that could have been done again when it came back"},
        {"brought_same", "rows that were made on both sides and are one"},
    };
    return kNotes;
}

// Of one table's column, else of every table's.
const Notes& columnNotes()
{
    static const Notes kNotes = {
        {"id", "the row's own number"},
        {"name", "its name"},
        {"position", "its place in the order, from 0"},
        {"note", "whatever was noted"},
        {"source", "where its values come from"},
        {"is_retired", "whether it is no longer used"},
        {"on_date", "the day"},
        {"minute", "the time of day"},
        {"slot", "the round of that day"},
        {"bought_on", "the day of purchase"},
        {"draw_number", "the number that draws the same lots again"},
        {"cue", "what to look for before moving on"},
        {"method", "how, in the room's word"},
        {"water", "which water"},
        {"amount_ul", "water, medium or dose given to one tray"},
        {"stage", "the stage"},
        {"length_min", "how long the stage lasts"},
        {"waterings_per_day", "1 or 2; 0: none, or as needed where there is a method"},
        {"rack_id", "the rack"},
        {"shelf_id", "the shelf"},
        {"place_id", "the place"},
        {"variety_id", "the variety"},
        {"seed_lot_id", "the seed lot"},
        {"medium_id", "the medium"},
        {"piece_id", "the piece"},
        {"trial_id", "the trial"},
        {"tray_id", "the tray"},
        {"panel_id", "the tasting"},
        {"gross_mg", "with the bowl"},
        {"tare_mg", "of the empty bowl"},
        {"net_mg", "without the bowl"},
        {"room.units", "how amounts are shown; these files are in SI"},
        {"room.currency", "the currency of all sums"},
        {"room.morning_minute", "when the morning round is walked"},
        {"room.evening_minute", "when the evening round is walked"},
        {"room.tray_length_um", "inner length of a tray"},
        {"room.tray_width_um", "inner width of a tray"},
        {"shelf.light_mw", "power of the lamps over the whole shelf"},
        {"shelf.light_minutes", "light a day"},
        {"place.number", "its number on the shelf, from 1"},
        {"variety.code_prefix", "what its trays' codes begin with"},
        {"variety.seed_mg", "seed for one tray"},
        {"protocol_stage.waters_nutrient_bearing",
         "which water on a medium that bears nutrients; empty: plain where it says nutrient"},
        {"seed_lot.lot_number", "the number on the bag"},
        {"seed_lot.supplier", "who sold it"},
        {"seed_lot.bought_mg", "seed in the whole purchase"},
        {"seed_lot.price", "price of the whole purchase"},
        {"seed_lot.germination_percent", "germination as the supplier says"},
        {"seed_lot.is_used_up", "whether none is left"},
        {"stock_correction.change_mg", "found, or lost below 0"},
        {"stock_correction.reason", "why"},
        {"medium.form", "its form"},
        {"medium.is_nutrient_bearing", "whether it bears nutrients; else it is inert"},
        {"medium.is_reusable", "whether its pieces are used again"},
        {"medium.planned_uses", "uses planned of one piece"},
        {"medium.surface_below_rim_um", "how far its surface lies below the tray's rim"},
        {"medium.amount_ul", "loose mix in one tray"},
        {"medium.marker", "its colour and shape in charts, 0 to 23"},
        {"medium_group.name", "the group"},
        {"piece.number", "its number within its medium, from 1"},
        {"piece.retired_on", "the day it was thrown out"},
        {"sanitising.method", "how it was sanitised"},
        {"season.starts_on", "its first day; it ends where the next begins"},
        {"season.planned_trials", "trials planned; empty: looked at after every sowing"},
        {"season.main_metric", "what it answers with first"},
        {"trial.code", "its short name"},
        {"trial.question", "what it asks"},
        {"trial.margin_mg", "the difference that would change what is done"},
        {"trial.control_medium_id", "the medium that others are compared with"},
        {"trial.started_on", "its first day"},
        {"trial_plan.design", "how the places were drawn"},
        {"trial_plan.seed_mg", "seed for one tray"},
        {"trial_plan.sow_on", "the planned day of sowing"},
        {"trial_plan.sow_minute", "its time of day"},
        {"trial_plan.starts_with_soak", "whether it begins with a soak"},
        {"trial_plan.blocks", "how many blocks"},
        {"trial_plan.trays_each", "trays of each treatment"},
        {"trial_plan.spread_mg", "the spread that was planned with"},
        {"treatment.feeding", "how it is fed"},
        {"planned_tray.treatment", "the position of its treatment"},
        {"planned_tray.block", "its block, from 0"},
        {"planned_tray.is_moved", "whether it was moved by hand after the draw"},
        {"tray.code", "short, unique, never used again"},
        {"tray.seed_mg", "seed sown"},
        {"tray.sown_on", "day 1; while it soaks, the planned day"},
        {"tray.sown_minute", "the time of day of sowing"},
        {"tray.block", "its block within the trial"},
        {"tray.state", "growing, ended by its last cut, or discarded"},
        {"tray.ended_on", "the day of its end"},
        {"tray.ended_minute", "its time of day"},
        {"tray.discard_reason", "why it was discarded"},
        {"tray.set_aside_reason", "why it is left out of answers; empty: it is not"},
        {"tray.sown_by", "who sowed it"},
        {"tray_stage.planned_on", "planned at sowing"},
        {"tray_stage.planned_minute", "its time of day"},
        {"tray_stage.delay_min", "added by \"not yet\""},
        {"tray_stage.started_on", "when it began; empty: not yet"},
        {"tray_stage.started_minute", "its time of day"},
        {"stay.from_on", "the first day"},
        {"stay.from_minute", "its time of day"},
        {"stay.to_on", "the last day; empty: it stands there"},
        {"stay.to_minute", "its time of day"},
        {"height.reading_um", "what was read"},
        {"height.read_from", "from the medium's surface, or from the tray's rim"},
        {"tray_note.text", "what was written"},
        {"photo.file_name", "the file within the folder photos"},
        {"photo.caption", "what is written below it"},
        {"water_recipe.concentrate", "the name on the bottle"},
        {"water_recipe.dose_ul_per_l", "concentrate in a litre of water"},
        {"water_recipe.ph_low", "lowest pH wanted"},
        {"water_recipe.ph_high", "highest pH wanted"},
        {"water_recipe.ec_low_us_cm", "lowest EC wanted"},
        {"water_recipe.ec_high_us_cm", "highest EC wanted"},
        {"watering.method", "from above, or from below"},
        {"watering_between.watering_id", "the watering"},
        {"water_reading.ph", "pH"},
        {"water_reading.ec_us_cm", "electrical conductivity"},
        {"harvest.cut", "the how-many-eth cut of the tray, from 1"},
        {"harvest.is_last", "whether the tray is harvested by it; else it is cut again"},
        {"bowl.harvest_id", "the cut"},
        {"price.item", "what the price is for"},
        {"price.from_date", "the first day it holds"},
        {"price.amount", "the price of one unit or measure"},
        {"price_measure.price_id", "the price"},
        {"price_measure.measure", "what it was given for"},
        {"labour_task.task", "the task, per tray unless said"},
        {"labour_task.seconds", "how long it takes"},
        {"panel.method", "what a taster does"},
        {"panel.closed_on", "the day it was closed; empty: it is open and blind"},
        {"serving.taster_id", "who"},
        {"serving.sample_id", "of which sample"},
        {"serving.turn", "the how-many-eth serving of the taster, from 1"},
        {"serving.code", "three digits"},
        {"score.serving_id", "the serving"},
        {"score.attribute_id", "what was asked"},
        {"logger_id", "the logger"},
        {"climate_logger.light_unit", "what its light is in; empty: it measured none"},
        {"climate_hour.hour", "the hour of the day, from 0, by the room's clock"},
        {"climate_hour.first_minute", "when in the hour its first reading was"},
        {"climate_hour.last_minute", "when in the hour its last reading was"},
        {"climate_hour.temperature_readings", "how many readings"},
        {"climate_hour.temperature_mean_milli", "mean, thousandths of a degree Celsius"},
        {"climate_hour.temperature_low_milli", "least, thousandths of a degree Celsius"},
        {"climate_hour.temperature_high_milli", "greatest, thousandths of a degree Celsius"},
        {"climate_hour.humidity_readings", "how many readings"},
        {"climate_hour.humidity_mean_milli", "mean, thousandths of a percent"},
        {"climate_hour.humidity_low_milli", "least, thousandths of a percent"},
        {"climate_hour.humidity_high_milli", "greatest, thousandths of a percent"},
        {"climate_hour.light_readings", "how many readings"},
        {"climate_hour.light_mean_milli", "mean, thousandths of the logger's unit"},
        {"climate_hour.light_low_milli", "least, thousandths of the logger's unit"},
        {"climate_hour.light_high_milli", "greatest, thousandths of the logger's unit"},
        {"shelf_ppfd.ppfd_milli", "photon flux density, thousandths of a µmol/m²/s"},
        {"brought_copy_id", "the coming back"},
        {"brought_copy.copy_id", "the copy's number"},
        {"brought_copy.brought_on", "the day"},
        {"brought_copy.until_id", "the first number that the copy had not drawn then"},
        {"brought_undone.entry_id", "the act's number in the copy"},
        {"brought_same.table_name", "what kind of row"},
        {"brought_same.there_id", "its number in the copy"},
        {"brought_same.here_id", "its number here"},
        {"score.value", "1 to 9; of a ranking the rank; of a triangle 1 for the odd one"},
    };
    return kNotes;
}

using Words = std::unordered_map<std::string, std::vector<std::string_view>>;

const Words& allWords()
{
    static const std::vector<std::string_view> kStages = {"soak", "under_weight", "blackout",
                                                          "light"};
    static const std::vector<std::string_view> kMethods = {"none", "mist", "below"};
    static const std::vector<std::string_view> kWaters = {"plain", "ph_set", "nutrient"};
    static const std::vector<std::string_view> kSlots = {"morning", "evening"};
    static const Words kWords = {
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
         {"medium", "concentrate", "water", "electricity", "labour", "packaging", "washing",
          "waste"}},
        {"price_measure.measure",
         {"unit", "cubic_metre", "cubic_foot", "us_quart", "us_gallon", "thousand_us_gallons",
          "us_fluid_ounce", "pound", "ounce"}},
        {"labour_task.task",
         {"sowing", "watering", "stage_move", "harvesting", "packing", "clearing_out",
          "piece_washing"}},
        {"panel.method", {"hedonic", "ranking", "triangle"}},
        {"climate_logger.light_unit", {"ppfd", "lux"}},
    };
    return kWords;
}

std::string keyOf(std::string_view table, std::string_view column)
{
    return std::string(table) + "." + std::string(column);
}

std::string_view noteOf(const Notes& notes, const std::string& key)
{
    const auto found = notes.find(key);
    return found == notes.end() ? std::string_view() : found->second;
}

} // namespace

std::string_view meaningOf(std::string_view table)
{
    return noteOf(tableNotes(), std::string(table));
}

std::string_view meaningOf(std::string_view table, std::string_view column)
{
    const std::string_view own = noteOf(columnNotes(), keyOf(table, column));
    return own.empty() ? noteOf(columnNotes(), std::string(column)) : own;
}

const std::vector<std::string_view>& wordsOf(std::string_view table, std::string_view column)
{
    static const std::vector<std::string_view> kNone;
    const auto found = allWords().find(keyOf(table, column));
    return found == allWords().end() ? kNone : found->second;
}

} // namespace plumule
