#pragma once

#include "core/stats/verdict/sown_tray.h"

#include <vector>

namespace plumule::stats::verdicts {

// Grams by sowing, medium and replicate; the replicate is the block.
[[nodiscard]] inline std::vector<SownTray>
sown(const std::vector<std::vector<std::vector<double>>>& grams)
{
    std::vector<SownTray> trays;
    for (std::size_t sowing = 0; sowing < grams.size(); ++sowing) {
        for (std::size_t medium = 0; medium < grams[sowing].size(); ++medium) {
            for (std::size_t block = 0; block < grams[sowing][medium].size(); ++block) {
                SownTray tray;
                tray.sowing = sowing;
                tray.medium = medium;
                tray.block = block;
                tray.value = grams[sowing][medium][block];
                trays.push_back(tray);
            }
        }
    }
    return trays;
}

[[nodiscard]] inline std::vector<SownTray> withoutBlocks(std::vector<SownTray> trays)
{
    for (SownTray& tray : trays) {
        tray.block.reset();
    }
    return trays;
}

// Four invented sowings of three media, two trays each.
[[nodiscard]] inline std::vector<SownTray> fourSowings()
{
    return sown({{{140, 129}, {130, 127}, {158, 151}},
                 {{246, 270}, {303, 300}, {330, 345}},
                 {{352, 340}, {433, 441}, {480, 470}},
                 {{195, 207}, {199, 214}, {246, 241}}});
}

} // namespace plumule::stats::verdicts
