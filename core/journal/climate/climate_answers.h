#pragma once

#include "core/climate/climate_charts.h"
#include "core/tray/tray.h"

namespace plumule {

// What a file brought in.
struct LoggerOutcome
{
    int added = 0; // hours
    int changed = 0;
    int unlike = 0; // stayed as they were
};

// The days of each logger, by its name.
struct LoggerDays
{
    ClimateLogger logger;
    std::vector<ClimateDay> days; // oldest first
};

// The climate that one tray grew in.
struct TrayClimate
{
    Tray tray;
    std::vector<ClimateDay> days; // from sowing to its end or today
    GrowthClimate growth;
    std::vector<std::string> loggers; // that may have told it, the nearest first

    // Whether anything is known of any day.
    [[nodiscard]] bool isEmpty() const;
};

// The climate beside a trial's trays: a track for each set of shelves that the same loggers tell
// of.
struct TrialClimate
{
    Date sownOn; // the first sowing
    std::vector<ClimateTrack> tracks;

    // Whether no tray of it was sown, or nothing is known of its days.
    [[nodiscard]] bool isEmpty() const { return tracks.empty(); }
};

// Whether anything is known of one of the days.
[[nodiscard]] bool isAnyKnown(const std::vector<ClimateDay>& days);

} // namespace plumule
