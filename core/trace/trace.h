#pragma once

#include "core/harvest/harvest.h"
#include "core/order/order.h"
#include "core/variety/variety.h"
#include "core/watering/watering.h"

#include <map>
#include <variant>
#include <vector>

namespace plumule {

// One kind of water as it was mixed in these days.
struct MixSpan
{
    WaterKind water = WaterKind::Nutrient;
    Date from;
    Date to;
    bool operator==(const MixSpan&) const = default;
};

// Whoever sowed, or sanitised pieces, under that name.
struct Person
{
    std::string name;
    bool operator==(const Person&) const = default;
};

// What is asked about.
using TraceFrom = std::variant<TrayId, SeedLotId, PieceId, MixSpan, Person>;

// How a person had a hand in a tray.
enum class Part
{
    None,
    Sowed,
    Sanitised, // the piece that it was sown on, the last time before
    Both
};

// What went to one day of an order.
struct TracedPromise
{
    PromiseKey key;
    std::string customer; // may be empty
    Mass part;
    bool operator==(const TracedPromise&) const = default;
};

// One tray as a trace tells it.
struct TracedTray
{
    Tray tray;
    std::string variety;
    Medium medium;
    std::optional<int> pieceNumber;
    std::optional<std::string> seedLot;
    std::vector<Harvest> cuts;                // first cut first
    Part part = Part::None;                   // of the person that is asked about
    std::vector<TracedPromise> promises = {}; // that its cuts went to, by day

    [[nodiscard]] Mass yield() const;
};

// The trays of one variety that were sown on one day, by code.
struct TracedSowing
{
    Date on;
    std::string variety;
    std::vector<TracedTray> trays;

    [[nodiscard]] Mass yield() const;
    [[nodiscard]] int count(TrayState state) const;
    // That its trays' cuts went to, added up, by day.
    [[nodiscard]] std::vector<TracedPromise> promises() const;
};

// What became of the trays: sown = cut + thrown away + growing.
struct TraceSums
{
    int sown = 0;
    int cut = 0;
    int thrownAway = 0;
    int growing = 0;
    int withoutSeed = 0; // trays whose seed was not weighed
    Mass seed;
    Mass yield;
    int promises = 0; // that some of the yield went to
    bool operator==(const TraceSums&) const = default;
};

// From a lot, a piece, a mix or a person on.
struct ForwardTrace
{
    TraceFrom from;
    std::optional<SeedLotStock> lot; // whichever it is of
    std::string lotVariety;
    std::optional<PieceRecord> piece;
    std::optional<Medium> pieceMedium;
    std::vector<Sanitising> sanitisings; // of the piece, or by the person; oldest first
    std::optional<WaterRecipe> recipe;
    std::vector<TracedSowing> sowings; // oldest first
    TraceSums sums;
};

// All that a tray got of one kind of water.
struct TracedWater
{
    WaterKind water = WaterKind::Plain;
    std::string concentrate; // that its recipe names now; empty: none
    int times = 0;
    Volume amount;
    int unmeasured = 0; // of those times
    Date first;
    Date last;
    std::vector<WaterReading> readings; // of that water on those days, or of the tray
};

// A stay with the name of its place.
struct TracedStay
{
    Stay stay;
    std::optional<Spot> spot;
};

// From a tray back.
struct BackTrace
{
    TracedTray tray;
    std::vector<TrayStage> stages;
    std::optional<SeedLotStock> lot;
    std::optional<Piece> piece;
    int useOfPiece = 0;                    // the tray is that many-th on it
    std::optional<Sanitising> sanitised;   // the last before it was sown
    std::optional<std::string> trayBefore; // on the piece; its code
    std::vector<TracedWater> waters;       // in the order of WaterKind
    std::vector<TracedStay> stays;         // oldest first
    std::optional<Mass> residue;
    std::optional<std::string> trialCode;
};

// Trays grouped by their day of sowing and variety, oldest first.
[[nodiscard]] std::vector<TracedSowing> sowingsOf(std::vector<TracedTray> trays);
[[nodiscard]] TraceSums sumsOf(const std::vector<TracedSowing>& sowings);
// `waterings` and `readings` oldest first; a reading counts where it is of that tray, or of all
// trays on a day on which it got that water.
[[nodiscard]] std::vector<TracedWater> watersOf(TrayId tray, const std::vector<Watering>& waterings,
                                                const std::vector<WaterReading>& readings,
                                                const std::vector<WaterRecipe>& recipes);

} // namespace plumule
