#pragma once

#include "core/base/money.h"
#include "core/harvest/harvest.h"
#include "core/medium/medium.h"
#include "core/watering/watering.h"

#include <map>
#include <optional>
#include <string_view>
#include <vector>

namespace plumule {

struct PriceTag;
struct LabourTaskTag;
using PriceId = Id<PriceTag>;
using LabourTaskId = Id<LabourTaskTag>;

// What a dated price is for, and its unit.
enum class PriceItem
{
    Medium,      // a litre of a loose mix, a piece of a mat or mesh
    Concentrate, // a litre
    Water,       // a litre
    Electricity, // a kWh
    Labour,      // an hour
    Packaging,   // a harvested tray
    Washing,     // water and sanitiser for one washing of a piece
    Waste        // a kilogram of residue taken away
};
[[nodiscard]] const char* toText(PriceItem item);
bool fromText(std::string_view text, PriceItem& item);

// What an amount of money is given for: the item's own unit, or a measure that sellers name.
enum class PriceMeasure
{
    Unit,
    CubicMetre,
    CubicFoot,
    UsQuart,
    UsGallon,
    ThousandUsGallons,
    UsFluidOunce,
    Pound,
    Ounce
};
[[nodiscard]] const char* toText(PriceMeasure measure);
bool fromText(std::string_view text, PriceMeasure& measure);
// How many of the item's units (litres, kilograms) the measure is. Exact by definition (NIST
// Handbook 44, appendix C).
[[nodiscard]] double unitsIn(PriceMeasure measure);

// Holds from its day until the next of the same item.
struct Price
{
    PriceId id;
    PriceItem item = PriceItem::Electricity;
    std::optional<MediumId> medium; // for PriceItem::Medium
    Date from;
    Money amount; // as it was given, for one measure
    PriceMeasure measure = PriceMeasure::Unit;
    bool operator==(const Price&) const = default;
};

// Work that is counted, per tray unless said.
enum class LabourKind
{
    Sowing,
    Watering,   // one tray, one round
    StageMove,  // one tray, one move to the next stage
    Harvesting, // cut and weigh
    Packing,
    ClearingOut,
    PieceWashing // one reusable piece
};
[[nodiscard]] const char* toText(LabourKind kind);
bool fromText(std::string_view text, LabourKind& kind);

struct LabourTask
{
    LabourTaskId id;
    LabourKind kind = LabourKind::Sowing;
    int seconds = 0;
    bool operator==(const LabourTask&) const = default;
};

// The cost of one tray by its parts, in currency units. A part whose price or amount is not known
// is none: it is missing from the total, and the answer says so.
struct TrayCost
{
    std::optional<double> seed;
    std::optional<double> medium; // a loose mix, or one use of a piece spread over its planned uses
    std::optional<double> washing; // of a reusable piece: water, sanitiser and minutes
    std::optional<double> nutrient;
    std::optional<double> water;
    std::optional<double> light;
    std::optional<double> labour;
    std::optional<double> packaging;
    std::optional<double> waste;

    [[nodiscard]] double total() const;
    [[nodiscard]] int unknownParts() const;
};

// A point of the cost curve of a reusable medium.
struct CostPoint
{
    int uses = 1;
    double costPerGram = 0;
};

// The first use n at which a reusable piece has cost no more than n single-use fillings:
// price + washing·n ≤ single·n. None when washing alone costs as much.
[[nodiscard]] std::optional<int> paybackUse(double piecePrice, double singleUseCost,
                                            double washingCost);

// Everything the cost of trays is worked out from.
struct CostFacts
{
    RoomLayout layout;
    std::vector<Price> prices;
    std::vector<LabourTask> labour;
    std::vector<WaterRecipe> recipes;
    std::map<SeedLotId, SeedLot> lots;
};

// What happened to one tray, as far as it costs.
struct TrayFacts
{
    const TrayRecord* record = nullptr;
    std::vector<Stay> stays;
    std::vector<Watering> waterings;
    std::vector<Harvest> harvests;
    std::vector<Residue> residues;
};

// The price of one unit that holds on a day, in currency units; none before the first.
[[nodiscard]] std::optional<double> priceOn(const std::vector<Price>& prices, PriceItem item,
                                            Date day,
                                            std::optional<MediumId> medium = std::nullopt);

} // namespace plumule
