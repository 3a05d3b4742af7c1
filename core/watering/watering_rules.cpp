#include "core/watering/watering_rules.h"

namespace plumule {
namespace {

constexpr double kHighestPh = 14;
constexpr double kHighestEc = 20'000;

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
        return fail(ErrorKind::Missing, "reading");
    }
    if (!isWithin(reading.ph, kHighestPh)) {
        return fail(ErrorKind::Invalid, "reading.ph", std::to_string(*reading.ph));
    }
    if (!isWithin(reading.ec, kHighestEc)) {
        return fail(ErrorKind::Invalid, "reading.ec", std::to_string(*reading.ec));
    }
    return {};
}

Done checkRecipe(const WaterRecipe& recipe)
{
    if (recipe.dosePerLitre && recipe.dosePerLitre->count() < 0) {
        return fail(ErrorKind::Invalid, "recipe.dose",
                    std::to_string(inMillilitres(*recipe.dosePerLitre)));
    }
    if (!isBand(recipe.phLow, recipe.phHigh, kHighestPh)) {
        return fail(ErrorKind::Invalid, "recipe.ph");
    }
    if (!isBand(recipe.ecLow, recipe.ecHigh, kHighestEc)) {
        return fail(ErrorKind::Invalid, "recipe.ec");
    }
    return {};
}

Done checkBetween(const BetweenDraft& draft, const std::vector<TrayRecord>& trays, Moment now)
{
    if (trays.empty()) {
        return fail(ErrorKind::Missing, "watering.trays");
    }
    Watering given;
    given.method = draft.method;
    given.amount = draft.amount;
    given.minute = draft.at.minute;
    if (auto checked = checkGiven(given); !checked) {
        return checked;
    }
    if (draft.at > now) {
        return fail(ErrorKind::Invalid, "watering.time", toIso(draft.at.date));
    }
    for (const TrayRecord& record : trays) {
        if (record.tray.state != TrayState::Growing) {
            return fail(ErrorKind::Conflict, "tray.state", record.tray.code);
        }
        const auto begun =
            record.stages.empty() ? std::optional<Moment>() : record.stages.front().started();
        if (draft.at < begun.value_or(record.tray.sownAt())) {
            return fail(ErrorKind::Invalid, "watering.time", record.tray.code);
        }
    }
    return {};
}

Done checkGiven(const Watering& watering)
{
    if (watering.amount && watering.amount->count() < 0) {
        return fail(ErrorKind::Invalid, "watering.amount",
                    std::to_string(inMillilitres(*watering.amount)));
    }
    if (watering.method == WateringMethod::None) {
        return fail(ErrorKind::Invalid, "watering.method");
    }
    if (watering.minute < 0 || watering.minute >= kMinutesPerDay) {
        return fail(ErrorKind::Invalid, "watering.minute", std::to_string(watering.minute));
    }
    return {};
}

} // namespace plumule
