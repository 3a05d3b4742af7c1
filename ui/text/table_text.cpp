#include "ui/text/table_text.h"

#include "ui/text/key_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace plumule::ui {
namespace {

class TablesTr
{
    Q_DECLARE_TR_FUNCTIONS(Tables)
};

constexpr std::array kRows = {
    KeyText{"tray", QT_TRANSLATE_NOOP("Tables", "tray")},
    KeyText{"tray_stage", QT_TRANSLATE_NOOP("Tables", "stage of a tray")},
    KeyText{"stay", QT_TRANSLATE_NOOP("Tables", "stay on a place")},
    KeyText{"height", QT_TRANSLATE_NOOP("Tables", "height")},
    KeyText{"tray_note", QT_TRANSLATE_NOOP("Tables", "note on a tray")},
    KeyText{"photo", QT_TRANSLATE_NOOP("Tables", "photograph")},
    KeyText{"watering", QT_TRANSLATE_NOOP("Tables", "watering")},
    KeyText{"watering_between", QT_TRANSLATE_NOOP("Tables", "watering between rounds")},
    KeyText{"watering_look", QT_TRANSLATE_NOOP("Tables", "look without need")},
    KeyText{"water_reading", QT_TRANSLATE_NOOP("Tables", "reading of pH or EC")},
    KeyText{"water_recipe", QT_TRANSLATE_NOOP("Tables", "water recipe")},
    KeyText{"harvest", QT_TRANSLATE_NOOP("Tables", "cut")},
    KeyText{"bowl", QT_TRANSLATE_NOOP("Tables", "bowl")},
    KeyText{"residue", QT_TRANSLATE_NOOP("Tables", "residue")},
    KeyText{"price", QT_TRANSLATE_NOOP("Tables", "price")},
    KeyText{"price_measure", QT_TRANSLATE_NOOP("Tables", "measure of a price")},
    KeyText{"labour_task", QT_TRANSLATE_NOOP("Tables", "time of work")},
    KeyText{"work_time", QT_TRANSLATE_NOOP("Tables", "timed work")},
    KeyText{"room", QT_TRANSLATE_NOOP("Tables", "room")},
    KeyText{"rack", QT_TRANSLATE_NOOP("Tables", "rack")},
    KeyText{"shelf", QT_TRANSLATE_NOOP("Tables", "shelf")},
    KeyText{"place", QT_TRANSLATE_NOOP("Tables", "place")},
    KeyText{"variety", QT_TRANSLATE_NOOP("Tables", "variety")},
    KeyText{"protocol_stage", QT_TRANSLATE_NOOP("Tables", "stage of a protocol")},
    KeyText{"seed_lot", QT_TRANSLATE_NOOP("Tables", "seed lot")},
    KeyText{"stock_correction", QT_TRANSLATE_NOOP("Tables", "count of seed")},
    KeyText{"medium", QT_TRANSLATE_NOOP("Tables", "medium")},
    KeyText{"medium_group", QT_TRANSLATE_NOOP("Tables", "group of media")},
    KeyText{"medium_as_run", QT_TRANSLATE_NOOP("Tables", "medium with its own feeding")},
    KeyText{"piece", QT_TRANSLATE_NOOP("Tables", "piece")},
    KeyText{"sanitising", QT_TRANSLATE_NOOP("Tables", "sanitising")},
    KeyText{"trial", QT_TRANSLATE_NOOP("Tables", "trial")},
    KeyText{"trial_plan", QT_TRANSLATE_NOOP("Tables", "plan of a trial")},
    KeyText{"treatment", QT_TRANSLATE_NOOP("Tables", "treatment of a trial")},
    KeyText{"planned_tray", QT_TRANSLATE_NOOP("Tables", "planned tray")},
    KeyText{"panel", QT_TRANSLATE_NOOP("Tables", "tasting")},
    KeyText{"panel_sample", QT_TRANSLATE_NOOP("Tables", "medium of a tasting")},
    KeyText{"panel_attribute", QT_TRANSLATE_NOOP("Tables", "attribute of a tasting")},
    KeyText{"taster", QT_TRANSLATE_NOOP("Tables", "taster")},
    KeyText{"serving", QT_TRANSLATE_NOOP("Tables", "serving")},
    KeyText{"score", QT_TRANSLATE_NOOP("Tables", "score")},
    KeyText{"season", QT_TRANSLATE_NOOP("Tables", "season")},
    KeyText{"sanitising_detail", QT_TRANSLATE_NOOP("Tables", "how a piece was sanitised")},
    KeyText{"supply", QT_TRANSLATE_NOOP("Tables", "supply")},
    KeyText{"supply_count", QT_TRANSLATE_NOOP("Tables", "count of a supply")},
    KeyText{"seed_low", QT_TRANSLATE_NOOP("Tables", "mark of low seed")},
    KeyText{"climate_logger", QT_TRANSLATE_NOOP("Tables", "climate logger")},
    KeyText{"climate_hour", QT_TRANSLATE_NOOP("Tables", "hour of climate")},
    KeyText{"shelf_ppfd", QT_TRANSLATE_NOOP("Tables", "light under lamps")},
    KeyText{"repeat_sowing", QT_TRANSLATE_NOOP("Tables", "repeating sowing")},
    KeyText{"repeat_day", QT_TRANSLATE_NOOP("Tables", "day of a repeating sowing")},
    KeyText{"promised_order", QT_TRANSLATE_NOOP("Tables", "order")},
    KeyText{"order_cut", QT_TRANSLATE_NOOP("Tables", "cut put to an order")},
    KeyText{"taken_copy", QT_TRANSLATE_NOOP("Tables", "copy that was taken along")},
    KeyText{"brought_copy", QT_TRANSLATE_NOOP("Tables", "copy that came back")},
    KeyText{"brought_undone", QT_TRANSLATE_NOOP("Tables", "undone act of a copy")},
    KeyText{"brought_same", QT_TRANSLATE_NOOP("Tables", "row made on both sides")},
    KeyText{"history", QT_TRANSLATE_NOOP("Tables", "step of the history")},
    KeyText{"copy", QT_TRANSLATE_NOOP("Tables", "number of this copy")},
};

struct FieldText
{
    const char* table; // empty: of any
    const char* column;
    const char* text;
};

// The first that fits.
constexpr std::array kFields = {
    FieldText{"variety", "seed_mg", QT_TRANSLATE_NOOP("Tables", "Seed a tray")},
    FieldText{"variety", "code_prefix", QT_TRANSLATE_NOOP("Tables", "Letters of its codes")},
    FieldText{"tray", "seed_mg", QT_TRANSLATE_NOOP("Tables", "Seed a tray")},
    FieldText{"trial_plan", "seed_mg", QT_TRANSLATE_NOOP("Tables", "Seed a tray")},
    FieldText{"tray", "sown_by", QT_TRANSLATE_NOOP("Tables", "Sown by")},
    FieldText{"seed_lot", "bought_mg", QT_TRANSLATE_NOOP("Tables", "Weight bought")},
    FieldText{"seed_lot", "price", QT_TRANSLATE_NOOP("Tables", "Price of it all")},
    FieldText{"seed_lot", "germination_percent", QT_TRANSLATE_NOOP("Tables", "Germination")},
    FieldText{"seed_lot", "lot_number", QT_TRANSLATE_NOOP("Tables", "Lot number")},
    FieldText{"stock_correction", "change_mg", QT_TRANSLATE_NOOP("Tables", "Weight counted")},
    FieldText{"medium", "planned_uses", QT_TRANSLATE_NOOP("Tables", "Planned uses of a piece")},
    FieldText{"medium", "amount_ul", QT_TRANSLATE_NOOP("Tables", "Amount a tray")},
    FieldText{"protocol_stage", "amount_ul", QT_TRANSLATE_NOOP("Tables", "Amount a tray, water")},
    FieldText{"watering", "amount_ul", QT_TRANSLATE_NOOP("Tables", "Amount a tray")},
    FieldText{"trial", "margin_mg", QT_TRANSLATE_NOOP("Tables", "Difference that matters")},
    FieldText{"trial_plan", "spread_mg", QT_TRANSLATE_NOOP("Tables", "Spread from tray to tray")},
    FieldText{"season", "planned_trials", QT_TRANSLATE_NOOP("Tables", "Trials planned")},
    FieldText{"season", "starts_on", QT_TRANSLATE_NOOP("Tables", "Sowings from")},
    FieldText{"price", "amount", QT_TRANSLATE_NOOP("Tables", "Price")},
    FieldText{"price", "from_date", QT_TRANSLATE_NOOP("Tables", "From")},
    FieldText{"labour_task", "seconds", QT_TRANSLATE_NOOP("Tables", "Time of work")},
    FieldText{"work_time", "seconds", QT_TRANSLATE_NOOP("Tables", "Time of work")},
    FieldText{"work_time", "times", QT_TRANSLATE_NOOP("Tables", "How often")},
    FieldText{"room", "currency", QT_TRANSLATE_NOOP("Tables", "Currency")},
    FieldText{"room", "morning_minute", QT_TRANSLATE_NOOP("Tables", "Morning round at")},
    FieldText{"room", "evening_minute", QT_TRANSLATE_NOOP("Tables", "Evening round at")},
    FieldText{"room", "tray_length_um", QT_TRANSLATE_NOOP("Tables", "A tray's inner size")},
    FieldText{"room", "tray_width_um", QT_TRANSLATE_NOOP("Tables", "A tray's inner size")},
    FieldText{"shelf", "light_mw", QT_TRANSLATE_NOOP("Tables", "Light, power")},
    FieldText{"shelf", "light_minutes", QT_TRANSLATE_NOOP("Tables", "Light, hours a day")},
    FieldText{"medium_group", "name", QT_TRANSLATE_NOOP("Tables", "Your own group")},
    FieldText{"panel_attribute", "name", QT_TRANSLATE_NOOP("Tables", "Attributes")},
    FieldText{"taster", "name", QT_TRANSLATE_NOOP("Tables", "Tasters")},
    FieldText{"water_recipe", "dose_ul_per_l", QT_TRANSLATE_NOOP("Tables", "Dose")},
    FieldText{"water_recipe", "concentrate", QT_TRANSLATE_NOOP("Tables", "Concentrate")},
    FieldText{"", "surface_below_rim_um", QT_TRANSLATE_NOOP("Tables", "Surface below the rim")},
    FieldText{"", "reading_um", QT_TRANSLATE_NOOP("Tables", "Height")},
    FieldText{"", "gross_mg", QT_TRANSLATE_NOOP("Tables", "Weight on the scale")},
    FieldText{"", "tare_mg", QT_TRANSLATE_NOOP("Tables", "Weight of the bowl")},
    FieldText{"", "net_mg", QT_TRANSLATE_NOOP("Tables", "Net weight")},
    FieldText{"", "length_min", QT_TRANSLATE_NOOP("Tables", "Length of a stage")},
    FieldText{"", "delay_min", QT_TRANSLATE_NOOP("Tables", "More time for a stage")},
    FieldText{"", "ph", QT_TRANSLATE_NOOP("Tables", "pH")},
    FieldText{"", "ph_low", QT_TRANSLATE_NOOP("Tables", "pH")},
    FieldText{"", "ph_high", QT_TRANSLATE_NOOP("Tables", "pH")},
    FieldText{"", "ec_us_cm", QT_TRANSLATE_NOOP("Tables", "EC")},
    FieldText{"", "ec_low_us_cm", QT_TRANSLATE_NOOP("Tables", "EC")},
    FieldText{"", "ec_high_us_cm", QT_TRANSLATE_NOOP("Tables", "EC")},
    FieldText{"", "name", QT_TRANSLATE_NOOP("Tables", "Name")},
    FieldText{"", "code", QT_TRANSLATE_NOOP("Tables", "Code")},
    FieldText{"", "note", QT_TRANSLATE_NOOP("Tables", "Note")},
    FieldText{"", "text", QT_TRANSLATE_NOOP("Tables", "Note")},
    FieldText{"", "caption", QT_TRANSLATE_NOOP("Tables", "Words under the photograph")},
    FieldText{"", "question", QT_TRANSLATE_NOOP("Tables", "Question")},
    FieldText{"", "source", QT_TRANSLATE_NOOP("Tables", "Source of the values")},
    FieldText{"", "supplier", QT_TRANSLATE_NOOP("Tables", "Supplier")},
    FieldText{"", "cue", QT_TRANSLATE_NOOP("Tables", "Cue")},
    FieldText{"", "method", QT_TRANSLATE_NOOP("Tables", "How")},
    FieldText{"", "reason", QT_TRANSLATE_NOOP("Tables", "Reason")},
    FieldText{"", "discard_reason", QT_TRANSLATE_NOOP("Tables", "Why it was discarded")},
    FieldText{"", "set_aside_reason", QT_TRANSLATE_NOOP("Tables", "Why it was set aside")},
    FieldText{"", "sown_on", QT_TRANSLATE_NOOP("Tables", "Sown on")},
    FieldText{"", "ended_on", QT_TRANSLATE_NOOP("Tables", "Ended on")},
    FieldText{"", "bought_on", QT_TRANSLATE_NOOP("Tables", "Bought on")},
    FieldText{"", "retired_on", QT_TRANSLATE_NOOP("Tables", "Retired on")},
    FieldText{"", "on_date", QT_TRANSLATE_NOOP("Tables", "Day")},
    FieldText{"", "sow_on", QT_TRANSLATE_NOOP("Tables", "Day of sowing")},
    FieldText{"", "draw_number", QT_TRANSLATE_NOOP("Tables", "Number of the draw")},
    FieldText{"", "marker", QT_TRANSLATE_NOOP("Tables", "Colour and shape")},
    FieldText{"", "block", QT_TRANSLATE_NOOP("Tables", "Block")},
    FieldText{"", "number", QT_TRANSLATE_NOOP("Tables", "Number")},
    FieldText{"", "position", QT_TRANSLATE_NOOP("Tables", "Position")},
};

} // namespace

QString rowName(const std::string& table)
{
    const char* text = textOf(kRows, table);
    return text == nullptr ? QString::fromStdString(table).replace('_', ' ') : TablesTr::tr(text);
}

QString fieldName(const std::string& table, const std::string& column)
{
    const auto found = std::find_if(kFields.begin(), kFields.end(), [&](const FieldText& each) {
        return each.column == column && (*each.table == '\0' || each.table == table);
    });
    return found == kFields.end() ? QString::fromStdString(column).replace('_', ' ')
                                  : TablesTr::tr(found->text);
}

} // namespace plumule::ui
