#include "core/journal/check/stored_words.h"

#include "core/climate/climate.h"
#include "core/cost/cost.h"
#include "core/order/order.h"
#include "core/review/facts/response.h"
#include "core/room/room.h"
#include "core/stock/stock_item.h"
#include "core/storage/history.h"
#include "core/tasting/tasting.h"
#include "core/tray/tray.h"
#include "core/trial/trial_plan.h"
#include "core/week/repeat.h"

namespace plumule {
namespace {

template <class Enum>
WordColumn wordOf(const char* table, const char* column)
{
    return {table, column,
            [](std::string_view text) {
                Enum value{};
                return fromText(text, value);
            },
            toText(Enum{})};
}

} // namespace

const std::vector<WordColumn>& wordColumns()
{
    static const std::vector<WordColumn> kColumns = {
        wordOf<UnitSystem>("room", "units"),
        wordOf<Stage>("protocol_stage", "stage"),
        wordOf<WateringMethod>("protocol_stage", "method"),
        wordOf<WaterKind>("protocol_stage", "water"),
        wordOf<WaterKind>("protocol_stage", "waters_nutrient_bearing"),
        wordOf<MediumForm>("medium", "form"),
        wordOf<TrayState>("tray", "state"),
        wordOf<Stage>("tray_stage", "stage"),
        wordOf<WateringMethod>("tray_stage", "method"),
        wordOf<WaterKind>("tray_stage", "water"),
        wordOf<ReadFrom>("height", "read_from"),
        wordOf<WaterKind>("water_recipe", "water"),
        wordOf<Slot>("watering", "slot"),
        wordOf<WateringMethod>("watering", "method"),
        wordOf<WaterKind>("watering", "water"),
        wordOf<Slot>("watering_look", "slot"),
        wordOf<Slot>("water_reading", "slot"),
        wordOf<WaterKind>("water_reading", "water"),
        wordOf<PriceItem>("price", "item"),
        wordOf<PriceMeasure>("price_measure", "measure"),
        wordOf<LabourKind>("labour_task", "task"),
        wordOf<LabourKind>("work_time", "task"),
        wordOf<Design>("trial_plan", "design"),
        wordOf<Feeding>("treatment", "feeding"),
        wordOf<TastingMethod>("panel", "method"),
        wordOf<Response>("season", "main_metric"),
        wordOf<LightUnit>("climate_logger", "light_unit"),
        wordOf<RepeatAnswer>("repeat_day", "answer"),
        wordOf<Recurrence>("promised_order", "recurs"),
        wordOf<StrengthUnit>("sanitising_detail", "strength_unit"),
        wordOf<StockKind>("supply", "kind"),
        wordOf<StockUnit>("supply", "unit"),
        wordOf<StockEvent>("supply_count", "what"),
        wordOf<HistoryState>("history", "state"),
    };
    return kColumns;
}

} // namespace plumule
