#include "core/variety/variety_rules.h"

#include "core/base/enum_text.h"
#include "core/base/number_text.h"

#include <algorithm>

namespace plumule {

const char* toText(Stage stage)
{
    switch (stage) {
    case Stage::Soak:
        return "soak";
    case Stage::UnderWeight:
        return "under_weight";
    case Stage::Blackout:
        return "blackout";
    case Stage::Light:
        return "light";
    }
    return "";
}

bool fromText(std::string_view text, Stage& stage)
{
    return matchText(
        text, std::array{Stage::Soak, Stage::UnderWeight, Stage::Blackout, Stage::Light}, stage);
}

const char* toText(WateringMethod method)
{
    switch (method) {
    case WateringMethod::None:
        return "none";
    case WateringMethod::Mist:
        return "mist";
    case WateringMethod::Below:
        return "below";
    }
    return "";
}

bool fromText(std::string_view text, WateringMethod& method)
{
    return matchText(text,
                     std::array{WateringMethod::None, WateringMethod::Mist, WateringMethod::Below},
                     method);
}

const char* toText(WaterKind water)
{
    switch (water) {
    case WaterKind::Plain:
        return "plain";
    case WaterKind::PhSet:
        return "ph_set";
    case WaterKind::Nutrient:
        return "nutrient";
    }
    return "";
}

bool fromText(std::string_view text, WaterKind& water)
{
    return matchText(text, std::array{WaterKind::Plain, WaterKind::PhSet, WaterKind::Nutrient},
                     water);
}

namespace {

Done checkVariety(const Variety& variety)
{
    if (trimmed(variety.name).empty()) {
        return fail(ErrorKind::Missing, "variety.name");
    }
    const std::string& prefix = variety.codePrefix;
    if (prefix.empty()) {
        return fail(ErrorKind::Missing, "variety.code_prefix");
    }
    const bool isUpper = std::all_of(prefix.begin(), prefix.end(),
                                     [](char letter) { return letter >= 'A' && letter <= 'Z'; });
    if (prefix.size() != 2 || !isUpper) {
        return fail(ErrorKind::Invalid, "variety.code_prefix", prefix);
    }
    if (variety.seedPerTray && *variety.seedPerTray <= Mass{}) {
        return fail(ErrorKind::Invalid, "variety.seed_per_tray");
    }
    return {};
}

bool isSound(const ProtocolStage& stage)
{
    const bool hasMethod = stage.method != WateringMethod::None;
    const bool isWateredAnyhow = stage.wateringsPerDay > 0 || stage.amount.has_value();
    return stage.lengthMinutes > 0 && stage.wateringsPerDay >= 0 && stage.wateringsPerDay <= 2 &&
           (hasMethod || !isWateredAnyhow) && stage.amount.value_or(millilitres(1)) > Volume{};
}

} // namespace

Done checkProtocol(const Protocol& protocol)
{
    if (auto checked = checkVariety(protocol.variety); !checked) {
        return checked;
    }
    const ProtocolStage* before = nullptr;
    for (const ProtocolStage& stage : protocol.stages) {
        const bool inOrder = before == nullptr || before->stage < stage.stage;
        if (!inOrder || !isSound(stage)) {
            return fail(ErrorKind::Invalid, "protocol.stage", toText(stage.stage));
        }
        before = &stage;
    }
    return {};
}

Done checkLot(const SeedLot& lot)
{
    if (trimmed(lot.lotNumber).empty()) {
        return fail(ErrorKind::Missing, "seed_lot.lot_number");
    }
    const double germination = lot.germinationPercent.value_or(0);
    if (!(germination >= 0 && germination <= 100)) {
        return fail(ErrorKind::Invalid, "seed_lot.germination");
    }
    if (lot.bought && *lot.bought <= Mass{}) {
        return fail(ErrorKind::Invalid, "seed_lot.bought");
    }
    if (lot.price && *lot.price < Money{}) {
        return fail(ErrorKind::Invalid, "seed_lot.price");
    }
    return {};
}

std::optional<Mass> leftOf(const SeedLot& lot, Mass sown, Mass corrections)
{
    if (!lot.bought) {
        return std::nullopt;
    }
    return *lot.bought - sown + corrections;
}

} // namespace plumule
