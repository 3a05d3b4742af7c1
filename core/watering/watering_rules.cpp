#include "core/watering/watering_rules.h"

#include "core/tray/tray_reason.h"
#include "core/watering/watering_reason.h"

namespace plumule {
namespace {

constexpr double kHighestPh = 14;
constexpr int kHighestEc = 20'000;

bool isWithin(std::optional<double> value, double highest)
{
    return !value || (*value >= 0 && *value <= highest);
}

bool isBand(std::optional<double> low, std::optional<double> high, double highest)
{
    return isWithin(low, highest) && isWithin(high, highest) && !(low && high && *low > *high);
}

} // namespace

Done checkReading(const WaterReading& reading)
{
    if (!reading.ph && !reading.ec) {
        return fail(ErrorKind::Missing, WateringReason::ReadingMissing);
    }
    if (!isWithin(reading.ph, kHighestPh)) {
        return fail(ErrorKind::Invalid, WateringReason::ReadingPh);
    }
    if (!isWithin(reading.ec, kHighestEc)) {
        return fail(ErrorKind::Invalid, WateringReason::ReadingEc, kHighestEc);
    }
    return {};
}

Done checkRecipe(const WaterRecipe& recipe)
{
    if (recipe.dosePerLitre && recipe.dosePerLitre->count() < 0) {
        return fail(ErrorKind::Invalid, WateringReason::RecipeDose);
    }
    if (!isBand(recipe.phLow, recipe.phHigh, kHighestPh)) {
        return fail(ErrorKind::Invalid, WateringReason::RecipePh);
    }
    if (!isBand(recipe.ecLow, recipe.ecHigh, kHighestEc)) {
        return fail(ErrorKind::Invalid, WateringReason::RecipeEc, kHighestEc);
    }
    return {};
}

Done checkBetween(const BetweenDraft& draft, const std::vector<TrayRecord>& trays, Moment now)
{
    if (trays.empty()) {
        return fail(ErrorKind::Missing, WateringReason::NoTrayChosen);
    }
    Watering given;
    given.method = draft.method;
    given.amount = draft.amount;
    given.minute = draft.at.minute;
    if (auto checked = checkGiven(given); !checked) {
        return checked;
    }
    if (draft.at > now) {
        return fail(ErrorKind::Invalid, WateringReason::TimeAhead);
    }
    for (const TrayRecord& record : trays) {
        if (record.tray.state != TrayState::Growing) {
            return fail(ErrorKind::Conflict, TrayReason::NotGrowing, record.tray.code);
        }
        const auto begun =
            record.stages.empty() ? std::optional<Moment>() : record.stages.front().started();
        if (draft.at < begun.value_or(record.tray.sownAt())) {
            return fail(ErrorKind::Invalid, WateringReason::BeforeSowing, record.tray.code);
        }
    }
    return {};
}

Done checkGiven(const Watering& watering)
{
    if (watering.amount && watering.amount->count() < 0) {
        return fail(ErrorKind::Invalid, WateringReason::Amount);
    }
    if (watering.method == WateringMethod::None) {
        return fail(ErrorKind::Invalid, WateringReason::MethodMissing);
    }
    if (watering.minute < 0 || watering.minute >= kMinutesPerDay) {
        return fail(ErrorKind::Invalid, WateringReason::Minute);
    }
    return {};
}

} // namespace plumule
