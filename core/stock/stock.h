#pragma once

#include "core/room/room.h"
#include "core/stock/stock_item.h"
#include "core/tray/tray.h"
#include "core/variety/variety.h"
#include "core/watering/watering.h"

#include <map>
#include <vector>

namespace plumule {

// Of a tray that was sown, what it took.
struct SownTray
{
    Moment at;
    VarietyId variety;
    std::optional<SeedLotId> lot;
    MediumId medium;
    std::optional<Mass> seed;
};

// Trays that are planned and not sown yet.
struct SowingAhead
{
    Date on;
    VarietyId variety;
    std::optional<SeedLotId> lot;
    std::optional<MediumId> medium;
    std::optional<Mass> seedEach; // none: the variety's
    int trays = 1;
};

// Water of one kind that was given in one minute to any number of trays.
struct WaterGiven
{
    Moment at;
    WaterKind water = WaterKind::Plain;
    Volume amount;
};

// Where a piece is now.
struct PieceInUse
{
    std::string tray; // the code of the tray that grows on it
    std::optional<Spot> spot;
};

// What the stock is worked out from: read once, each table in one query.
struct StockFacts
{
    std::vector<SeedLotStock> lots; // in use, by variety and day of purchase
    std::map<VarietyId, Variety> varieties;
    std::vector<VarietyId> everBought; // a lot of theirs is or was on the shelf
    std::map<VarietyId, SeedLow> seedLows;
    std::vector<Medium> media; // in use, by name
    std::vector<WaterRecipe> recipes;
    std::vector<StockItem> supplies;
    std::vector<StockCount> counts; // oldest first
    std::vector<SownTray> sown;     // since `from`, oldest first; likewise below
    std::vector<WaterGiven> given;
    std::vector<Moment> cuts;
    std::vector<Sanitising> sanitised;
    std::vector<SowingAhead> planned;
    std::optional<Date> lastCounted; // of seed or anything else
};

// Why a thing is said to run low.
enum class Low
{
    No,
    Days,    // it lasts for fewer days than wanted
    Amount,  // less is left than wanted
    Planned, // more is planned than is left
    None     // nothing is left
};

struct SeedLine
{
    SeedLotStock stock;
    std::string variety;
    std::optional<Mass> seedPerTray;
    Mass planned;                   // of this lot in the days ahead
    std::optional<double> daysLeft; // of the lot that is sown from now
    Low low = Low::No;
    bool isWeak = false; // germinates worse than kWeakGerminationPercent

    // After what is planned; none where the purchase was not weighed.
    [[nodiscard]] std::optional<Mass> thenLeft() const;
};

struct StockLine
{
    StockItem item;                       // its id is none where it was never counted
    std::optional<int> marker;            // of a medium
    std::optional<StockAmount> left;      // none: never counted
    std::optional<StockAmount> planned;   // none: plans don't tell
    std::optional<StockAmount> usedSince; // the last count or purchase; none: trays don't tell
    std::optional<double> daysLeft;
    std::optional<Date> countedOn;
    Low low = Low::No;

    [[nodiscard]] std::optional<StockAmount> thenLeft() const;
};

// What is said on the round: enough to name it.
struct LowThing
{
    std::string name;
    Low why = Low::Days;
    std::optional<double> daysLeft;
    bool operator==(const LowThing&) const = default;
};

struct PieceLine
{
    PieceRecord record;
    std::optional<PieceInUse> inUse;
    std::optional<Sanitising> sanitised; // the last time
    std::optional<Date> due;             // to be sanitised since
    bool isPast = false;                 // its planned uses
};

// The pieces of one reusable medium, by number.
struct PieceGroup
{
    Medium medium;
    std::vector<PieceLine> pieces;
    int growing = 0;
    int due = 0;
    int clean = 0;
};

struct Stock
{
    Date today;
    std::vector<SeedLine> seed;
    std::vector<StockLine> supplies;
    std::vector<PieceGroup> pieces;
    std::vector<LowThing> low;
    std::vector<SeedLow> seedLows; // the marks that the grower set
    std::optional<Date> lastCounted;

    [[nodiscard]] int piecesDue() const;
};

} // namespace plumule
