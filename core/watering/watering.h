#pragma once

#include "core/room/room.h"
#include "core/tray/tray.h"

#include <optional>
#include <string>
#include <vector>

namespace plumule {

struct WateringTag;
struct WaterRecipeTag;
struct WaterReadingTag;
struct WateringLookTag;
using WateringId = Id<WateringTag>;
using WaterRecipeId = Id<WaterRecipeTag>;
using WaterReadingId = Id<WaterReadingTag>;
using WateringLookId = Id<WateringLookTag>;

// What one tray was given: in a round, one row a tick; or between rounds, any number of times.
struct Watering
{
    WateringId id;
    TrayId tray;
    Date on;
    Slot slot = Slot::Morning;
    int minute = 0; // when it was ticked
    WateringMethod method = WateringMethod::Mist;
    WaterKind water = WaterKind::Plain;
    std::optional<Volume> amount; // given; none where it is not measured
    bool isBetween = false;       // as needed, since the round of that slot began; no tick of it
    bool operator==(const Watering&) const = default;
};

// A tray that is watered as needed was looked at in a round and needed nothing.
struct WateringLook
{
    WateringLookId id;
    TrayId tray;
    Date on;
    Slot slot = Slot::Morning;
    int minute = 0;
    bool operator==(const WateringLook&) const = default;
};

// Water given between rounds, the same to each of the trays.
struct BetweenDraft
{
    std::vector<TrayId> trays;
    WateringMethod method = WateringMethod::Below;
    WaterKind water = WaterKind::Plain;
    std::optional<Volume> amount; // a tray
    Moment at;
};

// How a kind of water is made. There is one recipe a kind.
struct WaterRecipe
{
    WaterRecipeId id;
    WaterKind water = WaterKind::Nutrient;
    std::string concentrate; // its name on the bottle; empty where nothing is added
    std::optional<Volume> dosePerLitre;
    std::optional<double> phLow;
    std::optional<double> phHigh;
    std::optional<double> ecLow; // µS/cm
    std::optional<double> ecHigh;
    bool operator==(const WaterRecipe&) const = default;
};

// A pH or EC reading of the mixed water, or of one tray's.
struct WaterReading
{
    WaterReadingId id;
    Date on;
    Slot slot = Slot::Morning;
    int minute = 0;
    WaterKind water = WaterKind::Nutrient;
    std::optional<TrayId> tray;
    std::optional<double> ph;
    std::optional<double> ec; // µS/cm
    bool operator==(const WaterReading&) const = default;
};

// What was written down about one tray in a round, as one act. What is none was left out.
struct TrayRemark
{
    TrayId tray;
    Date date; // of the round
    Slot slot = Slot::Morning;
    Moment at;
    std::string note;
    std::optional<Length> height;
    ReadFrom from = ReadFrom::Surface;
    std::optional<Volume> given;        // a tick of the round with this amount, or its correction
    WaterKind water = WaterKind::Plain; // that the readings are of
    std::optional<double> ph;
    std::optional<double> ec; // µS/cm

    [[nodiscard]] bool isEmpty() const { return note.empty() && !height && !given && !ph && !ec; }
};

// Concentrate for an amount of mixed water: litres × dose.
[[nodiscard]] Volume concentrateFor(Volume water, Volume dosePerLitre);

// 1 US fl oz per US gallon is 7.8125 mL/L: 29.5735295625 / 3.785411784 (NIST SP 811 units).
[[nodiscard]] double millilitresPerLitreFrom(double usFluidOuncesPerUsGallon);

} // namespace plumule
