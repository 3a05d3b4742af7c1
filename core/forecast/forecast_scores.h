#pragma once

#include "core/forecast/forecast_facts.h"

namespace plumule {

inline constexpr std::size_t kScoredOfEach = 20;

// The latest harvests, kScoredOfEach of each variety at most, in the order of their cuts, each with
// the forecast that was to be had when the tray was begun: nothing later is known to it.
[[nodiscard]] std::vector<ScoredForecast> latestForecasts(const ForecastFacts& facts);

// A variety's score, or without one that of all. It scored badly, and is widened, where with
// kFewestForOwnPast harvests or more so few sowings' worth of them fell inside that it would happen
// once in ten times or less with intervals that hold 8 in 10: a sowing counts once, by its share of
// trays inside. It becomes as wide as would have held 8 in 10 of them, three times at most.
[[nodiscard]] VarietyScore scoreOf(const std::vector<ScoredForecast>& scored,
                                   std::optional<VarietyId> variety);

} // namespace plumule
