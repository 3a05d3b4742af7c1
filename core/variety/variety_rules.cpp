#include "core/variety/variety_rules.h"

#include "core/base/enum_text.h"
#include "core/base/number_text.h"
#include "core/variety/variety_reason.h"

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

constexpr int kMostWateringsPerDay = 2; // one a round

Done checkVariety(const Variety& variety)
{
    if (trimmed(variety.name).empty()) {
        return fail(ErrorKind::Missing, VarietyReason::NameMissing);
    }
    const std::string& prefix = variety.codePrefix;
    if (prefix.empty()) {
        return fail(ErrorKind::Missing, VarietyReason::PrefixMissing);
    }
    const bool isUpper = std::all_of(prefix.begin(), prefix.end(),
                                     [](char letter) { return letter >= 'A' && letter <= 'Z'; });
    if (prefix.size() != 2 || !isUpper) {
        return fail(ErrorKind::Invalid, VarietyReason::PrefixForm, prefix);
    }
    if (variety.seedPerTray && *variety.seedPerTray <= Mass{}) {
        return fail(ErrorKind::Invalid, VarietyReason::SeedPerTray);
    }
    return {};
}

Done checkStage(const ProtocolStage& stage)
{
    const char* name = toText(stage.stage);
    if (stage.lengthMinutes <= 0) {
        return fail(ErrorKind::Invalid, VarietyReason::StageLength, name);
    }
    if (stage.wateringsPerDay < 0 || stage.wateringsPerDay > kMostWateringsPerDay) {
        return fail(ErrorKind::Invalid, VarietyReason::StageWaterings, name, kMostWateringsPerDay);
    }
    const bool isWateredAnyhow = stage.wateringsPerDay > 0 || stage.amount.has_value();
    if (isWateredAnyhow && stage.method == WateringMethod::None) {
        return fail(ErrorKind::Invalid, VarietyReason::StageMethod, name);
    }
    if (stage.amount && *stage.amount <= Volume{}) {
        return fail(ErrorKind::Invalid, VarietyReason::StageAmount, name);
    }
    return {};
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
        if (!inOrder) {
            return fail(ErrorKind::Invalid, VarietyReason::StageOrder, toText(stage.stage));
        }
        if (auto checked = checkStage(stage); !checked) {
            return checked;
        }
        before = &stage;
    }
    return {};
}

Done checkLot(const SeedLot& lot)
{
    if (trimmed(lot.lotNumber).empty()) {
        return fail(ErrorKind::Missing, VarietyReason::LotNumberMissing);
    }
    const double germination = lot.germinationPercent.value_or(0);
    if (!(germination >= 0 && germination <= 100)) {
        return fail(ErrorKind::Invalid, VarietyReason::LotGermination);
    }
    if (lot.bought && *lot.bought <= Mass{}) {
        return fail(ErrorKind::Invalid, VarietyReason::LotBought);
    }
    if (lot.price && *lot.price < Money{}) {
        return fail(ErrorKind::Invalid, VarietyReason::LotPrice);
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
