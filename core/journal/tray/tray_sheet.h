#pragma once

#include "core/cost/missing_price.h"
#include "core/tray/stage_plan.h"

namespace plumule {

// Everything known of one tray.
struct TraySheet
{
    TrayRecord record;
    std::optional<Spot> spot;
    StagePlan plan;
    std::vector<Stay> stays;
    std::vector<Watering> waterings; // oldest first
    std::vector<Height> heights;
    std::vector<Harvest> harvests;
    std::vector<Residue> residues;
    std::vector<TrayNote> notes;
    std::vector<Photo> photos;
    TrayCost cost;
    std::vector<MissingPrice> missingPrices; // that the cost lacks
    std::vector<SeedLack> seedLacks;
    std::optional<double> costPerGram;
    std::string currency;
};

} // namespace plumule
