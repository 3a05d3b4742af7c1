#pragma once

#include "core/tray/damaged_trays.h"
#include "core/tray/stage_plan.h"
#include "core/tray/tray_page.h"

namespace plumule {

// A tray in the list of all.
struct TrayListRow
{
    TrayRecord record;
    std::optional<Spot> spot; // where it stands
    StagePlan plan;
    std::optional<Mass> yield; // sum of its cuts
};

// What can be read of a part of the list, and whom it does without.
struct TrayListing
{
    std::vector<TrayListRow> rows;
    bool hasMore = false; // perhaps, behind these
    std::vector<DamagedTray> damaged;
};

// Of all that a filter lets through.
struct TrayCounts
{
    int all = 0;
    int growing = 0;
    bool operator==(const TrayCounts&) const = default;
};

} // namespace plumule
