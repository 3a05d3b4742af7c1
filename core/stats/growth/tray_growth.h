#pragma once

#include "core/stats/growth/growth_report.h"

#include <cstddef>
#include <span>

namespace plumule::stats {

struct TrayReading
{
    double x = 0;
    double y = 0;
    std::size_t tray = 0; // its own number, whatever the sowing
    std::size_t sowing = 0;
};

// What the numbers of a curve are seen to repeat over. Trays of one sowing say what happened in it;
// what is to be expected of the next sowing needs three sowings.
enum class GrowthReplicate
{
    Tray,
    Sowing,
};

// A curve through readings of several trays.
struct TrayGrowth
{
    GrowthReport report;
    std::size_t trays = 0;
    std::size_t sowings = 0;
    GrowthReplicate replicate = GrowthReplicate::Tray;
    // False under three trays, or where the curve hangs on a single one of them: every se, lower
    // and upper is NaN then.
    bool hasIntervals = false;
};

// The curve of growthReport through all readings. Readings of one tray lie on one side of it
// together, so an interval must not rest on their number alone. It is the wider of two: that of
// growthReport, and that from leaving out one tray at a time, or from three sowings on one sowing
// (the delete-one-group jackknife, CV3 of MacKinnon, Nielsen and Webb 2023, J. Appl. Econometrics
// 38:671, with Student's t on groups - 1 df; with two sowings the trays of each are left out, on
// trays - 2 df). Where no curve was asked for, those of heights, times and the top rate also hold
// the interval of the logistic or Gompertz curve whose AICc is less than 4 more than the best
// (beyond that support is considerably less: Burnham and Anderson 2002, from memory), since few
// readings don't tell curves apart. How often they hold: tests/calibration. Errors: those of
// growthReport.
[[nodiscard]] Result<TrayGrowth> trayGrowth(std::span<const TrayReading> readings,
                                            const GrowthAsk& ask);

} // namespace plumule::stats
