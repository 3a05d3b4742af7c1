#pragma once

#include "core/tray/damaged_trays.h"
#include "core/tray/stage_plan.h"

namespace plumule {

// A tray in the list of all.
struct TrayListRow
{
    TrayRecord record;
    std::optional<Spot> spot; // where it stands
    StagePlan plan;
    std::optional<Mass> yield; // sum of its cuts
};

// All that can be read, and whom the list does without.
struct TrayListing
{
    std::vector<TrayListRow> rows;
    std::vector<DamagedTray> damaged;
};

} // namespace plumule
