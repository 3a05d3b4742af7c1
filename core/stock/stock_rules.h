#pragma once

#include "core/stock/stock.h"

namespace plumule {

// How far back the present rate of use is measured, and how far ahead plans are counted.
inline constexpr int kRateDays = 28;
inline constexpr int kPlanDays = 14;
// Seed and the rest are said to run low below two weeks, unless the grower says otherwise: common
// practice, no source.
inline constexpr int kUsualLowDays = 14;
inline constexpr int kMostLowDays = 365;
// Common practice, no source.
inline constexpr double kWeakGerminationPercent = 85;

// Invalid below 0 or above a year.
[[nodiscard]] Done checkLowDays(std::optional<int> days);

// A count that is five times what should be left or more, or a fifth of it or less: a decimal point
// or a unit may have slipped. Nothing left, or nothing that should be, is no slip.
[[nodiscard]] bool isOddCount(double counted, double expected);

// Within the plan days; one that is late counts as long.
[[nodiscard]] inline bool isAhead(const SowingAhead& sowing, Date today)
{
    return sowing.on >= today - kPlanDays && sowing.on <= today + kPlanDays;
}

// A lot lasts for what is left over the variety's rate of the last kRateDays days, whichever lots
// it was sown from; only the lot that was sown last has days, the variety is low by all its lots.
[[nodiscard]] std::vector<SeedLine> seedLines(const StockFacts& facts, Date today);

// Left is the last count and what was bought since, less what trays took since: of a loose mix its
// amount a tray, of mats one a tray; of a concentrate the water given times the recipe's present
// dose; of packaging and sanitiser each cut's or piece's share. What trays don't tell is left as
// it was counted, and its rate is that between the last two counts. Before the first entry the
// shelf is unknown; where that is a purchase, as though it was empty.
[[nodiscard]] std::vector<StockLine> supplyLines(const StockFacts& facts, Date today);

// Varieties and supplies that run low, the shortest first.
[[nodiscard]] std::vector<LowThing> lowThings(const StockFacts& facts, Date today);
// With the lines that supplyLines() made of the same facts.
[[nodiscard]] std::vector<LowThing> lowThings(const StockFacts& facts,
                                              const std::vector<StockLine>& supplies, Date today);

// Of reusable media in use, by name. `sanitised` oldest first.
[[nodiscard]] std::vector<PieceGroup> pieceGroups(const std::vector<Medium>& media,
                                                  const std::vector<PieceRecord>& pieces,
                                                  const std::map<PieceId, PieceInUse>& inUse,
                                                  const std::vector<Sanitising>& sanitised);

} // namespace plumule
