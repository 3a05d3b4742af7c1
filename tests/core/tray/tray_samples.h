#pragma once

#include "core/tray/stage_plan.h"

namespace plumule {

inline constexpr int kDay = kMinutesPerDay;

inline ProtocolStage protocolStage(Stage stage, int minutes, int wateringsPerDay,
                                   WateringMethod method, std::optional<Volume> amount = {},
                                   WaterKind water = WaterKind::Plain)
{
    ProtocolStage one;
    one.stage = stage;
    one.lengthMinutes = minutes;
    one.cue = std::string("leave ") + toText(stage);
    one.wateringsPerDay = wateringsPerDay;
    one.method = method;
    one.amount = amount;
    one.water = water;
    return one;
}

// Three days under weight, one of blackout, eight in light; misted twice a day till light, then
// half a US cup of nutrient mix from below twice a day (common practice, no source).
inline Protocol broccoli()
{
    Protocol protocol;
    protocol.variety.name = "Broccoli";
    protocol.variety.codePrefix = "BR";
    protocol.variety.seedPerTray = grams(25);
    protocol.stages = {protocolStage(Stage::UnderWeight, 3 * kDay, 2, WateringMethod::Mist),
                       protocolStage(Stage::Blackout, kDay, 2, WateringMethod::Mist),
                       protocolStage(Stage::Light, 8 * kDay, 2, WateringMethod::Below,
                                     millilitres(118), WaterKind::Nutrient)};
    return protocol;
}

// As peas: eight hours of soak before it is sown.
inline Protocol soaked()
{
    Protocol protocol = broccoli();
    protocol.stages.insert(protocol.stages.begin(),
                           protocolStage(Stage::Soak, 8 * 60, 0, WateringMethod::None));
    return protocol;
}

inline Medium inertMat()
{
    Medium medium;
    medium.id = {1};
    medium.name = "Mat";
    medium.form = MediumForm::Mat;
    medium.surfaceBelowRim = millimetres(20);
    return medium;
}

} // namespace plumule
