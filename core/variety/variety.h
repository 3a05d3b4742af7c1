#pragma once

#include "core/base/date.h"
#include "core/base/id.h"
#include "core/base/money.h"
#include "core/base/quantity.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumule {

struct VarietyTag;
struct SeedLotTag;
struct ProtocolStageTag;
struct StockCorrectionTag;
struct SeedLowTag;
using VarietyId = Id<VarietyTag>;
using SeedLotId = Id<SeedLotTag>;
using ProtocolStageId = Id<ProtocolStageTag>;
using StockCorrectionId = Id<StockCorrectionTag>;
using SeedLowId = Id<SeedLowTag>;

// What a tray passes through, in this order; a protocol may leave some out.
enum class Stage
{
    Soak,
    UnderWeight,
    Blackout,
    Light
};
[[nodiscard]] const char* toText(Stage stage); // soak, under_weight, blackout, light
bool fromText(std::string_view text, Stage& stage);

enum class WateringMethod
{
    None,
    Mist, // from above
    Below // from below
};
[[nodiscard]] const char* toText(WateringMethod method); // none, mist, below
bool fromText(std::string_view text, WateringMethod& method);

enum class WaterKind
{
    Plain,
    PhSet,
    Nutrient
};
[[nodiscard]] const char* toText(WaterKind water); // plain, ph_set, nutrient
bool fromText(std::string_view text, WaterKind& water);

// One stage of a variety's protocol.
struct ProtocolStage
{
    ProtocolStageId id;
    VarietyId variety;
    int position = 0;
    Stage stage = Stage::UnderWeight;
    int lengthMinutes = 0;
    std::string cue;         // what to look for before moving on, in the grower's words
    int wateringsPerDay = 0; // 1 (mornings) or 2; 0: none, or with a method as needed
    WateringMethod method = WateringMethod::None;
    std::optional<Volume> amount;       // per tray and watering; none where it is not measured
    WaterKind water = WaterKind::Plain; // on an inert medium
    // On a nutrient-bearing medium; none: nutrient becomes pH-set water, anything else stays.
    std::optional<WaterKind> waterOnNutrientBearing;
    bool operator==(const ProtocolStage&) const = default;
};

struct Variety
{
    VarietyId id;
    std::string name;       // "Radish, rose"
    std::string codePrefix; // "RD": 2 letters that begin its trays' codes
    std::optional<Mass> seedPerTray;
    std::string source; // where the protocol's values come from; "from memory" where nobody read it
    std::string note;
    bool isRetired = false;
    bool operator==(const Variety&) const = default;
};

// A variety with its stages in order.
struct Protocol
{
    Variety variety;
    std::vector<ProtocolStage> stages;
    bool operator==(const Protocol&) const = default;
};

// One purchase of one variety's seed.
struct SeedLot
{
    SeedLotId id;
    VarietyId variety;
    std::string lotNumber;
    std::string supplier;
    std::optional<Date> boughtOn;
    std::optional<Mass> bought;
    std::optional<Money> price; // of the whole purchase
    std::optional<double> germinationPercent;
    std::string note;
    bool isUsedUp = false;
    bool operator==(const SeedLot&) const = default;
};

// Seed found or lost when the shelf was counted.
struct StockCorrection
{
    StockCorrectionId id;
    SeedLotId lot;
    Date on;
    Mass change;
    std::string reason;
    bool operator==(const StockCorrection&) const = default;
};

// From when on a variety's seed runs low: less than so many days' sowing, or less than so much.
// None: the program's own, and no amount.
struct SeedLow
{
    SeedLowId id;
    VarietyId variety;
    std::optional<int> days;
    std::optional<Mass> amount;
    bool operator==(const SeedLow&) const = default;
};

// A lot with what is left of it: bought less sown, corrected. None when the purchase was not
// weighed.
struct SeedLotStock
{
    SeedLot lot;
    Mass sown;
    std::optional<Mass> left;
};

} // namespace plumule
