#pragma once

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

} // namespace plumule
