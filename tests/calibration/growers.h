#pragma once

#include "season.h"

// What growers sow next, and what they throw away.
namespace plumule::calibration {

// Media from `late` on are sown from that sowing on.
[[nodiscard]] Grower sowsLate(std::size_t late, std::size_t fromSowing);
// The media in teams that take turns: a team of two of four never meets the other.
[[nodiscard]] Grower sowsInTeams(std::size_t team);
// Each medium on some of the room's varieties only, drawn for every sowing.
[[nodiscard]] Grower sowsOnSomeVarieties(std::size_t each, bool isDrawnOnce);
// The leader of the last look on `most` trays, the others on `least`.
[[nodiscard]] Grower sowsTheWinnerMore(std::size_t most, std::size_t least);
// Leaves the worst of the last look out, as long as two are left.
[[nodiscard]] Grower dropsTheWorst();
// The first medium on `first` trays, the others on `others`.
[[nodiscard]] Grower sowsUnevenly(std::size_t first, std::size_t others);
// A reusable medium whose pieces give less with each use and are replaced after so many.
[[nodiscard]] Grower agesItsMat(double lossPerUse, std::size_t uses);

// With that probability the lightest tray of the first medium in a sowing is thrown away.
[[nodiscard]] Harvest throwsTheWorstAway(double probability);
// Each tray is lost with that probability, whatever it bears.
[[nodiscard]] Harvest losesTrays(double probability);
// Likewise, a sowing's trays of one medium together.
[[nodiscard]] Harvest losesCells(double probability);

} // namespace plumule::calibration
