#pragma once

#include <optional>
#include <string>
#include <vector>

namespace plumule {

// One thing to have at hand before sowing.
enum class SupplyKind
{
    Seed,        // g, of the lot or the variety
    LooseMix,    // L; its stock is not kept
    Pieces,      // clean and free, or single-use mats (whose stock is not kept)
    Concentrate, // mL over the whole trial; its stock is not kept
    Water        // L over the whole trial
};
struct Supply
{
    SupplyKind kind = SupplyKind::Seed;
    std::string name;              // of the medium, the concentrate; of seed the variety and lot
    double needed = 0;             // g, L, pieces or mL by kind
    std::optional<double> inStock; // none: not kept, or not known
    // Of what is needed, in currency units; of a reusable piece one use. None: no price.
    std::optional<double> cost;

    [[nodiscard]] bool isShort() const { return inStock && *inStock < needed; }
};
struct Preparation
{
    std::vector<Supply> supplies;
    int trays = 0;
    int placesFree = 0; // on the day of sowing
    double cost = 0;    // of all with a price
    std::string currency;
};

} // namespace plumule
