#pragma once

#include "core/stats/model/compare_table.h"

#include <cassert>
#include <random>
#include <string>

namespace plumule::bench {

// An invented table of yields: 5 media, 4 varieties and 20 trials, drawn by lot but the same in
// every run.
inline stats::DataTable inventedTable(std::size_t rows)
{
    std::mt19937 lot(20'260'312);
    std::normal_distribution<double> spread(0, 12);
    std::vector<std::string> media, varieties, trials;
    std::vector<std::optional<double>> yields;
    for (std::size_t row = 0; row < rows; ++row) {
        const auto medium = lot() % 5;
        const auto variety = lot() % 4;
        const auto trial = lot() % 20;
        media.push_back("M" + std::to_string(medium));
        varieties.push_back("V" + std::to_string(variety));
        trials.push_back("T" + std::to_string(trial));
        yields.emplace_back(200 + 6.0 * static_cast<double>(medium) +
                            20.0 * static_cast<double>(variety) +
                            2.0 * static_cast<double>(trial % 7) + spread(lot));
    }
    stats::DataTable table;
    const bool isMade = table.addNumbers("yield", yields) && table.addFactor("medium", media) &&
                        table.addFactor("variety", varieties) && table.addFactor("trial", trials);
    assert(isMade);
    (void)isMade;
    return table;
}

} // namespace plumule::bench
