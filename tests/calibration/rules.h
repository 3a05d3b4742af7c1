#pragma once

#include "growers.h"

// Short ways to say what a room is like, shared by the lists of rooms.
namespace plumule::calibration {

inline constexpr double kTenPercent = 0.09531017980432493; // of logs
inline constexpr int kSets = 10'000;
inline constexpr int kFewerSets = 2'000;

[[nodiscard]] Rules rulesOf(std::size_t sowings, std::size_t media = 4, std::size_t trays = 3);
// Spreads of 4 to 20 %, evenly over the media.
[[nodiscard]] std::vector<double> unlikeSpreads(std::size_t media);
// The first medium gives 10 % more than all others.
[[nodiscard]] std::vector<double> oneBetter(std::size_t media);

[[nodiscard]] Looking planned();
[[nodiscard]] Looking withOld(AsksOld old);
[[nodiscard]] Looking seeking(bool isPlanned);

using GrowerMaker = std::function<Grower()>;
[[nodiscard]] Line seasonLine(std::string room, const Rules& rules, const Looking& looking = {},
                              int sets = kFewerSets, const GrowerMaker& grower = {},
                              const Harvest& harvest = {});
[[nodiscard]] Line oneTrialLine(std::string room, const Rules& rules, const Looking& looking = {},
                                int sets = kFewerSets, const GrowerMaker& grower = {},
                                const Harvest& harvest = {});

} // namespace plumule::calibration
