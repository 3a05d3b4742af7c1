#pragma once

#include "core/review/model/tray_model.h"
#include "core/stats/model/data_table.h"

namespace plumule {

// Names of the columns the comparison's model is made of.
namespace column {
inline constexpr const char* kValue = "value";
inline constexpr const char* kMedium = "medium";
inline constexpr const char* kFeeding = "feeding";
inline constexpr const char* kVariety = "variety";
inline constexpr const char* kTrial = "trial";
inline constexpr const char* kBlock = "block";
inline constexpr const char* kColumn = "column";
inline constexpr const char* kDensity = "density";
} // namespace column

// The trays as a table, one row each in their order, and what varies in it. Media are levels in the
// order of ComparedTrays::media; trays outside any trial are one level of it.
struct ComparisonColumns
{
    stats::DataTable table;
    bool variesInFeeding = false;       // some were fed and some not
    bool isFeedingWithinMedium = false; // two of each at least within some medium
    bool isFeedingPartlyUnknown = false;
    int varieties = 0;
    int trials = 0;      // without the level of those outside
    int trialLevels = 0; // with it
    BlockKind blockKind = BlockKind::Shelf;
    int blocks = 0; // 0: none to be had
    bool isBlockPartlyUnknown = false;
    int columns = 0;              // of the square that all trays were laid out in; 0: none
    bool variesInDensity = false; // within some variety
    bool isDensityPartlyUnknown = false;
};
[[nodiscard]] ComparisonColumns columnsOf(const SeasonFacts& facts, const ComparedTrays& trays);

} // namespace plumule
