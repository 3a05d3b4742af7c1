#pragma once

#include "core/review/facts/compared_trays.h"

#include <set>

namespace plumule {

// What may differ between the trays of two media besides the medium.
enum class Aspect
{
    Feeding, // nutrient water given or not
    Variety,
    Trial,
    SeedLot,     // within a variety
    SeedDensity, // g/m² of seed, within a variety
    Shelf,       // where it stood in its light
    Season,      // month of sowing
    DaysGrown,   // within a variety
    PieceUses,   // of reusable media: this tray was the n-th on its piece
    Person,      // who sowed it
    Temperature, // climate: mean °C of its days of growth, by the logger nearest to it
    Vpd,         // climate: mean vapour pressure deficit of those days, kPa
    DailyLight   // climate: mean light of its whole days in light, mol/m²/d
};

enum class Confounding
{
    Fully,  // two media have nothing of it in common: their difference is that of both together
    Partly, // unlike shares or means
    Alike
};

// One level and how many trays of the medium had it. `name` is data (a lot, a shelf, a month as
// YYYY-MM, a person), but for feeding the keys "nutrient" and "no_nutrient".
struct AspectLevel
{
    std::string name;
    int trays = 0;
    bool operator==(const AspectLevel&) const = default;
};

struct AspectNumbers
{
    double mean = 0;
    double low = 0;
    double high = 0;
    bool operator==(const AspectNumbers&) const = default;
};

// How one medium's trays had it: levels, or numbers for densities, days, uses and climate.
struct AspectOfMedium
{
    std::size_t medium = 0; // as in ComparedTrays::media
    std::vector<AspectLevel> levels;
    std::optional<AspectNumbers> numbers;
    int unknown = 0; // trays of which it is not on record
    bool operator==(const AspectOfMedium&) const = default;
};

struct Finding
{
    Aspect aspect = Aspect::Feeding;
    Confounding confounding = Confounding::Alike;
    bool isInModel = false; // the comparison takes it into account
    std::vector<AspectOfMedium> media;
    // Pairs of media that have nothing of it in common, the earlier first; of levels only.
    std::vector<std::pair<std::size_t, std::size_t>> fully;
    // The worst pair of media, where they are not alike.
    std::optional<std::pair<std::size_t, std::size_t>> worst;
    std::vector<std::string> fullyInTrials; // codes of trials within which it is fully confounded
};

// What would make the next trial fair.
enum class Advice
{
    FeedAllAlike,
    GrowEachVarietyOnEveryMedium,
    GrowEveryMediumInEachTrial,
    UseOneSeedLot,
    SowAllAsDensely,
    SpreadMediaOverShelves,
    SowAllOnOneDay,
    CutAllOnOneDay,
    UsePiecesAsWorn,
    ShareTheWork,
    GrowInOneClimate,
    LightAllAlike
};

// Media are compared within a sowing and variety, whatever else those bring.
[[nodiscard]] std::set<Aspect> aspectsComparedWithin();

// All aspects that are on record of two media or more: the fully confounded first, then what is
// partly so, last what is alike. `inModel`: what the comparison accounts for.
[[nodiscard]] std::vector<Finding> fairnessOf(const SeasonFacts& facts, const ComparedTrays& trays,
                                              const std::set<Aspect>& inModel);

[[nodiscard]] Advice adviceFor(Aspect aspect);
// Whether it is fully confounded, in some trial at least, or partly so and not in the model.
[[nodiscard]] bool callsForAdvice(const Finding& finding);
// One for each finding that is fully confounded, or partly so and not in the model; in their order,
// and none twice.
[[nodiscard]] std::vector<Advice> suggestionsFor(const std::vector<Finding>& findings);

// Whether nutrient water was given; from what the stages planned where no watering is on record.
[[nodiscard]] std::optional<bool> wasFed(const SeasonRecord& record);

} // namespace plumule
