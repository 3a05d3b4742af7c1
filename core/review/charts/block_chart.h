#pragma once

#include "core/chart/chart_spec.h"
#include "core/review/comparison/comparison.h"

namespace plumule {

// One block of a trial: its name, and the trays in it.
struct BlockOfTrays
{
    std::string name;
    std::vector<TrayId> trays;
};

// A row a block, each compared tray a dot with its medium's marker: whether media keep their order
// from block to block. Trays that are in no block are left out. Key "<response>_by_block".
[[nodiscard]] ChartSpec byBlockChart(const SeasonComparison& comparison,
                                     const std::vector<BlockOfTrays>& blocks);

} // namespace plumule
