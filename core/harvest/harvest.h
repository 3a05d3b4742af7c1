#pragma once

#include "core/tray/tray.h"
#include "core/trial/trial.h"

#include <optional>
#include <string>
#include <vector>

namespace plumule {

struct HarvestTag;
struct BowlTag;
struct ResidueTag;
using HarvestId = Id<HarvestTag>;
using BowlId = Id<BowlTag>;
using ResidueId = Id<ResidueTag>;

// One cut of one tray. A tray's yield is the sum of its cuts.
struct Harvest
{
    HarvestId id;
    TrayId tray;
    int cut = 1;
    Date on;
    int minute = 0;
    Mass net;
    bool isLast = true; // else it is cut again later
    std::string note;
    bool operator==(const Harvest&) const = default;
};

// One bowl on the scale.
struct Bowl
{
    BowlId id;
    HarvestId harvest;
    Mass gross;
    Mass tare;
    bool operator==(const Bowl&) const = default;

    [[nodiscard]] Mass net() const { return gross - tare; }
};

// What is left in the tray after cutting, weighed wet.
struct Residue
{
    ResidueId id;
    TrayId tray;
    Date on;
    int minute = 0;
    std::optional<Mass> gross;
    std::optional<Mass> tare;
    Mass net;
    bool operator==(const Residue&) const = default;
};

struct WeighedRow
{
    Harvest harvest;
    std::string code;
    Medium medium;
    std::string variety;
    std::optional<Mass> seed;
};

struct DueRow
{
    TrayId tray;
    std::string code;
    std::optional<Spot> spot;
    Medium medium;
    std::string variety;
    Moment due;
};

// The weigh-in page: what is still to cut and weigh that day, and what was weighed.
struct WeighIn
{
    Date date;
    std::vector<DueRow> due;      // by walking order; overdue ones included
    std::vector<WeighedRow> done; // that day, newest first
};

} // namespace plumule
